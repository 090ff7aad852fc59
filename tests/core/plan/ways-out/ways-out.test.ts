import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../../server/contract/common.ts';
import type { WayOut } from '../../../../server/contract/plan.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { type AnalyseInput, reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import type { MappedFeature } from '../../../../server/core/input/sources.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { withLessWashing } from '../../../../server/core/plan/ways-out/less-washing.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { reckoned } from '../../../helpers/reckoned.ts';
import { planCarry, waysOut } from '../by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options = () => ({ solver, seconds: 30, clock: () => 0 });
const planOf = (input: AnalyseInput) => planCarry(reckoned(input), options()).plan;

function waysOutOf(input: AnalyseInput, more: { moreCans?: boolean; clock?: () => number } = {}): WayOut[] {
  const { moreCans = true } = more;
  return waysOut({
    ...options(),
    ...more,
    moreCans,
    until: 1,
    reckoned: reckoned(input),
    reckon: (rig: RigFile) => reckonTrip({ ...input, rig }),
  }).ways;
}

/** The trip with no more cans than these. */
const limited = (input: AnalyseInput, fuel: number, water: number): AnalyseInput => ({
  ...input,
  trip: { ...input.trip, plan: { ...input.trip.plan, mostCans: { fuel, water } } },
});

/** Taps every 200 km, so that water is no matter. */
const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));
const NO_CANS: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 0 } } };
/** Water as it may be had, no reserve and no cans. */
const PLAIN_WATER: RigFile['water'] = {
  ...EXAMPLE_RIG.water,
  cans: { litres: 20, owned: 0 },
  reserve: { litres: 0 },
};

/**
 * The trip with a way out done: cans within the limit, the rig changed, depots and stops on the map as sure as can be.
 * A depot gives no more than was laid.
 */
function done(input: AnalyseInput, way: WayOut, limits: { fuel: number; water: number }): AnalyseInput {
  const { rig, trip, supplies } = input;
  const withFeatures = (features: MappedFeature[], more: Partial<TripFile> = {}): AnalyseInput => ({
    ...input,
    supplies: { ...supplies, features: [...supplies.features, ...features] },
    trip: { ...trip, ...more },
  });
  switch (way.kind) {
    case 'fill-first': {
      const aboard = (commodity: Commodity) => {
        const more = way.fills!.find((fill) => fill.commodity === commodity)?.litres ?? 0;
        return more + (commodity === 'fuel' ? trip.aboard!.fuelLitres! : trip.aboard!.waterLitres!);
      };
      return {
        ...input,
        trip: { ...trip, aboard: { fuelLitres: aboard('fuel'), waterLitres: aboard('water') } },
      };
    }
    case 'more-cans':
      return limited(input, Math.max(limits.fuel, way.cans.fuel), Math.max(limits.water, way.cans.water));
    case 'less-washing':
      return { ...input, rig: withLessWashing(rig, rig.crew!, way.cutPercent!) };
    case 'longer-days':
      return { ...input, rig: { ...rig, pace: { ...rig.pace, hoursPerDay: way.amount } } };
    case 'depot': {
      const depots = way.depots!;
      const id = (index: number) => `node/70${index}`;
      return withFeatures(
        depots.map(({ atKm, commodity }, index) =>
          pointFeature(id(index), atKm, commodity === 'fuel' ? DIESEL : TAP),
        ),
        {
          plan: {
            ...trip.plan,
            stops: depots.map(({ commodity, litres }, index) => ({
              id: id(index),
              mostLitres: { [commodity]: litres },
            })),
          },
        },
      );
    }
    case 'other-stop': {
      const stops = way.stops!;
      return {
        ...withFeatures([]),
        supplies: {
          ...supplies,
          features: supplies.features.map((feature) => {
            const stop = stops.find(({ id }) => id === feature.id);
            if (stop === undefined || stop.counts) return feature;
            return { ...feature, tags: stop.commodity === 'fuel' ? DIESEL : TAP };
          }),
        },
        trip: { ...trip, corridorKm: 50 },
      };
    }
  }
}

/** All ways out of a trip, each tried: without it there is no plan, with it there is one, and no way has more cans unasked. */
function triedWays(input: AnalyseInput): WayOut[] {
  const { mostCans } = planOf(input);
  expect(planOf(input).status).toBe('none');
  const ways = waysOutOf(input);
  for (const way of ways) {
    const plan = planOf(done(input, way, mostCans));
    expect(plan.status, way.text).toBe('found');
    if (way.kind === 'more-cans') continue;
    expect(way.cans.fuel).toBeLessThanOrEqual(mostCans.fuel);
    expect(way.cans.water).toBeLessThanOrEqual(mostCans.water);
    expect(way.moreKg).toBe(0);
  }
  return ways;
}

