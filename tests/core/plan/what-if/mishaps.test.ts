import { describe, expect, it } from 'vitest';
import { courseOf, EXAMPLE_RIG, endEdge, startEdge } from '../../../helpers/course.ts';
import { containerLostRows, pumpFailsRows, turnRoundRows, waitRows } from '../by-hand/contracted.ts';
import { basisFrom } from './small-basis.ts';

/** The example's rig from start to end without a stop: 127 l, 17 l/100 km, 100 km in reserve; 70 l, 18 l a day of 245 km. */
function facts(lengthKm: number, cans: { fuel: number; water: number }) {
  const side = (commodity: 'fuel' | 'water') => {
    const course = courseOf({ commodity, lengthM: lengthKm * 1000 });
    const { drawableL, canL } = course.rig[commodity];
    return {
      commodity,
      course,
      edges: [startEdge, endEdge(lengthKm * 1000)],
      startL: drawableL,
      cansAtStart: true,
      canL,
      cansDrinkable: true,
      mostCans: 4,
    };
  };
  const basis = basisFrom({ fuel: side('fuel'), water: side('water') }, (commodity) => cans[commodity]);
  return { basis, rig: EXAMPLE_RIG, waitDays: 2, turnRoundAtM: null };
}

describe('a container that is lost', () => {
  it('is lost half way, where going on and going back are alike', () => {
    // 167 l aboard, 700 km. Both cans are poured in by km 235.3; from there only the tank holds anything.
    // Lost at x, going on lacks 0.17 × (700 − x), going back 0.17 × x: alike at km 350, 59.5 l.
    const [fuel] = containerLostRows(facts(700, { fuel: 2, water: 0 }));
    expect(fuel!.atKm).toBeCloseTo(350, 6);
    expect(fuel!.lostL).toBeCloseTo(107.5, 6);
    expect(fuel!.arriveL).toBeCloseTo(-59.5, 6);
    expect(fuel!.marginL).toBeCloseTo(-76.5, 6);
    expect(fuel!.coverCans).toBe(4);
    expect(fuel!.verdict).toBe('short');
    expect(fuel!.endsAtKm).toBeCloseTo(350, 6);
    // Until the first can is poured there are 40 l to go back with, 17 of them kept: 23 l are 135 km, but at
    // km 117.6 a can is poured into the tank that is lost, and 20 l do for no more than 18 km.
    expect(fuel!.turnBackKm).toBeCloseTo(20 / 0.17, 6);
  });
});

describe('the largest container', () => {
  const withTank = (cans: number) => {
    const { basis, ...more } = facts(300, { fuel: cans, water: 0 });
    const rig = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, tanks: [{ name: 'main', litres: 15 }] } };
    return containerLostRows({ ...more, basis, rig })[0];
  };

  it('is the tank where there is no can, however large cans would be', () => {
    expect(withTank(0)).toMatchObject({ kind: 'container-lost', lostL: 15 });
  });

  it('is a can where it holds more than the largest tank', () => {
    expect(withTank(1)).toMatchObject({ kind: 'container-lost', lostL: 20 });
  });
});

describe('a broken pump', () => {
  it('takes the treatment at the tap with it: raw water in cans is lost too', () => {
    const clean = facts(245, { fuel: 0, water: 3 });
    const [water] = pumpFailsRows({ ...clean, isRaw: () => true });
    const [fit] = pumpFailsRows(clean);
    // Half way, nothing is left of 130 l but what has been drunk.
    expect(fit!.arriveL).toBeGreaterThan(0);
    expect(water!.verdict).toBe('short');
    expect(water!.arriveL).toBeLessThan(0);
    expect(water!.text).toContain('not fit to drink');
  });

  it('leaves the cans only', () => {
    // 6 days to 1,470 km at 18 l: 108 of 110 l. The cans (20 l each) are poured after 20 and 40 l.
    const [water] = pumpFailsRows(facts(1470, { fuel: 0, water: 2 }));
    expect(water!.kind).toBe('pump-fails');
    // No can left: going on lacks what is left of the way, going back what was driven. Alike half way: 54 l.
    expect(water!.atKm).toBeCloseTo(735, 6);
    expect(water!.arriveL).toBeCloseTo(-54, 6);
    expect(water!.marginL).toBeCloseTo(-54 - 36, 6);
  });

  it('takes nothing where all water is in cans already or the way is short enough', () => {
    // A day: 18 l. One full can and the reserve of 36 l is all it lacks.
    const [water] = pumpFailsRows(facts(245, { fuel: 0, water: 3 }));
    expect(water!.verdict).toBe('enough');
    expect(water!.coverL).toBe(0);
  });
});

describe('waiting', () => {
  it('costs water for every day more, at the place where going back helps no more', () => {
    // 490 km are 2 days: 36 of 70 l. Two more days: 72 l, 2 l are missing on arrival.
    // Going back from x leaves 70 − 36 − 2 × x × 18/245 l: no better than going on from km 245 on.
    const rows = waitRows(facts(490, { fuel: 0, water: 0 }));
    expect(rows.map(({ commodity }) => commodity)).toEqual(['water']);
    const [water] = rows;
    expect(water!.arriveL).toBeCloseTo(-2, 9);
    expect(water!.marginL).toBeCloseTo(-38, 9);
    expect(water!.lostL).toBeCloseTo(36, 9);
    expect(water!.atKm).toBeCloseTo(245, 6);
    expect(water!.coverCans).toBe(2);
  });
});

describe('turning round', () => {
  it('is worst at the end, or where it is asked for', () => {
    const all = facts(500, { fuel: 0, water: 0 });
    const [fuel] = turnRoundRows(all);
    expect(fuel!.next).toBe('back');
    expect(fuel!.atKm).toBe(500);
    expect(fuel!.arriveL).toBeCloseTo(127 - 2 * 85, 9);
    // 127 l are 747 km: nothing is left 247 km back from km 500.
    expect(fuel!.endsAtKm).toBeCloseTo(1000 - 127 / 0.17, 6);
    const [asked] = turnRoundRows({ ...all, turnRoundAtM: 300_000 });
    expect(asked!.atKm).toBe(300);
    expect(asked!.arriveL).toBeCloseTo(127 - 102, 9);
    expect(asked!.marginL).toBeCloseTo(8, 9);
    expect(asked!.verdict).toBe('enough');
    expect(turnRoundRows({ ...all, turnRoundAtM: 501_000 })).toEqual([]);
    // From km 450 as well, where no level bends: 900 km are 153 l, and the last 26 of them are missing.
    const [between] = turnRoundRows({ ...all, turnRoundAtM: 450_000 });
    expect(between!.endsAtKm).toBeCloseTo(26 / 0.17, 6);
  });
});
