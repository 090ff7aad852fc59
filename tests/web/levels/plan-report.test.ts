import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canSpans } from '../../../web/levels/can-spans.ts';
import { fullLitres, levelAt } from '../../../web/levels/levels.ts';
import { aboardAt, cansFull, withPlan } from '../../../web/levels/plan-report.ts';
import { drinkableLine, planAreas } from '../../../web/strip/area-path.ts';
import { halfLabels } from '../../../web/strip/labels/gap-labels.ts';
import { placeInWords } from '../../../web/strip/labels/words.ts';
import { canWords } from '../../../web/strip/StripPlan.tsx';
import { stepAlong } from '../../../web/strip/step-along.ts';
import { stripFrame } from '../../../web/strip/strip-frame.ts';
import { drawnPlan } from '../drawn-plan.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const plan = drawnPlan();
const shown = withPlan(analysis, plan);
const { levels } = shown.fuel.plan!;
const [carry] = plan.plan.carries;

/** Every corner of an SVG path of straight lines. */
const corners = (path: string) =>
  [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
const scale = { baseX: 0, pxPerLitre: 1, yOfKm: (km: number) => -km };

describe('what the strip draws of a plan', () => {
  test('is the analysis itself where there is no plan', () => {
    expect(withPlan(analysis, null)).toBe(analysis);
    const none = drawnPlan();
    none.plan.status = 'none';
    expect(withPlan(analysis, none)).toBe(analysis);
  });

  test('is the legs in place of the gaps, at a width that holds the cans', () => {
    expect(shown.fuel.gaps.map(({ from, to, lengthKm }) => [from.atKm, to.atKm, lengthKm])).toEqual([
      [0, 300, 300],
      [300, 1200, 900],
    ]);
    expect(shown.fuel.gaps[1]).toMatchObject({ reserveL: 20, verdict: 'enough', turnBackKm: 812 });
    expect(fullLitres(shown.fuel)).toBe(140);
    expect(fullLitres(analysis.fuel)).toBe(127);
    expect(shown.fuel.capacityL).toBe(analysis.fuel.capacityL);
  });

  test('keeps each commodity its own: turn-back points, cans and stops', () => {
    expect(shown.fuel.plan).toMatchObject({
      turnBacks: [{ atKm: 812, first: true }],
      poursKm: [570, 640],
      stops: [{ atKm: 300, name: 'Reed Cross', used: true }],
    });
    expect(shown.water.plan).toMatchObject({
      turnBacks: [{ atKm: 700, first: false }],
      cans: [],
      poursKm: [],
      stops: [{ atKm: 500, name: 'Passed Well', used: false }],
    });
  });

  test('leaves room for what its drawing means', () => {
    const size = { widthPx: 310, heightPx: 720 };
    const all = { fromKm: 0, toKm: 1200 };
    expect(stripFrame(shown, size, all).topPx).toBeGreaterThan(stripFrame(analysis, size, all).topPx);
  });

  test('is stepped through from leg to leg', () => {
    expect(stepAlong(shown, 'metric', { atKm: 10, visibleKm: 1200 }, 'PageUp')).toBe(300);
    expect(stepAlong(shown, 'metric', { atKm: 310, visibleKm: 1200 }, 'PageUp')).toBe(1200);
  });
});

describe('what is aboard by the plan', () => {
  test('falls evenly, and is at a place what it is after filling or pouring there', () => {
    expect(aboardAt(levels, 150)).toMatchObject({ tankL: 70, totalL: 70 });
    expect(aboardAt(levels, 300)).toMatchObject({ tankL: 100, cansL: [20, 20], totalL: 140 });
    expect(aboardAt(levels, 435)).toMatchObject({ tankL: 90, cansL: [20, 20], totalL: 130 });
    expect(aboardAt(levels, 570)).toMatchObject({ tankL: 100, cansL: [0, 20] });
    expect(aboardAt(levels, 1200)!.tankL).toBe(28);
    expect(aboardAt(levels, 1300)!.tankL).toBe(28);
    expect(aboardAt(levels, -1)!.tankL).toBe(100);
    expect(aboardAt([], 5)).toBeNull();
  });

  test('counts the full cans, and tells the grades of water', () => {
    expect([100, 400, 600, 700].map((km) => cansFull(aboardAt(levels, km)!))).toEqual([0, 2, 1, 0]);
    expect(aboardAt(shown.water.plan!.levels, 600)).toMatchObject({ drinkableL: 32.5, washingL: 15 });
  });

  test('is said in words: tanks and cans apart, drinkable and washing where told', () => {
    expect(placeInWords(shown, 435, 'metric').replaceAll('\u00a0', ' ')).toBe(
      'km 435, by the plan: diesel 130 L left, tanks 90 L, 2 cans full; ' +
        'drinking water 54 L left, drinkable 37 L, washing 16 L',
    );
    expect(placeInWords(shown, 1050, 'metric')).toMatch(/washing [^,]+, no map data$/);
  });

  test('is never below the lower nor above the higher end of its piece', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1200, noNaN: true }), (km) => {
        const { tankL, totalL } = levelAt(shown.fuel, km)!.aboard!;
        expect(tankL).toBeGreaterThanOrEqual(28);
        expect(totalL).toBeLessThanOrEqual(140);
        expect(totalL).toBeGreaterThanOrEqual(tankL);
      }),
    );
  });
});