const kindsOf = (ways: readonly WayOut[]) => ways.map(({ kind }) => kind);

describe('a start with little aboard', () => {
  const input = inputOf({
    document: equatorDocument(700),
    features: [0, 350, 699].flatMap((km, index) => [
      pointFeature(`node/1${index}`, km, DIESEL),
      pointFeature(`node/2${index}`, km, TAP),
    ]),
  });
  const leaving = (fuelLitres: number, waterLitres: number) => ({
    ...input,
    trip: { ...input.trip, aboard: { fuelLitres, waterLitres } },
  });

  it('is said as that, and what to fill before leaving, at the least', () => {
    // Pump and tap stand at the start: the reserves, 17 l and two days of 18 l, are all that is missing.
    const low = leaving(3, 5);
    const [way] = triedWays(low);
    expect(way).toMatchObject({
      kind: 'fill-first',
      fills: [
        { commodity: 'fuel', litres: 14 },
        { commodity: 'water', litres: 31 },
      ],
      text: 'Fill at least 14 l of fuel and 31 l of water before leaving: then it can be done.',
    });
    const { breaks } = planOf(low);
    expect(breaks.map(({ text }) => text)).toEqual([
      expect.stringContaining('14 l of fuel are missing with the 3 l aboard at the start and 0 cans'),
      expect.stringContaining('31 l of water are missing with the 5 l aboard at the start and 0 cans'),
    ]);
  });

  it('asks for no more of what there is enough of', () => {
    const [way] = triedWays(leaving(3, 60));
    expect(way).toMatchObject({ kind: 'fill-first', fills: [{ commodity: 'fuel', litres: 14 }] });
  });
});

