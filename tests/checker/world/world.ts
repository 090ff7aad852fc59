import fc from 'fast-check';
import type { LoadedTrip } from '../../../server/app/loaded-trip.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { DIESEL, WORLD_COVER } from '../../helpers/analyse-input.ts';
import { documentOfShape, lonLatOf, placeBeside, type RouteShape } from './routes.ts';

/** A trip as a user would put it. */
export interface World {
  readonly loaded: LoadedTrip;
  readonly rig: RigFile;
  readonly trip: TripFile;
}

/** Not whole, so that no day ends at the very place of a stop. */
const odd = (min: number, max: number) =>
  fc
    .integer({ min: Math.ceil(min * 1000), max: Math.floor(max * 1000) })
    .map((value) => value / 1000 + 0.000137);
const whole = (min: number, max: number) => fc.integer({ min, max });
const maybe = <T>(arbitrary: fc.Arbitrary<T>, freq = 2) => fc.option(arbitrary, { freq, nil: undefined });

const shape: fc.Arbitrary<RouteShape> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('straight' as const), lengthKm: odd(150, 900) }) },
  {
    weight: 2,
    arbitrary: fc
      .record({ outKm: odd(100, 500), share: odd(0.15, 0.9), offKm: odd(20, 250) })
      .map(({ outKm, share, offKm }) => ({ kind: 'spur' as const, outKm, backKm: outKm * share, offKm })),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('loop' as const),
      beforeKm: odd(20, 250),
      sideKm: odd(20, 200),
      deepKm: odd(12, 80),
      onKm: odd(20, 250),
    }),
  },
);

/** A place where something is to be had. */
const supply = fc.record({
  share: odd(0.01, 0.985),
  offKm: fc.oneof(fc.constant(0), odd(0.05, 3.2)),
  /** `node`: one object that has both; `beside`: two objects close together. */
  gives: fc.constantFrom('fuel', 'fuel', 'water', 'water', 'node', 'beside'),
  besideKm: odd(0, 0.9),
  waitHours: maybe(fc.constantFrom(0.5, 3.3, 9.7, 26.1, 52)),
  litresPerMinute: maybe(fc.constantFrom(0.02, 0.07, 0.15, 0.6, 4)),
});
type Supply = typeof supply extends fc.Arbitrary<infer S> ? S : never;

/** What one of the supplies gives at the most: of few, as such plans take long to be found. */
const bound = fc.record({
  supply: whole(0, 7),
  fuelL: maybe(whole(8, 60), 4),
  waterL: maybe(whole(6, 50), 4),
});
type Bound = typeof bound extends fc.Arbitrary<infer B> ? B : never;

const needs = fc.record({
  fuelPer100Km: odd(8, 22),
  fuelTankL: odd(35, 95),
  secondTankL: fc.oneof(fc.constant(0), fc.constant(0), odd(15, 40)),
  unusableL: fc.constantFrom(0, 0, 2.5),
  fuelCanL: fc.constantFrom(5, 10, 20, 30),
  fuelCans: whole(0, 5),
  fuelReserve: fc.constantFrom(
    { km: 37 },
    { km: 80, shareOfNeed: 0.1 },
    { litres: 4.4 },
    { litres: 3, shareOfNeed: 0.25 },
    { fraction: 0.1 },
  ),
  waterPerDay: odd(5, 17),
  waterTankL: odd(18, 70),
  waterCanL: fc.constantFrom(5, 10, 20),
  waterCans: whole(0, 5),
  waterReserve: fc.constantFrom(
    { days: 1 },
    { days: 0.4, shareOfNeed: 0.1 },
    { litres: 3.3 },
    { fraction: 0.12 },
  ),
  hoursPerDay: odd(4, 11),
  kmPerHour: odd(18, 60),
});
type Needs = typeof needs extends fc.Arbitrary<infer N> ? N : never;

