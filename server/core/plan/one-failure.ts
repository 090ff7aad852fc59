import type { Commodity } from '../../contract/common.ts';
import type { Reckoned } from '../analyse/analyse.ts';
import type { EdgeM } from '../gaps/course.ts';
import { reckon } from '../gaps/reckon.ts';
import { canBeDrivenBack } from '../gaps/turn-back.ts';
import type { Phrase } from '../phrases/phrases.ts';
import { COMMODITIES } from '../quantity/commodities.ts';
import type { DrivenLeg } from './drive/drive.ts';
import { driveActual, type HeldPlan } from './drive/drive-actual.ts';
import { type FailingStop, failingStops } from './failure/failing-stops.ts';
import { backNeedL, bearableOnFailureL, onTheWay } from './failure/failure.ts';
import { canBeDone, type SolveOptions, solveCarry } from './model/solve.ts';
import { type PlanEdge, planEdge } from './question/plan-edge.ts';
import {
  type CarryProblem,
  costOf,
  type FailureRule,
  haltsBetween,
  haltsOf,
  inVainM,
  otherOf,
} from './question/problem.ts';
import { canKgOf, problemOf } from './question/problem-of.ts';
import type { PlanCarry, PlanLeg } from './shown/plan-leg.ts';
import { carriesOf, legShown } from './shown/show.ts';

type ByCommodity<T> = Readonly<Record<Commodity, T>>;

/** What is done when a stop fails: to the next one that is used, or back to the one before. */
export interface FailureOfStop {
  readonly commodity: Commodity;
  readonly at: PlanEdge;
  readonly next: 'on' | 'back';
  readonly to: PlanEdge;
  readonly arriveL: number;
}

/** A plan that still arrives when any one stop turns out dry or shut. */
export interface OneFailure {
  readonly status: 'found' | 'none' | 'out-of-time';
  readonly spendsReserve: boolean;
  readonly cans: ByCommodity<number>;
  /** Beyond the plain plan. */
  readonly moreCans: ByCommodity<number>;
  readonly moreKg: number;
  readonly moreDrivingM: number;
  readonly proven: boolean;
  readonly carries: readonly PlanCarry[];
  readonly legs: ByCommodity<readonly PlanLeg[]>;
  /** Where there is none: the stops whose failing nothing bears, as far as the time was enough to look for them. */
  readonly breaks: readonly { readonly at: PlanEdge; readonly text: Phrase }[];
  readonly failures: readonly FailureOfStop[];
}

/** So many cans beyond those there may be are tried for each commodity (ours). */
const MORE_CANS = 6;
/** Float noise, litres. */
const NOISE_L = 1e-6;

/**
 * The plan that still arrives when any one of its stops turns out dry or shut: on to the next stop it uses, or back to the
 * one before. With the cans there may be, else with more.
 */
export function oneFailure(reckoned: Reckoned, plain: HeldPlan, options: SolveOptions): OneFailure {
  const { rig, trip } = reckoned.analysis;
  const spendsReserve = trip.plan?.spendReserveOnFailure ?? false;
  const most = { fuel: plain.problem.sides.fuel.mostCans, water: plain.problem.sides.water.mostCans };
  const rule: FailureRule = { spendReserve: spendsReserve };
  const nothing: OneFailure = {
    status: 'none',
    spendsReserve,
    cans: { fuel: 0, water: 0 },
    moreCans: { fuel: 0, water: 0 },
    moreKg: 0,
    moreDrivingM: 0,
    proven: true,
    carries: [],
    legs: { fuel: [], water: [] },
    breaks: [],
    failures: [],
  };
  let widest: CarryProblem | null = null;
  for (const more of [0, MORE_CANS]) {
    const mostCans = { fuel: most.fuel + more, water: most.water + more };
    const { problem } = problemOf(reckoned, { mostCans });
    widest = problem;
    const solved = solveCarry({ ...problem, oneFailure: rule }, options);
    if (solved.status === 'out-of-time') return { ...nothing, status: 'out-of-time', proven: false };
    if (solved.status === 'none') continue;
    const held = driveActual(reckoned, problem, solved.choice);
    const { sides } = held.problem;
    const { cans, aims } = solved.choice;
    const moreCans = {
      fuel: cans.fuel - plain.choice.cans.fuel,
      water: cans.water - plain.choice.cans.water,
    };
    const kgOf = (each: 'fuel' | 'water') => canKgOf(rig, each).empty + canKgOf(rig, each).filling;
    const drivingKm = (choice: typeof solved.choice) =>
      choice.aims.find(({ aim }) => aim === 'driving-km')?.value ?? 0;
    return {
      ...nothing,
      status: 'found',
      cans,
      moreCans,
      moreKg: moreCans.fuel * kgOf('fuel') + moreCans.water * kgOf('water'),
      moreDrivingM: (drivingKm(solved.choice) - drivingKm(plain.choice)) * 1000,
      proven: aims.every(({ proven }) => proven),
      carries: carriesOf(sides, held.driven),
      legs: {
        fuel: held.driven.fuel.map((leg) => legShown(sides.fuel, leg)),
        water: held.driven.water.map((leg) => legShown(sides.water, leg)),
      },
      failures: failuresOf(held, spendsReserve),
    };
  }
  return { ...nothing, breaks: widest === null ? [] : unbearable(widest, rule, options) };
}