describe('ways out', () => {
  // Without cans the second gap is 9.442 l short.
  const input = (more: MappedFeature[] = []) =>
    limited(
      inputOf({ rig: NO_CANS, features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2), ...more] }),
      0,
      2,
    );

  it('finds one can more, and a depot that each make a plan when tried', { tags: 'slow' }, () => {
    const found = triedWays(input());
    expect(kindsOf(found)).toEqual(['more-cans', 'depot']);
    const [cans, depot] = found;
    expect(cans).toMatchObject({ amount: 1, unit: 'cans', cans: { fuel: 1, water: 0 } });
    // One diesel can of 20 l, 4.7 kg empty (K2), 845 kg/m3 (F1).
    expect(cans!.moreKg).toBeCloseTo(4.7 + 20 * 0.845, 9);
    // The latest place: 110 l last for 647.06 km, 2.6 of them back to the route.
    const atKm = 640 + (127 - 17) / 0.17 - 2.6;
    expect(depot!.atKm).toBeCloseTo(atKm, 0);
    // 17 l aboard there; on to the end and the reserve of 17 l takes 9.442 l: one can.
    expect(depot!.depots).toEqual([
      { atKm: depot!.atKm, commodity: 'fuel', cans: 1, litres: 20, latest: true },
    ]);
    expect(depot).toMatchObject({ amount: 20, unit: 'l', commodity: 'fuel' });
    expect(depot!.text).toMatch(
      /^1 can \(20 l\) of fuel laid beforehand at km 1284\.4, the latest place that is reached with the reserve from .* \(km 640\): so it can be done\.$/,
    );
  });

  it('leaves out more cans where the plan itself has them', { tags: 'slow' }, () => {
    const free = inputOf({ rig: NO_CANS, features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2)] });
    expect(planOf(free)).toMatchObject({ status: 'found', getCans: { fuel: 1, water: 0 } });
    const ways = waysOutOf(free, { moreCans: false });
    expect(kindsOf(ways)).toEqual(['depot']);
    expect(ways[0]!.cans).toEqual({ fuel: 0, water: 0 });
  });

  it('offers a doubtful point only to telephone first, and never a smaller reserve', { tags: 'slow' }, () => {
    const found = triedWays(input([pointFeature('node/5', 1000, { 'disused:amenity': 'fuel' })]));
    const other = found.filter(({ kind }) => kind === 'other-stop');
    expect(other).toHaveLength(1);
    expect(other[0]).toMatchObject({ id: 'node/5', telephoneFirst: true });
    expect(other[0]!.stops).toMatchObject([{ id: 'node/5', counts: false, commodity: 'fuel' }]);
    expect(other[0]!.text).toMatch(/^Telephone first/);
    expect(found.some(({ text }) => text.includes('reserve of'))).toBe(false);
  });

  it('looks for other stops in the stretches that are too long only', () => {
    // Eight doubtful pumps on the first gap, which holds, and one on the second, which does not.
    const spare = [100, 120, 140, 160, 180, 210, 220, 230].map((km, index) =>
      pointFeature(`node/3${index}`, km, { 'disused:amenity': 'fuel' }),
    );
    const found = waysOutOf(input([...spare, pointFeature('node/5', 1000, { 'disused:amenity': 'fuel' })]));
    const other = found.filter(({ kind }) => kind === 'other-stop');
    expect(other.map(({ id }) => id)).toEqual(['node/5']);
  });

  it('offers a way round by a stop that counts but lies off the corridor', () => {
    // 636 km each way: 110 l last for 647.
    const bare = inputOf({
      document: equatorDocument(1220),
      rig: NO_CANS,
      features: [...TAPS, pointFeature('node/7', 610, DIESEL, 20)],
    });
    const [round] = triedWays(limited(bare, 0, 2)).filter(({ kind }) => kind === 'other-stop');
    expect(round).toMatchObject({ id: 'node/7', telephoneFirst: false, unit: 'km' });
    expect(round!.amount).toBeCloseTo(2 * 20 * 1.3, 1);
  });

  it('goes by two stops where one is not enough, those that count before those to telephone first', () => {
    const bare = inputOf({
      document: equatorDocument(1800),
      rig: { ...NO_CANS, water: { ...PLAIN_WATER, tanks: [{ name: 'under floor', litres: 500 }] } },
      features: [
        pointFeature('node/1', 600, DIESEL, 10),
        pointFeature('node/2', 1200, DIESEL, 10),
        pointFeature('node/3', 610, { 'disused:amenity': 'fuel' }),
      ],
    });
    const other = triedWays(limited(bare, 0, 0)).filter(({ kind }) => kind === 'other-stop');
    expect(other.map(({ stops }) => stops!.map(({ id }) => id))).toEqual([
      ['node/1', 'node/2'],
      ['node/3', 'node/2'],
    ]);
    expect(other.map(({ telephoneFirst }) => telephoneFirst)).toEqual([false, true]);
    expect(other[0]!.amount).toBeCloseTo(4 * 10 * 1.3, 1);
    expect(other[0]!.text).toMatch(/^By way of .* and .* it can be done\.$/);
    expect(other[1]!.text).toMatch(
      /^Telephone first: if [^,]+ \(km 610, [^)]+\) has fuel fit for it, by way of .* \(km 1200, .*\) as well it can be done\./,
    );
  });

  it('drives longer days where water is what is missing', () => {
    const found = triedWays(
      limited(
        inputOf({
          rig: { ...EXAMPLE_RIG, water: PLAIN_WATER },
          features: [pointFeature('node/1', 640, DIESEL), pointFeature('node/2', 300, TAP)],
        }),
        4,
        0,
      ),
    );
    const longer = found.find(({ kind }) => kind === 'longer-days');
    // From km 300 on 70 l last 93.3 h. With 7.5 h a day, 262.5 km, km 300 is reached 1.1 h after the first night, the end
    // 0.8 h after the fifth: 95.7 h. With 8 h, 280 km, it is 0.6 h and 6.3 h after the fourth: 77.7 h.
    expect(longer).toMatchObject({ amount: 8, unit: 'hours a day' });
    expect(longer!.text).toContain('Driving faster is never reckoned with.');
  });

  it('tries nothing any more when the time is over', () => {
    expect(waysOutOf(input(), { clock: () => 2 })).toEqual([]);
  });
});