const journey = fc.record({
  allowancePercent: fc.constantFrom(0, 3.7, 5, 11.3),
  detourFactor: fc.constantFrom(1, 1.3, 1.9),
  onwardKm: fc.oneof(fc.constant(0), odd(0, 60)),
  onwardHours: maybe(fc.constantFrom(0, 0.4, 3.1, 9)),
  fuelShare: fc.constantFrom(1, 1, 0.85, 0.6),
  waterShare: fc.constantFrom(1, 1, 0.85, 0.6),
  fillAtStart: maybe(fc.record({ fuel: maybe(fc.boolean(), 3), water: maybe(fc.boolean(), 3) })),
  mostCans: maybe(fc.record({ fuel: maybe(whole(0, 6), 3), water: maybe(whole(0, 6), 3) })),
  spendReserveOnFailure: maybe(fc.boolean()),
  camps: fc.array(odd(0.03, 0.97), { maxLength: 2 }),
  stays: fc.array(fc.record({ share: odd(0.03, 0.97), days: fc.constantFrom(0.21, 1, 1.4) }), {
    maxLength: 1,
  }),
  hot: maybe(fc.record({ share: odd(0.02, 0.9), km: odd(15, 260), temperatureC: odd(31, 44) })),
  oneWay: maybe(fc.record({ share: odd(0.05, 0.9), km: odd(2, 40) })),
});
type Journey = typeof journey extends fc.Arbitrary<infer J> ? J : never;

const masses = maybe(
  fc.record({
    kerbKg: odd(1900, 2700),
    includes: fc.constantFrom(
      'running-order' as const,
      'full-fuel-no-driver' as const,
      { fuelPercent: 0, driverKg: 75 },
      { fuelPercent: 50, driverKg: 0, waterPercent: 30 },
    ),
    peopleKg: fc.array(odd(50, 100), { maxLength: 3 }),
    petKg: maybe(odd(5, 40)),
    gearKg: fc.array(odd(5, 120), { maxLength: 2 }),
    /** Permitted beyond the kerb mass. */
    totalKg: maybe(odd(150, 600), 5),
    tanksEmpty: maybe(fc.constantFrom('in-order' as const, 'together' as const), 3),
    fittedTankKg: maybe(odd(4, 20)),
    fuelCanKg: odd(1, 6),
    waterCanKg: odd(0.5, 2),
    axles: maybe(
      fc.record({
        rearShare: odd(0.4, 0.6),
        wheelbaseM: odd(2.4, 3.4),
        places: fc.array(odd(-0.4, 3.9), { minLength: 12, maxLength: 12 }),
        frontLeftKg: odd(0, 400),
        rearLeftKg: odd(100, 600),
      }),
    ),
  }),
);
type Masses = typeof masses extends fc.Arbitrary<infer M> ? M : never;

export interface Drawn {
  readonly shape: RouteShape;
  readonly supplies: readonly Supply[];
  readonly bounds: readonly Bound[];
  readonly needs: Needs;
  readonly journey: Journey;
  readonly masses: Masses;
}

/** Any trip. */
export const drawnTrips: fc.Arbitrary<Drawn> = fc.record({
  shape,
  supplies: fc.array(supply, { minLength: 3, maxLength: 8 }),
  bounds: fc.oneof(
    { weight: 3, arbitrary: fc.constant([]) },
    { weight: 2, arbitrary: fc.array(bound, { minLength: 1, maxLength: 2 }) },
  ),
  needs,
  journey,
  masses,
});

const lengthKmOf = (shape: RouteShape): number => {
  switch (shape.kind) {
    case 'straight':
      return shape.lengthKm;
    case 'spur':
      return shape.outKm + shape.backKm + shape.offKm;
    case 'loop':
      return shape.beforeKm + 3 * shape.sideKm + 2 * shape.deepKm + shape.onKm;
  }
};

const idsOf = ({ gives }: Supply, index: number): { fuel: string | null; water: string | null } => {
  switch (gives) {
    case 'fuel':
      return { fuel: `node/${index}1`, water: null };
    case 'water':
      return { fuel: null, water: `node/${index}2` };
    case 'node':
      return { fuel: `node/${index}3`, water: `node/${index}3` };
    default:
      return { fuel: `node/${index}1`, water: `node/${index}2` };
  }
};

