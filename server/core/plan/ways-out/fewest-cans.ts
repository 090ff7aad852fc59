import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { numberAt } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { askHolding } from '../model/ask.ts';
import { legSearches } from '../model/leg-searches.ts';
import { atMost, type Mip, type MipColumn, type MipRow } from '../model/mip.ts';
import { type CarryModel, carryModel } from '../model/model.ts';
import { type SolveOptions, type Timer, timerOf } from '../model/time.ts';
import { canKgOf } from '../question/can-kg.ts';
import { type Cans, mostCansOf } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { questionOf } from '../question/question-of.ts';
import { searchPlan } from '../search/search-plan.ts';
import { byCommodity } from '../side/other-of.ts';

/** More cans than this of a commodity are never told to be got (ours). */
const MOST_CANS = 40;
/** So many more are looked at, few first: models with few are small (ours). */
const STEPS = [4, 12, MOST_CANS];
/** Of as many cans the lighter ones are chosen: kilograms weigh this much against one can (ours). */
const CAN_PER_KG = 1e-5;
/** A can may ask for another one, whose mass the fuel goes by: so often it is looked again (ours). */
const MOST_ROUNDS = 10;

export type FewestCans =
  | {
      readonly status: 'found';
      readonly mostCans: Cans;
      /** Whether fewer are too few; else they are those of a plan that was found soon. */
      readonly proven: boolean;
    }
  | { readonly status: 'none' }
  | { readonly status: 'out-of-time' };

export interface FewestCansAsk {
  readonly reckoned: Reckoned;
  /** Only these may have more. */
  readonly open: readonly Commodity[];
  /** Permitted masses are no matter. */
  readonly anyMass: boolean;
}

/** What is asked, with what there may be as the trip stands, and as many as may be got at all. */
interface Search extends FewestCansAsk {
  readonly most: Cans;
  readonly limits: Cans;
  readonly options: SolveOptions;
  /** For all of it. */
  readonly timer: Timer;
}

/**
 * The fewest cans beyond those there may be with which there is a plan, whatever evidence it hangs on; none where their
 * place is ruled out. `found` tells how many there may be then.
 */
export function fewestMoreCans(ask: FewestCansAsk, options: SolveOptions): FewestCans {
  const most = mostCansOf(questionOf(ask.reckoned).question);
  const search = { ...ask, most, limits: limitsOf(ask, most), options, timer: timerOf(options) };
  let mostCans = most;
  let proven = true;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    // Fuel goes by the mass of the cans there may be.
    const fewest = fewestOf(search, questionWith(ask, mostCans));
    if (typeof fewest === 'string') return { status: fewest };
    proven &&= fewest.proven;
    if (COMMODITIES.every((commodity) => fewest.cans[commodity] <= mostCans[commodity]))
      return { status: 'found', mostCans, proven };
    mostCans = mostOfBoth(mostCans, fewest.cans);
  }
  return { status: 'out-of-time' };
}

const mostOfBoth = (a: Cans, b: Cans): Cans =>
  byCommodity((commodity) => Math.max(a[commodity], b[commodity]));

function limitsOf({ reckoned, open }: FewestCansAsk, most: Cans): Cans {
  const mostCans = byCommodity((commodity) =>
    open.includes(commodity) ? Math.max(MOST_CANS, most[commodity]) : most[commodity],
  );
  return mostCansOf(questionOf(allowing(reckoned, mostCans)).question);
}

/** The trip with other limits of cans; what else it asks of them still counts. */
export function allowing(reckoned: Reckoned, mostCans: Cans): Reckoned {
  const { analysis } = reckoned;
  const trip = { ...analysis.trip, plan: { ...analysis.trip.plan, mostCans } };
  return { ...reckoned, analysis: { ...analysis, trip } };
}

function questionWith({ reckoned, anyMass }: FewestCansAsk, mostCans: Cans): CarryQuestion {
  const { question } = questionOf(reckoned, { mostCans });
  return anyMass ? { ...question, room: null } : question;
}

/** Cans as they come to be aboard, and whether they are the fewest. */
interface FewCans {
  readonly cans: Cans;
  readonly proven: boolean;
}

/** The fewest cans beyond those there may be, at the mass that the question is put for. */
function fewestOf(search: Search, question: CarryQuestion): FewCans | 'none' | 'out-of-time' {
  const { most, limits, timer } = search;
  let before = most;
  for (const step of STEPS) {
    const wide = byCommodity((commodity) => Math.min(limits[commodity], most[commodity] + step));
    if (COMMODITIES.every((commodity) => wide[commodity] === before[commodity])) break;
    before = wide;
    if (timer.leftS() <= 0) return 'out-of-time';
    const few = fewestWithin(search, withMostCans(question, wide));
    if (few === 'out-of-time') return few;
    if (few === 'none') continue;
    const more = COMMODITIES.map((commodity) => Math.max(0, few.cans[commodity] - most[commodity]));
    // Fewer in all cannot be more of one commodity than were looked at.
    if (more.reduce((sum, count) => sum + count, 0) <= step || step === MOST_CANS) return few;
  }
  return 'none';
}

/** With no more cans than a question allows. */
function fewestWithin(search: Search, question: CarryQuestion): FewCans | 'none' | 'out-of-time' {
  const { timer, reckoned, most } = search;
  const cansCost = (cans: Cans): number =>
    COMMODITIES.reduce(
      (sum, commodity) =>
        sum + Math.max(0, cans[commodity] - most[commodity]) * costOfCan(reckoned, commodity),
      0,
    );
  const searched = searchPlan(question, legSearches(question), { cansCost });
  if (searched.status === 'found') return searched;
  if (searched.status === 'none') return 'none';
  const seconds = timer.leftS();
  const model = carryModel(question);
  const facts = { question, model, ...withMoreCans(search, model), start: null, cuts: [] };
  const { status, values } = askHolding(facts, { ...search.options, seconds });
  if (status === 'out-of-time') return 'out-of-time';
  if (values === null) return 'none';
  const cans = byCommodity((commodity) => numberAt(values, model.aboard[commodity]));
  return { cans, proven: status === 'optimal' };
}

const withMostCans = ({ sides, ...question }: CarryQuestion, mostCans: Cans): CarryQuestion => ({
  ...question,
  sides: byCommodity((commodity) => ({ ...sides[commodity], mostCans: mostCans[commodity] })),
});

/** Of one can beyond those there may be. */
function costOfCan({ analysis }: Reckoned, commodity: Commodity): number {
  const { empty, filling } = canKgOf(analysis.rig, commodity);
  return 1 + CAN_PER_KG * (empty + filling);
}

/** The model with two columns more: cans of each commodity beyond those there may be, which are the cost. */
function withMoreCans(
  { reckoned, most }: Search,
  { mip, aboard }: CarryModel,
): { mip: Mip; cost: Float64Array } {
  const columns: MipColumn[] = [...mip.columns];
  const rows: MipRow[] = [...mip.rows];
  const cost = new Float64Array(columns.length + COMMODITIES.length);
  for (const commodity of COMMODITIES) {
    const beyond = columns.length;
    cost[beyond] = costOfCan(reckoned, commodity);
    rows.push(
      atMost(most[commodity], [
        [aboard[commodity], 1],
        [beyond, -1],
      ]),
    );
    columns.push({ lower: 0, upper: Number.POSITIVE_INFINITY, integer: false });
  }
  return { mip: { columns, rows }, cost };
}
