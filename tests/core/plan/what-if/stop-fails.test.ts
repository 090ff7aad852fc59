import { describe, expect, it } from 'vitest';
import type { Commodity } from '../../../../server/contract/common.ts';
import type { Edge } from '../../../../server/core/gaps/course/course.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import { courseOf, endEdge, startEdge } from '../../../helpers/course.ts';
import { stopFailsRows, turnBacksOf } from '../by-hand/contracted.ts';
import { basisFrom, stopAt } from './small-basis.ts';

const side = (commodity: Commodity, lengthKm: number, stops: Edge[]): CarrySide => {
  const course = courseOf({ commodity, lengthM: lengthKm * 1000 });
  return {
    commodity,
    course,
    edges: [startEdge, ...stops, endEdge(lengthKm * 1000)],
    startL: course.rig[commodity].drawableL,
    cansAtStart: true,
    canL: course.rig[commodity].canL,
    cansDrinkable: true,
    mostCans: 4,
  };
};

describe('a stop that fails', () => {
  it('has the figures of the worked example without its only point', () => {
    const sides = { fuel: side('fuel', 1340, [stopAt(640, 2)]), water: side('water', 1340, []) };
    const [row, ...rest] = stopFailsRows(basisFrom(sides, () => 0));
    expect(rest).toEqual([]);
    // 1,340 km and 4 km in vain at 17 l/100 km are 228.48 of 127 l; 17 l in reserve.
    expect(row).toMatchObject({ id: 'node/640', commodity: 'fuel', atKm: 640, next: 'on', verdict: 'short' });
    expect(row!.arriveL).toBeCloseTo(127 - 228.48, 9);
    expect(row!.marginL).toBeCloseTo(-118.48, 9);
    expect(row!.coverCans).toBe(6);
    // 127 l are 747.06 km, 4 of them in vain.
    expect(row!.endsAtKm).toBeCloseTo(127 / 0.17 - 4, 6);
    expect(row!.turnBackKm).toBeCloseTo(110 / 0.34, 9);
    expect(row!.backMarginL).toBeCloseTo(127 - 1284 * 0.17 - 17, 9);
    expect(row!.instead).toBeNull();
  });

  it('fails wherever it is passed, and names the supply passed by that would do', () => {
    const twice = 'node/9';
    const stops = [stopAt(300, 0, twice), stopAt(600, 0, twice)];
    const fuel = side('fuel', 1000, stops);
    const basis = basisFrom({ fuel, water: side('water', 1000, []) }, () => 0);
    // Passed by in the plan, but it counts.
    const between = stopAt(500, 0);
    const passing = { ...fuel, edges: [startEdge, stops[0]!, between, stops[1]!, endEdge(1_000_000)] };
    const { sides } = basis;
    const rows = stopFailsRows({ ...basis, sides: { ...sides, fuel: { ...sides.fuel, side: passing } } });
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ id: twice, atKm: 300, to: { id: 'node/500' }, verdict: 'enough' });
    // 500 km on each side: 85 l, 42 l left, 17 kept.
    expect(rows[0]!.instead).toMatchObject({ at: { id: 'node/500' } });
    expect(rows[0]!.instead!.marginL).toBeCloseTo(25, 9);
  });

  it('names of several supplies passed by the one that keeps most, wherever it lies among them', () => {
    // Past the pump at km 500, 1,000 km in all: by km 400 or 600 102 l the longer way, by km 450 93.5, by km 550 as many.
    const pump = stopAt(500, 0);
    const fuel = side('fuel', 1000, [pump]);
    const basis = basisFrom({ fuel, water: side('water', 1000, []) }, () => 0);
    const insteadOf = (...kms: number[]) => {
      const edges = [startEdge, ...[...kms.map((km) => stopAt(km, 0)), pump], endEdge(1_000_000)];
      const { sides } = basis;
      const counting = { ...fuel, edges: edges.sort((a, b) => a.atM - b.atM) };
      const rows = stopFailsRows({ ...basis, sides: { ...sides, fuel: { ...sides.fuel, side: counting } } });
      return rows[0]?.instead;
    };
    for (const kms of [
      [400, 450],
      [450, 600],
      [400, 450, 600],
    ])
      expect(insteadOf(...kms)).toMatchObject({
        at: { id: 'node/450' },
        // 127 l less 550 km and 17 in reserve.
        marginL: expect.closeTo(127 - 93.5 - 17, 9),
      });
    // The pump that fails is no help against its own failing.
    expect(insteadOf()).toBeNull();
    // By km 300 the rest of the way takes 119 l, more than the reserve lets go.
    expect(insteadOf(300)).toBeNull();
  });

  it('is gone past to the next that is used where that is borne, though a supply passed by would keep more', () => {
    const stops = [stopAt(200, 0), stopAt(500, 0)];
    const fuel = side('fuel', 800, stops);
    const basis = basisFrom({ fuel, water: side('water', 800, []) }, () => 0);
    const edges = [startEdge, stops[0]!, stopAt(350, 0), stops[1]!, endEdge(800_000)];
    const { sides } = basis;
    const [row] = stopFailsRows({
      ...basis,
      sides: { ...sides, fuel: { ...sides.fuel, side: { ...fuel, edges } } },
    });
    expect(row).toMatchObject({ id: 'node/200', to: { id: 'node/500' }, verdict: 'enough', instead: null });
    // 500 km are 85 of 127 l; 17 l in reserve.
    expect(row!.marginL).toBeCloseTo(25, 9);
  });

  it('charges one detour where the place is halted at for the other commodity as well', () => {
    const both = stopAt(400, 10);
    const sides = { fuel: side('fuel', 700, [both]), water: side('water', 700, [both]) };
    const rows = stopFailsRows(basisFrom(sides, () => 0));
    expect(rows.map(({ commodity }) => commodity)).toEqual(['fuel', 'water']);
    expect(rows[0]!.arriveL).toBeCloseTo(127 - 720 * 0.17, 9);
  });
});

