import { describe, expect, it } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { Heat } from '../../../../server/contract/crew.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import type { Reckoned } from '../../../../server/core/analyse/analyse.ts';
import type { MappedFeature } from '../../../../server/core/input/sources.ts';
import { basisOf } from '../../../../server/core/plan/drive/basis.ts';
import { turnBacksOf } from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import { checkTrip } from '../../../../server/core/trip/check-trip.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { analysisOf, DIESEL, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { reckoned } from '../../../helpers/reckoned.ts';
import { gaugeOf, planCarry, whatIf } from '../../plan/by-hand/contracted.ts';

type Analysed = Reckoned['analysis'];
const HOT: Heat = { temperatureC: 38, humidityPercent: 30, sun: 'full', work: 'easy', workHoursPerDay: 3 };
const MILD: Heat = { temperatureC: 24, humidityPercent: 30, sun: 'full', work: 'easy', workHoursPerDay: 3 };
const rigWith = (heat: Heat | undefined, changes: Partial<RigFile['water']> = {}): RigFile => ({
  ...EXAMPLE_RIG,
  water: {
    tanks: [
      { name: 'under floor', litres: 90 },
      { name: 'shower', litres: 20, grade: 'washing' },
    ],
    cans: { litres: 20, owned: 4 },
    reserve: { days: 1, shareOfNeed: 0.1 },
    ...changes,
  },
  crew: { people: [{ count: 3, level: 'careful' }], ...(heat === undefined ? {} : { heat }) },
});
const features: MappedFeature[] = [
  pointFeature('node/1', 380, DIESEL, 2),
  pointFeature('node/2', 850, DIESEL),
  ...[190, 400, 610, 800, 1010, 1200].map((km, index) => pointFeature(`node/3${index}`, km, TAP, index / 2)),
];
const ON = { on: '2026-04-20' };
const tripWith = (heat: TripFile['heat'], changes: Partial<TripFile> = {}): TripFile => ({
  ...inputOf().trip,
  onward: { km: 40, hours: 2 },
  stays: [{ atKm: 500, days: 1.3 }],
  waterNotes: [{ id: 'node/31', ...ON, saltOk: true, litresPerMinute: 0.5 }],
  ...changes,
  ...(heat === undefined ? {} : { heat }),
});
const waterOf = (rig: RigFile, trip: TripFile) => analysisOf({ features, rig, trip });

/** All numbers of an answer, by their paths. */
function numbersOf(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) => numbersOf(entry, `${path}/${key}`));
}

describe('heat all along the route', () => {
  const everywhere = [{ fromKm: 0, toKm: 1400, ...ON, ...HOT }];
  const [general, byStretch] = [
    reckoned(inputOf({ features, rig: rigWith(HOT), trip: tripWith(undefined) })),
    reckoned(inputOf({ features, rig: rigWith(undefined), trip: tripWith(everywhere) })),
  ] as const;
  const close = (of: unknown, expected: unknown) => {
    const [ours, theirs] = [numbersOf(of), numbersOf(expected)];
    expect(ours.map(([path]) => path)).toEqual(theirs.map(([path]) => path));
    for (const [index, [path, value]] of ours.entries()) {
      const other = theirs[index]?.[1] ?? Number.NaN;
      expect(Math.abs(value - other), `${path}: ${value}, ${other}`).toBeLessThan(1e-6);
    }
  };
  /** Without what tells how the figures were summed. */
  const figures = (gaps: Analysed['water']['gaps']) => gaps.map(({ working: _, ...gap }) => gap);

  it('has the gaps of a crew that told it as its own, grades and turn-back points included', () => {
    expect(general.analysis.water.gaps.length).toBe(7);
    close(figures(byStretch.analysis.water.gaps), figures(general.analysis.water.gaps));
    close(figures(byStretch.analysis.fuel.gaps), figures(general.analysis.fuel.gaps));
  });

  it('has its plan, gauge, turn-back points and what-ifs', async () => {
    const solver = await loadSolver();
    const [one, other] = [byStretch, general].map((of) => {
      const { plan, driven } = planCarry(of, { solver, seconds: 60, clock: () => 0 });
      const basis = basisOf(of, driven);
      const turns = turnBacksOf(basis);
      const { rows } = whatIf(of, basis, {});
      return toContract({
        legs: plan.legs,
        sheet: plan.sheet.map(({ water, fuel }) => ({ water, fuel })),
        cans: plan.cans,
        carries: plan.carries,
        turns,
        gauge: gaugeOf(basis, turns),
        rows: rows.filter(({ kind }) => kind !== 'hotter' && !kind.endsWith('-use')),
      });
    });
    expect(other?.legs.water.length).toBeGreaterThan(2);
    close(one, other);
  });
});

