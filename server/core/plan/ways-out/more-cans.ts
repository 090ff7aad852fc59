import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Mip, MipRow } from '../model/mip.ts';
import { carryModel } from '../model/model.ts';
import { askHolding, type SolveOptions } from '../model/solve.ts';
import type { CarryProblem } from '../question/problem.ts';
import { canKgOf, problemOf } from '../question/problem-of.ts';

/** More cans than this of a commodity are never told to be got (ours). */
const MOST_CANS = 40;
/** So many more are looked at, few first: models with few are small (ours). */
const STEPS = [4, 12, MOST_CANS];
/** Of as many cans the lighter ones are chosen: kilograms weigh this much against one can (ours). */
const CAN_PER_KG = 1e-5;
/** A can may ask for another one, whose mass the fuel goes by: so often it is looked again (ours). */
const MOST_ROUNDS = 10;

type Cans = Record<Commodity, number>;

export type MoreCans = { status: 'found'; mostCans: Cans } | { status: 'none' } | { status: 'out-of-time' };

export interface MoreCansAsk {
  reckoned: Reckoned;
  /** Only these may have more. */
  open: readonly Commodity[];
  /** Permitted masses are no matter. */
  anyMass: boolean;
}

/** What is asked, with what there may be as the trip stands, and as many as may be got at all. */
interface Seeking extends MoreCansAsk {
  most: Cans;
  limits: Cans;
  options: SolveOptions;
  /** Seconds that are left of those for all of it. */
  left: () => number;
}

/**
 * The fewest cans beyond those there may be with which there is a plan, whatever evidence it hangs on; none where their
 * place is ruled out. `found` tells how many there may be then.
 */
export function fewestMoreCans(ask: MoreCansAsk, options: SolveOptions): MoreCans {
  const most = mostCansOf(problemOf(ask.reckoned).problem);
  const untilS = options.clock() + options.seconds;
  const left = () => untilS - options.clock();
  const seeking: Seeking = { ...ask, most, limits: limitsOf(ask, most), options, left };
  let mostCans = most;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    // Fuel goes by the mass of the cans there may be.
    const problem = problemWith(ask, mostCans);
    const fewest = fewestOf(seeking, problem);
    if (typeof fewest === 'string') return { status: fewest };
    if (COMMODITIES.every((commodity) => fewest[commodity] <= mostCans[commodity]))
      return { status: 'found', mostCans };
    mostCans = byCommodity((commodity) => Math.max(mostCans[commodity], fewest[commodity]));
  }
  return { status: 'out-of-time' };
}

const byCommodity = (of: (commodity: Commodity) => number): Cans => ({
  fuel: of('fuel'),
  water: of('water'),
});

/** How many cans there may be of each commodity. */
export const mostCansOf = ({ sides }: CarryProblem): Cans =>
  byCommodity((commodity) => sides[commodity].mostCans);

function limitsOf({ reckoned, open }: MoreCansAsk, most: Cans): Cans {
  const mostCans = byCommodity((commodity) =>
    open.includes(commodity) ? Math.max(MOST_CANS, most[commodity]) : most[commodity],
  );
  return mostCansOf(problemOf(allowing(reckoned, mostCans)).problem);
}

/** The trip with other limits of cans; what else it asks of them still counts. */
export function allowing(reckoned: Reckoned, mostCans: Cans): Reckoned {
  const { analysis } = reckoned;
  const trip = { ...analysis.trip, plan: { ...analysis.trip.plan, mostCans } };
  return { ...reckoned, analysis: { ...analysis, trip } };
}

function problemWith({ reckoned, anyMass }: MoreCansAsk, mostCans: Cans): CarryProblem {
  const { problem } = problemOf(reckoned, { mostCans });
  return anyMass ? { ...problem, room: null } : problem;
}

/** The fewest cans beyond those there may be, as they come to be owned, at the mass that the problem is posed for. */
function fewestOf(seeking: Seeking, problem: CarryProblem): Cans | 'none' | 'out-of-time' {
  const { most, limits, options, left } = seeking;
  let looked = most;
  for (const step of STEPS) {
    const wide = byCommodity((commodity) => Math.min(limits[commodity], most[commodity] + step));
    if (COMMODITIES.every((commodity) => wide[commodity] === looked[commodity])) break;
    looked = wide;
    const seconds = left();
    if (seconds <= 0) return 'out-of-time';
    const wider = withMostCans(problem, wide);
    const model = carryModel(wider);
    const { mip, cost } = withMoreCans(seeking, model.mip, model.owned);
    const asked = { problem: wider, model, mip, cost, start: null, cuts: [] };
    const { status, values } = askHolding(asked, { ...options, seconds });
    if (status === 'out-of-time') return 'out-of-time';
    if (values === null) continue;
    const found = byCommodity((commodity) => values[model.owned[commodity]]!);
    const more = COMMODITIES.map((commodity) => Math.max(0, found[commodity] - most[commodity]));
    // Fewer in all cannot be more of one commodity than were looked at.
    if (more.reduce((sum, count) => sum + count, 0) <= step || step === MOST_CANS) return found;
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
function withMoreCans({ reckoned, most }: Seeking, mip: Mip, owned: Cans): { mip: Mip; cost: Float64Array } {
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