describe('the areas of a plan', () => {
  test('are the tanks along the road, with every fill and pour as a step', () => {
    expect(corners(planAreas(levels, scale).tanks!)).toEqual([
      [100, 0],
      [40, -300],
      [100, -300],
      [80, -570],
      [100, -570],
      [80, -640],
      [100, -640],
      [28, -1200],
      [0, -1200],
      [0, 0],
    ]);
  });

  test('and each can as a band beyond them, from where it is filled to where it is poured', () => {
    const [first, second, ...more] = planAreas(levels, scale).cans.map(corners);
    expect(more).toEqual([]);
    expect(first).toEqual([
      [120, -300],
      [100, -570],
      [80, -570],
      [100, -300],
    ]);
    expect(second!.slice(0, 4)).toEqual([
      [140, -300],
      [120, -570],
      [120, -570],
      [100, -640],
    ]);
  });

  test('end together where the level of all does, whatever is poured', () => {
    const outermost = planAreas(levels, scale).cans.at(-1)!;
    const widest = Math.max(...corners(outermost).map(([x]) => x!));
    expect(widest).toBe(Math.max(...levels.map(({ totalL }) => totalL)));
  });

  test('can be filled twice, and are none without levels', () => {
    const twice = [...levels, ...levels.map((one) => ({ ...one, atKm: one.atKm + 1200 }))];
    expect(planAreas(twice, scale).cans).toHaveLength(4);
    expect(planAreas([], scale)).toEqual({ tanks: null, cans: [] });
  });
});

describe('the line of water that is fit to drink', () => {
  const graded = (drinkableL: number, washingL: number, atKm: number) => ({
    ...levels[0]!,
    ...{ atKm, drinkableL, washingL },
  });

  test('stands where the drinkable litres end', () => {
    const line = drinkableLine([graded(50, 20, 0), graded(15, 10, 300)], scale);
    expect(corners(`${line}Z`)).toEqual([
      [50, 0],
      [15, -300],
    ]);
  });

  test('is not there where nothing is kept for washing, or no grades are told', () => {
    expect(drinkableLine([graded(50, 0, 0), graded(15, 0, 300)], scale)).toBeNull();
    expect(drinkableLine(levels, scale)).toBeNull();
  });
});

describe('the bar of full cans', () => {
  test('has a stretch for each count, falling at every pour', () => {
    expect(canSpans(carry!)).toEqual([
      { fromKm: 300, toKm: 570, cans: 2 },
      { fromKm: 570, toKm: 640, cans: 1 },
    ]);
  });

  test('goes on with what is not poured, and leaves out stretches without length', () => {
    expect(canSpans({ ...carry!, cans: 3, pourAtKm: [400, 400], toKm: 1200 })).toEqual([
      { fromKm: 300, toKm: 400, cans: 3 },
      { fromKm: 400, toKm: 1200, cans: 1 },
    ]);
    expect(canSpans({ ...carry!, pourAtKm: [], toKm: 1200 })).toEqual([{ fromKm: 300, toKm: 1200, cans: 2 }]);
  });

  test('has its count in words where they fit, as a figure, or not at all', () => {
    expect([80, 30, 10].map((px) => canWords({ cans: 2 }, px))).toEqual(['2 cans', '2', '']);
    expect(canWords({ cans: 1 }, 80)).toBe('1 can');
  });
});

describe('the labels of a plan', () => {
  const labels = (commodity: 'fuel' | 'water') =>
    halfLabels({
      report: shown[commodity],
      passings: analysis.passings,
      commodity,
      units: 'metric',
      selected: null,
      lengthKm: 1200,
      shown: { fromKm: 0, toKm: 1200 },
      labelPx: 122,
      topPx: 0,
      bottomPx: 700,
      yOfKm: (km) => 700 - (km / 1200) * 700,
    });

  test('name the stops that are used, and write out every turn-back point', () => {
    const fuel = labels('fuel');
    expect(fuel.flatMap((label) => (label.kind === 'gap' ? [label.name] : []))).toEqual([
      'High Cairn',
      'Reed Cross',
    ]);
    expect(fuel.find((label) => label.kind === 'turn-back')).toMatchObject({
      lines: ['turn back', 'before km\u00a0812'],
      first: true,
    });
    expect(labels('water').find((label) => label.kind === 'turn-back')).toMatchObject({ first: false });
  });

  test('say what is passed by', () => {
    const notes = labels('water').flatMap((label) => (label.kind === 'note' ? [label.text] : []));
    expect(notes).toContain('past Passed Well');
  });
});
