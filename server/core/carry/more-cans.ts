import type { Commodity } from '../../contract/common.ts';
import type { Reckoned } from '../analyse.ts';
import type { Mip, MipRow } from './mip.ts';
import { carryModel } from './model.ts';
import { type CarryProblem, COMMODITIES, isBound } from './problem.ts';
import { canKgOf, problemOf } from './problem-of.ts';
import { canBeDone, type SolveOptions } from './solve.ts';

/** More cans than this of a commodity are never told to be got (ours). */
const MOST_CANS = 40;
/** So many more are tried, few first: models with few are small (ours). */
const STEPS = [4, 12, MOST_CANS];
/** Of as many cans the lighter ones are chosen: kilograms weigh this much against one can (ours). */
const CAN_PER_KG = 1e-5;
/** A can may ask for another one, whose mass the fuel goes by: so often it is looked again (ours). */
const MOST_ROUNDS = 10;
/** So many cans beyond what the model takes for enough are tried (ours). */
const MORE_TRIED = 3;

type Cans = Record<Commodity, number>;

export type MoreCans = { status: 'found'; mostCans: Cans } | { status: 'none' } | { status: 'out-of-time' };

/**
 * The fewest cans beyond those there may be with which there is a plan, whatever evidence it hangs on: only commodities
 * in `open` may have more, and none where their place is ruled out. `found` tells how many there may be then.
 * `anyMass`: permitted masses are no matter.
 */
export function fewestMoreCans(
  reckoned: Reckoned,
  open: readonly Commodity[],
  options: SolveOptions,
  anyMass = false,
): MoreCans {
  const { problem } = problemOf(reckoned);
  const most = mostCansOf(problem);
  const limits = limitsOf(reckoned, open, most);
  const startS = options.clock();
  let mostCans = most;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    // Fuel goes by the mass of the cans there may be.
    const { problem: heavy } = problemOf(reckoned, { mostCans });
    const posed = anyMass ? { ...heavy, room: null } : heavy;
    const seconds = options.seconds - (options.clock() - startS);
    const fewest = fewestOf(reckoned, posed, most, limits, { ...options, seconds });
    if (typeof fewest === 'string') return { status: fewest };
    if (COMMODITIES.every((commodity) => fewest[commodity] <= mostCans[commodity])) {
      const bound = COMMODITIES.some((commodity) => heavy.sides[commodity].edges.some(isBound));
      if (!bound) return { status: 'found', mostCans };
      return tried(reckoned, open, most, mostCans, anyMass, options, startS);
    }
    mostCans = largerOf(mostCans, fewest);
  }
  return { status: 'none' };
}

/**
 * The fewest cans that a plan is really made with, from so many on: the model alone may take too little for enough where
 * supplies do not give all that is wanted. Not settled where a few more are not enough either.
 */
function tried(
  reckoned: Reckoned,
  open: readonly Commodity[],
  most: Cans,
  atLeast: Cans,
  anyMass: boolean,
  options: SolveOptions,
  startS: number,
): MoreCans {
  const limits = limitsOf(reckoned, open, most);
  const more = { fuel: atLeast.fuel - most.fuel, water: atLeast.water - most.water };
  for (let total = more.fuel + more.water; total <= more.fuel + more.water + MORE_TRIED; total += 1) {
    for (let fuel = 0; fuel <= total; fuel += 1) {
      // Those that the model found come first.
      const moreFuel = (more.fuel + fuel) % (total + 1);
      const mostCans = { fuel: most.fuel + moreFuel, water: most.water + total - moreFuel };
      if (COMMODITIES.some((commodity) => mostCans[commodity] > limits[commodity])) continue;
      const seconds = options.seconds - (options.clock() - startS);
      if (seconds <= 0) return { status: 'out-of-time' };
      const { problem } = problemOf(reckoned, { mostCans });
      const done = canBeDone(anyMass ? { ...problem, room: null } : problem, { ...options, seconds });
      if (done === null) return { status: 'out-of-time' };
      if (done) return { status: 'found', mostCans };
    }
  }
  return { status: 'out-of-time' };
}