describe('heat on a stretch', () => {
  const heat = [{ fromKm: 420, toKm: 560, ...ON, ...HOT, by: 'Ann' }];
  const plain = waterOf(rigWith(MILD), tripWith(undefined));
  const hot = waterOf(rigWith(MILD), tripWith(heat));
  const added = hot.waterUse.inHeat[0]?.addedPerDay ?? 0;

  it('is the water of that heat for the hours that pass on it, nights and halts in it included', () => {
    const asOwn = waterOf(rigWith(HOT), tripWith(undefined));
    expect(added).toBeCloseTo(asOwn.waterUse.litresPerDay.high - plain.waterUse.litresPerDay.high, 9);
    expect(added).toBeGreaterThan(5);
    const index = plain.water.gaps.findIndex(({ from, to }) => from.atKm < 420 && to.atKm > 560);
    const [before, after] = [plain.water.gaps[index], hot.water.gaps[index]];
    // What passes between both ends of the stretch, told by halts of no length there.
    const stops = [419.999, 560.001].map((km, number) => pointFeature(`node/4${number}`, km, TAP));
    const cut = analysisOf({
      features: [...features, ...stops],
      rig: rigWith(MILD),
      trip: tripWith(undefined),
    });
    const days = cut.water.gaps.find(({ from }) => from.id === 'node/40')?.days ?? Number.NaN;
    const ofDetours = (before?.to.detourKm ?? 0) + (before?.from.detourKm ?? 0);
    const most = days * added + (ofDetours / 35 / 7) * added;
    const need = (after?.needL ?? Number.NaN) - (before?.needL ?? Number.NaN);
    expect(days).toBeGreaterThan(1.3);
    expect(need).toBeGreaterThan(days * added - 0.01);
    expect(need).toBeLessThan(most + 0.01);
    const terms = after?.working.needL ?? [];
    expect(terms.map(({ label }) => label)).toContain('more on hotter stretches');
    expect(terms.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(after?.needL ?? Number.NaN, 9);
  });

  it('touches no gap before or after it but for what is driven beside the route', () => {
    for (const [index, gap] of hot.water.gaps.entries()) {
      if (gap.from.atKm < 560 && gap.to.atKm > 420) continue;
      const more = gap.needL - (plain.water.gaps[index]?.needL ?? Number.NaN);
      const offKm = gap.from.detourKm + gap.to.detourKm + (gap.to.kind === 'end' ? 40 : 0);
      expect(more).toBeGreaterThanOrEqual(-1e-9);
      expect(more).toBeLessThan((offKm / 35 / 7 + 0.4) * added);
      if (offKm === 0) expect(more).toBeCloseTo(0, 9);
      // A reserve of days is that of the place where it must be aboard.
      expect(gap.reserveL - 0.1 * gap.needL).toBeCloseTo(
        (plain.water.gaps[index]?.reserveL ?? 0) - 0.1 * (plain.water.gaps[index]?.needL ?? 0),
        9,
      );
    }
  });

  it('raises the reserve of days of a gap that ends in it', () => {
    const stop = pointFeature('node/40', 500, TAP);
    const gapTo = (trip: TripFile) =>
      analysisOf({ features: [...features, stop], rig: rigWith(MILD), trip }).water.gaps.find(
        ({ to }) => to.id === 'node/40',
      );
    const base = (gap: ReturnType<typeof gapTo>) => (gap?.reserveL ?? 0) - 0.1 * (gap?.needL ?? 0);
    expect(base(gapTo(tripWith(heat))) - base(gapTo(tripWith(undefined)))).toBeCloseTo(added, 9);
  });

  it('is told among the assumptions, with whose word it is', () => {
    const { assumptions } = waterOf(rigWith(MILD), tripWith(heat));
    const told = assumptions.find(({ path }) => path === '/trip/heat/0');
    expect(told?.value).toMatch(
      /^38 °C between km 420 and km 560: [\d.]+ l a day, [\d.]+ l more than elsewhere$/,
    );
    expect(told?.why).toBe('you noted it on 2026-04-20 (Ann)');
  });

  it('that is cooler saves nothing, and says so', () => {
    const cooler = waterOf(rigWith(HOT), tripWith([{ fromKm: 420, toKm: 560, ...ON, ...MILD }]));
    const without = waterOf(rigWith(HOT), tripWith(undefined));
    expect(cooler.water).toEqual(without.water);
    expect(cooler.assumptions.find(({ path }) => path === '/trip/heat/0')?.value).toContain('nor less');
  });

  it('takes sun and work from the crew’s own heat, and the hotter of two that overlap', () => {
    const sparse = { temperatureC: 38, humidityPercent: 30 };
    const own = waterOf(rigWith(MILD), tripWith([{ fromKm: 420, toKm: 560, ...ON, ...sparse }]));
    expect(own.water.gaps).toEqual(hot.water.gaps);
    const warm = { ...sparse, temperatureC: 33 };
    const two = waterOf(
      rigWith(MILD),
      tripWith([
        { fromKm: 400, toKm: 500, ...ON, ...warm },
        { fromKm: 420, toKm: 560, ...ON, ...sparse },
        { fromKm: 450, toKm: 470, ...ON, ...warm },
      ]),
    );
    const needs = (of: typeof two) => of.water.gaps.map(({ needL }) => needL);
    for (const [index, need] of needs(two).entries())
      expect(need).toBeGreaterThanOrEqual((needs(hot)[index] ?? 0) - 1e-9);
    const index = two.water.gaps.findIndex(({ from, to }) => from.atKm < 430 && to.atKm > 560);
    expect((needs(two)[index] ?? 0) - (needs(hot)[index] ?? 0)).toBeLessThan(0.5 * added);
  });

  it('adds to what reverse osmosis throws away as well, and to an observed figure in proportion', () => {
    const osmosis: RigFile['treatment'] = {
      stages: [{ kind: 'reverse-osmosis', recovery: 0.25, flowLPerMin: 1 }],
      at: 'tap',
    };
    const addedOf = (rig: RigFile) => waterOf(rig, tripWith(heat)).waterUse.inHeat[0]?.addedPerDay ?? 0;
    expect(addedOf({ ...rigWith(MILD), treatment: osmosis })).toBeCloseTo(4 * added, 9);
    const crew = rigWith(MILD).crew;
    const high = plain.waterUse.litresPerDay.high;
    const observed = { low: high / 3, typical: high / 2, high: high / 2 };
    if (crew === undefined) throw new Error('no crew');
    expect(addedOf({ ...rigWith(MILD), crew: { ...crew, observedLitresPerDay: observed } })).toBeGreaterThan(
      added * 0.4,
    );
  });

  it('is of no use without a crew, or past the end, and says so', () => {
    const trip = tripWith([{ fromKm: 420, toKm: 560, ...ON, ...HOT }]);
    const bare = analysisOf({ features, trip });
    expect(bare.water).toEqual(analysisOf({ features, trip: tripWith(undefined) }).water);
    expect(bare.cautions.find(({ code }) => code === 'heat-without-crew')).toMatchObject({
      fromKm: 420,
      toKm: 560,
    });
    const past = waterOf(rigWith(MILD), tripWith([{ fromKm: 1400, toKm: 1500, ...ON, ...HOT }]));
    expect(past.water).toEqual(plain.water);
    expect(past.cautions.map(({ code }) => code)).toContain('heat-off-route');
  });

  it('is refused where it is told by halves or twice, backwards, or on no day', () => {
    const misfit = (stretch: object) => {
      const found = checkTrip({ heat: [{ fromKm: 1, toKm: 2, ...ON, ...stretch }] }, null);
      return found === null ? null : [found.path, found.misfit];
    };
    expect(misfit(HOT)).toBeNull();
    expect(misfit({ temperatureC: 38 })).toEqual(['/heat/0', 'heat-incomplete']);
    expect(misfit({ ...HOT, wbgtC: 30 })).toEqual(['/heat/0', 'heat-twice']);
    expect(misfit({ ...HOT, toKm: 1 })).toEqual(['/heat/0', 'stretch-backward']);
    expect(misfit({ ...HOT, on: '2026-02-30' })).toEqual(['/heat/0/on', 'date-impossible']);
  });
});