/** Stops whose failing no plan bears, each asked for by itself; none where each one could be borne, but not all. */
function unbearable(problem: CarryProblem, rule: FailureRule, options: SolveOptions): OneFailure['breaks'] {
  const untilS = options.clock() + options.seconds;
  return failingStops(problem).flatMap(({ edges }, onlyStop) => {
    const leftS = untilS - options.clock();
    if (leftS <= 0) return [];
    const alone = { ...problem, oneFailure: { ...rule, onlyStop } };
    if (canBeDone(alone, { ...options, seconds: leftS }) !== false) return [];
    const [first] = edges;
    const at = planEdge(first!);
    const names = [...new Set([...edges].map(({ name, id }) => name ?? id))];
    return [{ at, text: { phrase: 'plans-hang-on', facts: { names, atM: at.atM } } }];
  });
}

type DrivenPlan = Pick<HeldPlan, 'problem' | 'driven'>;

/**
 * Each stop failing in turn, driven: on where both commodities bear that, else back. Throws where neither is borne: a
 * fault of the program.
 */
export function failuresOf(held: DrivenPlan, spendReserve: boolean): FailureOfStop[] {
  return failingStops(held.problem).flatMap((stop) => {
    const on = waysFrom(held, stop, 'on', spendReserve);
    const ways = on ?? waysFrom(held, stop, 'back', spendReserve);
    if (ways === null)
      throw new Error(`the plan against one failure fails when the stop at km ${stop.atM / 1000} fails`);
    return ways;
  });
}

/** What every commodity that was to be had at a stop is left with, going one way; null where that is not borne. */
function waysFrom(
  { problem, driven }: DrivenPlan,
  stop: FailingStop,
  next: FailureOfStop['next'],
  spendReserve: boolean,
): FailureOfStop[] | null {
  const ways: FailureOfStop[] = [];
  const places = COMMODITIES.flatMap((commodity) => driven[commodity].map(({ to }) => to)).filter((to) =>
    stop.edges.has(to),
  );
  for (const commodity of COMMODITIES) {
    const side = problem.sides[commodity];
    const { course } = side;
    const other = problem.sides[otherOf(commodity)];
    const foreign = haltsOf({ ...other, edges: driven[other.commodity].map(({ to }) => to) }, course);
    const viaM = (from: EdgeM, to: EdgeM) => costOf(haltsBetween(foreign, from, to));
    const bearsBack = (leg: DrivenLeg, place: EdgeM): number | null => {
      const needL = backNeedL(side, leg.from, place, viaM(leg.from, place));
      const mostL = bearableOnFailureL(side, leg.tankL, leg.cans, spendReserve);
      return canBeDrivenBack(course, leg.from, place) && needL <= mostL + NOISE_L ? needL : null;
    };
    for (const [index, leg] of driven[commodity].entries()) {
      if (!stop.edges.has(leg.to)) {
        // The other commodity was to be had on the way of this one.
        const caught = (place: EdgeM) =>
          leg.from.atM < place.atM && leg.to.atM > place.atM && bearsBack(leg, onTheWay(place)) === null;
        if (next === 'back' && places.some(caught)) return null;
        continue;
      }
      const at = planEdge(leg.to);
      const { departL } = leg.figures;
      if (next === 'back') {
        const needL = bearsBack(leg, leg.to);
        if (needL === null) return null;
        ways.push({ commodity, at, next, to: planEdge(leg.from), arriveL: departL - needL });
        continue;
      }
      const { to } = driven[commodity][index + 1]!;
      const on = reckon(course, leg.from, to, departL, inVainM(course, leg.to) + viaM(leg.from, to));
      const leftL = spendReserve
        ? Math.min(on.arriveL, on.grades?.drinking.arriveL ?? on.arriveL)
        : Math.min(on.marginL, on.grades?.drinking.marginL ?? on.marginL);
      if (leftL < -NOISE_L) return null;
      ways.push({ commodity, at, next, to: planEdge(to), arriveL: on.arriveL });
    }
  }
  return ways;
}