describe('depots', () => {
  it('lays one in each broken stretch of either commodity, in whole cans', () => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: { ...NO_CANS.fuel, cans: { litres: 15, owned: 0 } },
      water: { ...PLAIN_WATER, cans: { litres: 10, owned: 0 } },
    };
    // Fuel lasts 647 km of the first 700, water 93.3 h of the 96 from km 700 to 1,680: two stretches, two places.
    const features = [
      pointFeature('node/1', 700, DIESEL),
      pointFeature('node/2', 1340, DIESEL),
      pointFeature('node/3', 350, TAP),
      pointFeature('node/4', 700, TAP),
    ];
    const input = limited(inputOf({ document: equatorDocument(1680), rig, features }), 0, 0);
    const depot = triedWays(input).find(({ kind }) => kind === 'depot')!;
    expect(depot.depots).toMatchObject([
      // 53 km and the reserve of 17 l, all of it aboard: 9 l, so one can of 15 l.
      { commodity: 'fuel', atKm: 647, cans: 1, litres: 15, latest: true },
      // Km 700 is 6 h after the second night; 93.3 h later it is 3 1/3 h after the sixth, of km 1,470, and 116.67 km on.
      // Places go by tenths of a km.
      { commodity: 'water', atKm: expect.closeTo(1586.6, 6), cans: 1, litres: 10, latest: true },
    ]);
    expect(
      depot.depots!.every(({ cans, litres, commodity }) => litres === cans * rig[commodity].cans!.litres!),
    ).toBe(true);
    expect(depot.text.split('; ')).toHaveLength(2);
  });

  it('lays none within a day of walking from the end, where one before it helps', () => {
    // Fuel lasts 647 km of 660: what is laid 13 km before the end nobody needs any more.
    const input = limited(inputOf({ document: equatorDocument(660), rig: NO_CANS, features: TAPS }), 0, 0);
    const depot = triedWays(input).find(({ kind }) => kind === 'depot')!;
    expect(depot.depots).toMatchObject([
      { commodity: 'fuel', atKm: expect.closeTo(634.9, 1), cans: 1, latest: false },
    ]);
  });

  it('lays both at one place where both are missing and one drive will do', () => {
    const rig: RigFile = { ...NO_CANS, water: PLAIN_WATER };
    // Fuel lasts 647 km, water till the fourth night, of km 980: at km 647 both are laid.
    const input = limited(inputOf({ document: equatorDocument(1000), rig, features: [] }), 0, 0);
    const depot = triedWays(input).find(({ kind }) => kind === 'depot')!;
    expect(depot.depots!.map(({ commodity, latest }) => [commodity, latest])).toEqual([
      ['fuel', true],
      ['water', false],
    ]);
    expect(new Set(depot.depots!.map(({ atKm }) => atKm)).size).toBe(1);
  });

  it('lays several in one long stretch, and none where four are not enough', () => {
    const rig: RigFile = {
      ...NO_CANS,
      water: { ...PLAIN_WATER, tanks: [{ name: 'under floor', litres: 1000 }] },
    };
    const depotsOver = (lengthKm: number) =>
      triedWays(limited(inputOf({ document: equatorDocument(lengthKm), rig, features: [] }), 0, 0)).find(
        ({ kind }) => kind === 'depot',
      )?.depots;
    // A depot every 647 km, each but the last with 110 l: 6 cans.
    expect(depotsOver(2000)!.map(({ cans }) => cans)).toEqual([6, 6, 1]);
    expect(depotsOver(3300)).toBeUndefined();
  });
});

describe('a depot', () => {
  it('is told only where the plan stops at it: not one for a supply that in the end is passed by', () => {
    // 10.005 l last for 100.05 km. 45 km of road off km 60 is a pump that is out of reach by 5 km, 90 km off km 75 another:
    // depots before both, at km 59.9 and 74.8, and 100 km behind the second. From the start the second is reached without
    // the first. 25.25 km are left there, and 74.75 km are 7.475 l; from the third to the end 75.2 km are 7.52 l.
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: {
        kind: 'diesel',
        litresPer100Km: { low: 10, typical: 10, high: 10 },
        tanks: [{ name: 'main', litres: 10.005 }],
        cans: { litres: 1, owned: 0 },
        reserve: { litres: 0, shareOfNeed: 0 },
      },
      water: { ...PLAIN_WATER, tanks: [{ name: 'under floor', litres: 1000 }] },
    };
    const bare = inputOf({
      document: equatorDocument(250),
      rig,
      features: [pointFeature('node/1', 60, DIESEL, 22.5), pointFeature('node/2', 75, DIESEL, 45)],
    });
    const trip = { ...bare.trip, corridorKm: 50, detourFactor: 2 };
    const depot = triedWays(limited({ ...bare, trip }, 0, 0)).find(({ kind }) => kind === 'depot');
    expect(depot?.depots).toMatchObject([
      { commodity: 'fuel', atKm: expect.closeTo(74.8, 3), cans: 8, litres: 8, latest: false },
      { commodity: 'fuel', atKm: expect.closeTo(174.8, 3), cans: 8, litres: 8, latest: true },
    ]);
    expect(depot?.text).not.toContain('km 60');
    expect(depot?.text).toContain('the latest place that is reached with the reserve from the depot (km 75)');
  });

  it('is laid with what the halt for water behind it takes as well', () => {
    // Fuel lasts to km 1,284.4 with 17 l in reserve, as in the worked example; one can of 20 l would do for the 55.6 km
    // to the end. But with a night at a camp of km 1,300 water from km 845 on is for 70 h, 52.5 l, and 18 in reserve: more
    // than 70, to be had at km 1,290 only, 39 km of road off it: 55.6 + 78 km are 22.7 l.
    const rig = { ...NO_CANS, water: { ...NO_CANS.water, reserve: { days: 1 } } };
    const features = [
      pointFeature('node/1', 640, DIESEL, 2),
      ...[200, 400, 600, 845].map((km) => pointFeature(`node/9${km}`, km, TAP)),
      pointFeature('node/8', 1290, TAP, 30),
    ];
    const bare = inputOf({ rig, features });
    const trip = { ...bare.trip, corridorKm: 50, camps: [{ atKm: 1300 }] };
    const depot = triedWays(limited({ ...bare, trip }, 0, 0)).find(({ kind }) => kind === 'depot');
    expect(depot?.depots).toMatchObject([{ commodity: 'fuel', atKm: expect.closeTo(1284.4, 1), cans: 2 }]);
  });
});