function featuresOf({ shape, supplies }: Drawn): MappedFeature[] {
  return supplies.flatMap((one, index): MappedFeature[] => {
    const ids = idsOf(one, index);
    const there = placeBeside(shape, one.share, one.offKm);
    const tags: Record<string, string> =
      one.gives === 'node'
        ? { ...DIESEL, drinking_water: 'yes' }
        : { natural: 'spring', drinking_water: 'yes' };
    const feature = (id: string, eastKm: number, of: Record<string, string>): MappedFeature => ({
      id,
      geometry: { type: 'Point', coordinates: lonLatOf({ ...there, eastKm }) },
      tags: of,
      editedAt: null,
    });
    return [
      ...(ids.fuel === null || one.gives === 'node' ? [] : [feature(ids.fuel, there.eastKm, DIESEL)]),
      ...(ids.water === null ? [] : [feature(ids.water, there.eastKm + one.besideKm, tags)]),
    ];
  });
}

/** One after the other, at most as many times as there are places. */
const placeOf = (axles: NonNullable<NonNullable<Masses>['axles']> | undefined, index: number) => {
  const behindFrontAxleM = axles?.places[index];
  return behindFrontAxleM === undefined ? {} : { position: { behindFrontAxleM, heightM: 1 } };
};

function vehicleOf(drawn: NonNullable<Masses>): NonNullable<RigFile['vehicle']> {
  const { kerbKg, includes, peopleKg, petKg, gearKg, totalKg, tanksEmpty, axles } = drawn;
  const permitted = {
    ...(totalKg === undefined ? {} : { totalKg: kerbKg + totalKg }),
    ...(axles === undefined
      ? {}
      : {
          frontKg: kerbKg * (1 - axles.rearShare) + axles.frontLeftKg,
          rearKg: kerbKg * axles.rearShare + axles.rearLeftKg,
        }),
  };
  return {
    kerbKg,
    includes,
    permitted,
    people: peopleKg.map((kg, index) => ({ kg, ...placeOf(axles, index) })),
    ...(petKg === undefined ? {} : { pets: [{ kg: petKg, ...placeOf(axles, 3) }] }),
    gear: gearKg.map((kg, index) => ({ name: `gear ${index}`, kg, ...placeOf(axles, 4 + index) })),
    ...(tanksEmpty === undefined ? {} : { tanksEmpty }),
    ...(axles === undefined
      ? {}
      : {
          wheelbaseM: axles.wheelbaseM,
          axleKg: { front: kerbKg * (1 - axles.rearShare), rear: kerbKg * axles.rearShare },
        }),
  };
}

/** They drink, and use no water else, so that all of it is of one grade. */
const DRINKERS: NonNullable<RigFile['crew']> = {
  people: [{ count: 2, drinking: 4, cooking: 0, washingUp: 0, washing: 0, shower: 0 }],
  vehicleLitresPerDay: 0,
  lossPercent: 0,
};

function rigOf({ needs: drawn, masses: mass, journey }: Drawn): RigFile {
  const fuel = drawn.fuelPer100Km;
  const water = drawn.waterPerDay;
  const axles = mass?.axles;
  const kg = (emptyKg: number | undefined) => (emptyKg === undefined ? {} : { emptyKg });
  return {
    fuel: {
      kind: 'diesel',
      litresPer100Km: { low: fuel * 0.8, typical: fuel * 0.9, high: fuel },
      tanks: [
        { name: 'main', litres: drawn.fuelTankL, unusableLitres: drawn.unusableL, ...placeOf(axles, 6) },
        ...(drawn.secondTankL === 0
          ? []
          : [
              {
                name: 'second',
                litres: drawn.secondTankL,
                fillPercent: 95,
                ...kg(mass?.fittedTankKg),
                ...placeOf(axles, 7),
              },
            ]),
      ],
      cans: { litres: drawn.fuelCanL, owned: drawn.fuelCans, ...kg(mass?.fuelCanKg), ...placeOf(axles, 8) },
      reserve: { shareOfNeed: 0, ...drawn.fuelReserve },
    },
    water: {
      litresPerDay: { low: water * 0.6, typical: water * 0.8, high: water },
      tanks: [{ name: 'main', litres: drawn.waterTankL, ...placeOf(axles, 9) }],
      cans: {
        litres: drawn.waterCanL,
        owned: drawn.waterCans,
        ...kg(mass?.waterCanKg),
        ...placeOf(axles, 10),
      },
      reserve: drawn.waterReserve,
    },
    pace: {
      hoursPerDay: drawn.hoursPerDay,
      kmPerHour: { slow: drawn.kmPerHour, typical: drawn.kmPerHour * 1.3, fast: drawn.kmPerHour * 1.6 },
    },
    ...(mass === undefined ? {} : { vehicle: vehicleOf(mass) }),
    ...(journey.hot === undefined ? {} : { crew: DRINKERS }),
    sure: ['/fuel/litresPer100Km', '/water/litresPerDay', '/pace/kmPerHour', '/pace/hoursPerDay'],
  };
}

