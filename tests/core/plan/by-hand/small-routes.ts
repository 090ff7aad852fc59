import fc from 'fast-check';
import type { Commodity, Evidence } from '../../../../server/contract/common.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { CarryQuestion } from '../../../../server/core/plan/question/carry-question.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import type { SupplyEdge } from '../../../../server/core/plan/side/supply-edge.ts';
import { courseOf, endEdge, startEdge } from '../../../helpers/course.ts';

/** A halt of a small route: whole tens of km along, whole fives off, so that litres come out whole. */
export interface SmallStop {
  atKm: number;
  detourKm: number;
  offers: 'fuel' | 'water' | 'both';
  evidence: Evidence;
  /** Of the object, where it is passed elsewhere as well; left out, it is one of its own. */
  id?: string;
  /** No more than this is to be had at one halt. */
  mostL?: Partial<Record<Commodity, number>>;
  waitDays?: number;
  /** Of filling, a litre. */
  daysPerLitre?: number;
  /** Nothing of it may go into cans. */
  noCans?: boolean;
}

/** A small route in whole numbers: 10 l of fuel a 100 km, 100 km a day. */
export interface SmallRoute {
  lengthKm: number;
  stops: SmallStop[];
  tankL: Record<Commodity, number>;
  startL: Record<Commodity, number>;
  canL: Record<Commodity, number>;
  reserveL: Record<Commodity, number>;
  shareOfNeed: Record<Commodity, number>;
  mostCans: Record<Commodity, number>;
  /** Of those; none left out. */
  owned?: Record<Commodity, number>;
  cansAtStart: boolean;
  waterLPerDay: number;
}

export const FUEL_L_PER_KM = 0.1;
export const KM_PER_DAY = 100;
/** At 10 km/h. */
export const HOURS_PER_OFF_KM = 0.1;

/** 400 km without a stop, tanks of 20 l of fuel and 40 l of water, 5 l of water a day, no reserve and no cans. */
const BARE: SmallRoute = {
  lengthKm: 400,
  stops: [],
  tankL: { fuel: 20, water: 40 },
  startL: { fuel: 20, water: 40 },
  canL: { fuel: 5, water: 5 },
  reserveL: { fuel: 0, water: 0 },
  shareOfNeed: { fuel: 0, water: 0 },
  mostCans: { fuel: 0, water: 0 },
  cansAtStart: true,
  waterLPerDay: 5,
};

/** The bare route but for what a test says; tanks full at the start unless said. */
export const bareRoute = (changes: Partial<SmallRoute>): SmallRoute => ({
  ...BARE,
  ...(changes.tankL === undefined ? {} : { startL: changes.tankL }),
  ...changes,
});

/** A stop of a small route on it, of known evidence, that gives fuel unless said. */
export const bareStop = (atKm: number, changes: Partial<SmallStop> = {}): SmallStop => ({
  atKm,
  detourKm: 0,
  offers: 'fuel',
  evidence: 'confirmed',
  ...changes,
});

const byCommodity = (min: number, max: number) =>
  fc.record({ fuel: fc.integer({ min, max }), water: fc.integer({ min, max }) });

const stop = (tens: number): fc.Arbitrary<SmallStop> =>
  fc.record({
    atKm: fc.integer({ min: 1, max: tens - 1 }).map((ten) => ten * 10),
    detourKm: fc.constantFrom(0, 0, 0, 5, 10, 25),
    offers: fc.constantFrom('fuel' as const, 'water' as const, 'both' as const),
    evidence: fc.constantFrom<Evidence>('confirmed', 'stated', 'stated', 'implied', 'doubtful'),
  });

export const smallRoute = (maxStops = 6): fc.Arbitrary<SmallRoute> =>
  fc.integer({ min: 20, max: 90 }).chain((tens) =>
    fc.record({
      lengthKm: fc.constant(tens * 10),
      stops: fc.uniqueArray(stop(tens), { maxLength: maxStops, minLength: 1, selector: (one) => one.atKm }),
      tankL: byCommodity(12, 45),
      startL: byCommodity(10, 45),
      canL: byCommodity(3, 10),
      reserveL: byCommodity(0, 5),
      shareOfNeed: fc.record({ fuel: fc.constantFrom(0, 0, 0.1, 0.5), water: fc.constantFrom(0, 0, 0.1) }),
      mostCans: byCommodity(0, 5),
      cansAtStart: fc.boolean(),
      waterLPerDay: fc.integer({ min: 2, max: 9 }),
    }),
  );