describe('less washing', () => {
  const crewRig = (people: NonNullable<RigFile['crew']>['people'], litres: number): RigFile => ({
    ...EXAMPLE_RIG,
    water: {
      tanks: [{ name: 'under floor', litres }],
      cans: { litres: 20, owned: 0 },
      reserve: { litres: 0 },
    },
    crew: { people },
    pace: { hoursPerDay: 24, kmPerHour: { slow: 244.9 / 24, typical: 244.9 / 24, fast: 244.9 / 24 } },
  });
  /** 4 days of 244.9 km without water, driven by turns round the clock, a pump half way. */
  const over = (rig: RigFile) =>
    limited(
      inputOf({ document: equatorDocument(979.6), rig, features: [pointFeature('node/1', 489.8, DIESEL)] }),
      4,
      0,
    );

  it('gives up no more than it must, by steps of 10 %', { tags: 'slow' }, () => {
    // Two people of 5 l and 1 l of teeth and hands; 4 l of washing beside it and 6 l of shower can be cut.
    const person = {
      count: 2,
      drinking: { low: 4, typical: 4, high: 4 },
      cooking: { low: 1, typical: 1, high: 1 },
      washingUp: 0,
      washing: { low: 5, typical: 5, high: 5 },
      shower: { low: 6, typical: 6, high: 6 },
    };
    const waysWith = (litres: number) =>
      triedWays(over(crewRig([person], litres))).filter(({ kind }) => kind === 'less-washing');
    // 32 l a day are 128 l; 20 of them can be cut: 100 l last at 25 l a day, a cut of 35 %.
    const [way] = waysWith(100);
    expect(way).toMatchObject({ cutPercent: 40, unit: 'l a day' });
    expect(way!.amount).toBeCloseTo(8, 9);
    expect(way!.text).toMatch(/^With 40 % less water for washing and showers, .* 8\.0 l a day less/);
    // 12 l a day of drinking grade are 48 l: all of the rest given up is just enough, a litre less is not.
    expect(waysWith(48)[0]).toMatchObject({ cutPercent: 100 });
    expect(waysWith(48)[0]!.text).toMatch(/^Without washing and showers, /);
    expect(waysWith(47.9)).toEqual([]);
  });

  it('takes nothing from drinking grade, not from those who wash with less than a litre', () => {
    const rig = crewRig([{ count: 2, level: 'careful' }, { level: 'plenty' }], 90);
    for (const cut of [10, 50, 100]) {
      const before = reckoned(over(rig)).analysis.waterUse;
      const after = reckoned(over(withLessWashing(rig, rig.crew!, cut))).analysis.waterUse;
      const drinking = (use: typeof before) => use.uses.filter(({ grade }) => grade === 'drinking');
      expect(drinking(after).map(({ use, litresPerDay }) => [use, litresPerDay])).toEqual(
        drinking(before).map(({ use, litresPerDay }) => [use, litresPerDay]),
      );
      expect(after.litresPerDay.high).toBeLessThan(before.litresPerDay.high);
    }
  });

  it('is no way out where washing water is not carried, or all was observed', () => {
    const person = { level: 'plenty' as const, count: 2 };
    const rig = crewRig([person], 90);
    const atSource = over({ ...rig, crew: { people: [person], washingAtSource: true } });
    const observed = over({ ...rig, crew: { people: [person], observedLitresPerDay: 40 } });
    for (const input of [atSource, observed]) expect(kindsOf(triedWays(input))).not.toContain('less-washing');
  });
});