function tripOf({
  shape,
  supplies,
  bounds,
  needs: { fuelTankL, waterTankL },
  journey: drawn,
}: Drawn): TripFile {
  const lengthKm = lengthKmOf(shape) * 0.99;
  const { fillAtStart, mostCans, oneWay, hot } = drawn;
  const asks = supplies.flatMap((one, index) => {
    const { fuel, water } = idsOf(one, index);
    const most = bounds.find((each) => each.supply % supplies.length === index);
    return [...new Set([fuel, water])].flatMap((id) =>
      id === null
        ? []
        : [
            {
              id,
              ...(one.waitHours === undefined ? {} : { waitHours: one.waitHours }),
              mostLitres: {
                ...(most?.fuelL === undefined ? {} : { fuel: most.fuelL }),
                ...(most?.waterL === undefined ? {} : { water: most.waterL }),
              },
            },
          ],
    );
  });
  const notes = supplies.flatMap((one, index) => {
    const { water } = idsOf(one, index);
    return water === null || one.litresPerMinute === undefined
      ? []
      : [{ id: water, on: '2026-05-01', saltOk: true, litresPerMinute: one.litresPerMinute }];
  });
  return {
    aboard: {
      ...(drawn.fuelShare === 1 ? { fuelKmSinceFill: 0 } : { fuelLitres: fuelTankL * drawn.fuelShare }),
      ...(drawn.waterShare === 1
        ? { waterDaysSinceFill: 0 }
        : { waterLitres: waterTankL * drawn.waterShare }),
    },
    onward: { km: drawn.onwardKm, ...(drawn.onwardHours === undefined ? {} : { hours: drawn.onwardHours }) },
    allowancePercent: drawn.allowancePercent,
    detourFactor: drawn.detourFactor,
    departure: '2026-05-04',
    camps: drawn.camps.map((share) => ({ atKm: share * lengthKm })),
    stays: drawn.stays.map(({ share, days }) => ({ atKm: share * lengthKm, days })),
    ...(oneWay === undefined
      ? {}
      : { oneWay: [{ fromKm: oneWay.share * lengthKm, toKm: oneWay.share * lengthKm + oneWay.km }] }),
    ...(hot === undefined ? {} : { heat: [heatOf(hot, lengthKm)] }),
    waterNotes: notes,
    plan: {
      ...(fillAtStart === undefined ? {} : { fillAtStart: defined(fillAtStart) }),
      ...(mostCans === undefined ? {} : { mostCans: defined(mostCans) }),
      stops: asks,
      ...(drawn.spendReserveOnFailure === undefined
        ? {}
        : { spendReserveOnFailure: drawn.spendReserveOnFailure }),
    },
  };
}

const heatOf = ({ share, km, temperatureC }: NonNullable<Journey['hot']>, lengthKm: number) => ({
  fromKm: share * lengthKm,
  toKm: share * lengthKm + km,
  temperatureC,
  humidityPercent: 25,
  on: '2026-04-20',
});

/** A record without what is not told. */
function defined<T>(
  record: Partial<Record<'fuel' | 'water', T | undefined>>,
): Partial<Record<'fuel' | 'water', T>> {
  const { fuel, water } = record;
  return { ...(fuel === undefined ? {} : { fuel }), ...(water === undefined ? {} : { water }) };
}

/** What was drawn as a trip that can be analysed. */
export const worldOf = (drawn: Drawn): World => ({
  loaded: {
    document: documentOfShape(drawn.shape),
    supplies: { extracts: [], features: featuresOf(drawn), cover: WORLD_COVER, skipped: [], cautions: [] },
    extents: [],
    ground: [],
    camps: [],
    notice: null,
  },
  rig: rigOf(drawn),
  trip: tripOf(drawn),
});