/** With cans that are owned already: those there may be, fewer, or more. */
const ownedRoute = (maxStops = 6): fc.Arbitrary<SmallRoute> =>
  fc.tuple(smallRoute(maxStops), byCommodity(0, 5)).map(([route, owned]) => ({ ...route, owned }));

/** Waiting and filling at some stops, by their order. */
const waits = fc.array(
  fc.record({
    waitDays: fc.constantFrom(0, 0, 0, 0.25, 0.5, 1),
    daysPerLitre: fc.constantFrom(0, 0, 0, 0.005),
  }),
  { minLength: 7, maxLength: 7 },
);

/** Routes with owned cans and waiting. */
export const waitingRoute = (maxStops = 7): fc.Arbitrary<SmallRoute> =>
  fc.tuple(ownedRoute(maxStops), waits).map(([route, ofStops]) => ({
    ...route,
    stops: route.stops.map((one, index) => ({ ...one, ...ofStops[index] })),
  }));

/** The same, some of whose stops are towns: two objects one or two kilometres from each other. */
export const townRoute = (maxStops = 6): fc.Arbitrary<SmallRoute> =>
  fc
    .tuple(waitingRoute(maxStops), waits, fc.array(stop(2), { maxLength: 2 }), fc.integer({ min: 1, max: 2 }))
    .map(([route, ofStops, seconds, km]) => {
      const further = seconds.flatMap((second, index): SmallStop[] => {
        const first = route.stops[index];
        return first === undefined ? [] : [{ ...second, ...ofStops[6 - index], atKm: first.atKm + km }];
      });
      return { ...route, stops: [...route.stops, ...further] };
    });

export function rigOf(route: SmallRoute): RigFile {
  const { tankL, canL, reserveL, shareOfNeed, waterLPerDay: litres } = route;
  return {
    fuel: {
      kind: 'diesel',
      litresPer100Km: { low: 10, typical: 10, high: 10 },
      tanks: [{ name: 'main', litres: tankL.fuel }],
      cans: { litres: canL.fuel, owned: 0 },
      reserve: { litres: reserveL.fuel, shareOfNeed: shareOfNeed.fuel },
    },
    water: {
      litresPerDay: { low: litres, typical: litres, high: litres },
      tanks: [{ name: 'main', litres: tankL.water }],
      cans: { litres: canL.water, owned: 0 },
      reserve: { litres: reserveL.water, shareOfNeed: shareOfNeed.water },
    },
    pace: { hoursPerDay: 10, kmPerHour: { slow: 10, typical: 10, fast: 10 } },
  };
}

export function questionOf(route: SmallRoute): CarryQuestion {
  const side = (commodity: Commodity): CarrySide => {
    const stops = route.stops.filter(({ offers }) => offers === commodity || offers === 'both');
    const edges: SupplyEdge[] = [
      startEdge,
      ...stops
        .sort((a, b) => a.atKm - b.atKm)
        .map(
          ({
            atKm,
            detourKm,
            evidence,
            id = `node/${atKm}`,
            mostL,
            waitDays,
            daysPerLitre,
            noCans,
          }): SupplyEdge => ({
            kind: 'passing',
            id,
            name: null,
            atM: atKm * 1000,
            detourM: detourKm * 1000,
            evidence,
            ...(waitDays === undefined ? {} : { waitDays }),
            terms: {
              mostL: mostL?.[commodity] ?? null,
              fillsCans: noCans !== true,
              daysPerLitre: daysPerLitre ?? 0,
            },
          }),
        ),
      endEdge(route.lengthKm * 1000),
    ];
    return {
      commodity,
      course: courseOf({ commodity, rigFile: rigOf(route), lengthM: route.lengthKm * 1000 }),
      edges,
      startL: Math.min(route.tankL[commodity], route.startL[commodity]),
      cansAtStart: route.cansAtStart,
      canL: route.canL[commodity],
      cansDrinkable: true,
      mostCans: route.mostCans[commodity],
    };
  };
  return {
    sides: { fuel: side('fuel'), water: side('water') },
    owned: route.owned ?? { fuel: 0, water: 0 },
    room: null,
    oneFailure: null,
  };
}