describe('the first turn-back point', () => {
  it('is the earlier of fuel and water on the same stretch', () => {
    // Fuel: (127 − 17) / 0.34 = km 323.5. Water: 70 − 36 l are 1.89 days of 18 l out and home, at 245 km a day.
    const sides = { fuel: side('fuel', 1000, []), water: side('water', 1000, []) };
    const [water, fuel, ...rest] = turnBacksOf(basisFrom(sides, () => 0));
    expect(rest).toEqual([]);
    expect(water).toMatchObject({ commodity: 'water', first: true, backToKm: 0 });
    expect(water!.atKm).toBeCloseTo(((70 - 36) / 18 / 2) * 245, 6);
    expect(fuel).toMatchObject({ commodity: 'fuel', first: false });
    expect(fuel!.atKm).toBeCloseTo(110 / 0.34, 6);
  });
});

describe('where a plan did not look at all supplies', () => {
  it('goes by one of those that were left out, and lets those of the stop fail with it', () => {
    // Past the pump at km 500, 1,000 km in all; the one at km 501 is of the same stop, that at km 600 is not.
    const fuel = side('fuel', 1000, [stopAt(500, 0)]);
    const counting = [startEdge, ...[500, 501, 600].map((km) => stopAt(km, 0)), endEdge(1_000_000)];
    const basis = basisFrom({ fuel: { ...fuel, counting }, water: side('water', 1000, []) }, () => 0);
    const [row, ...rest] = stopFailsRows(basis);
    expect(rest).toEqual([]);
    expect(row).toMatchObject({ id: 'node/500', verdict: 'enough', instead: { at: { id: 'node/600' } } });
    expect(row?.text).toContain('nor does the one other supply of that stop');
    expect(row?.marginL).toBeCloseTo(127 - 102 - 17, 9);
  });
});