/** How many cans there may be of each commodity. */
export const mostCansOf = ({ sides }: CarryProblem): Cans => ({
  fuel: sides.fuel.mostCans,
  water: sides.water.mostCans,
});

const largerOf = (a: Cans, b: Cans): Cans => ({
  fuel: Math.max(a.fuel, b.fuel),
  water: Math.max(a.water, b.water),
});

/** As many as may be got at all: with the limits of the trip replaced, what else it asks of cans still counts. */
function limitsOf(reckoned: Reckoned, open: readonly Commodity[], most: Cans): Cans {
  const { analysis } = reckoned;
  const asked = { ...most };
  for (const commodity of open) asked[commodity] = Math.max(MOST_CANS, most[commodity]);
  const trip = { ...analysis.trip, plan: { ...analysis.trip.plan, mostCans: asked } };
  return mostCansOf(problemOf({ ...reckoned, analysis: { ...analysis, trip } }).problem);
}

/** The fewest cans beyond `most`, as they come to be owned, at the mass that the problem is posed for. */
function fewestOf(
  reckoned: Reckoned,
  problem: CarryProblem,
  most: Cans,
  limits: Cans,
  { solver, seconds, clock }: SolveOptions,
): Cans | 'none' | 'out-of-time' {
  const startS = clock();
  let tried: Cans | null = null;
  for (const step of STEPS) {
    const wide = {
      fuel: Math.min(limits.fuel, most.fuel + step),
      water: Math.min(limits.water, most.water + step),
    };
    if (tried !== null && COMMODITIES.every((commodity) => wide[commodity] === tried![commodity])) break;
    tried = wide;
    const leftS = seconds - (clock() - startS);
    if (leftS <= 0) return 'out-of-time';
    const model = carryModel(withMostCans(problem, wide));
    const { mip, cost } = withMoreCans(reckoned, model.mip, model.owned, most);
    const { status, values } = solver(mip, cost, { seconds: leftS, start: null });
    if (status === 'out-of-time') return 'out-of-time';
    if (values === null) continue;
    const found = { fuel: values[model.owned.fuel]!, water: values[model.owned.water]! };
    const more = COMMODITIES.reduce(
      (sum, commodity) => sum + Math.max(0, found[commodity] - most[commodity]),
      0,
    );
    // Fewer in all cannot be more of one commodity than were tried.
    if (more <= step || step === MOST_CANS) return found;
  }
  return 'none';
}

const withMostCans = (problem: CarryProblem, mostCans: Cans): CarryProblem => ({
  ...problem,
  sides: {
    fuel: { ...problem.sides.fuel, mostCans: mostCans.fuel },
    water: { ...problem.sides.water, mostCans: mostCans.water },
  },
});

/** The model with two columns more: cans of each commodity beyond those there may be, which are the cost. */
function withMoreCans(
  reckoned: Reckoned,
  mip: Mip,
  owned: Cans,
  most: Cans,
): { mip: Mip; cost: Float64Array } {
  const columns = [...mip.columns];
  const rows: MipRow[] = [...mip.rows];
  const cost = new Float64Array(columns.length + COMMODITIES.length);
  for (const commodity of COMMODITIES) {
    const { empty, filling } = canKgOf(reckoned.analysis.rig, commodity);
    cost[columns.length] = 1 + CAN_PER_KG * (empty + filling);
    rows.push({
      lower: Number.NEGATIVE_INFINITY,
      upper: most[commodity],
      entries: [
        [owned[commodity], 1],
        [columns.length, -1],
      ],
    });
    columns.push({ lower: 0, upper: Number.POSITIVE_INFINITY, integer: false });
  }
  return { mip: { columns, rows }, cost };
}
