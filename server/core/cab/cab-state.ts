import type { Commodity } from '../../contract/common.ts';
import type { GaugeRun } from '../plan/gauge/gauge-run.ts';
import { type LeastAboard, leastAt, leastIn, leavingSupply } from '../plan/gauge/least-at.ts';
import { byCommodity } from '../plan/side/other-of.ts';
import { type CabAnswer, cabAnswer } from './cab-answer.ts';
import type { CabRuns, CabSideRuns } from './cab-runs.ts';
import { type CabSide, sideState } from './side-state.ts';

/** Where the vehicle is and what is aboard, as the crew reads it. */
export interface CabAsk {
  /** Metres along the route. */
  readonly atM: number;
  /** Litres of all that can be used, full cans included; null: not read. */
  readonly litres: Readonly<Record<Commodity, number | null>>;
  /** At a stop: whether all halts of this place are done. */
  readonly left: boolean;
  /** Supplies, by their ids, that turned out to give nothing. */
  readonly failed: Readonly<Record<Commodity, readonly string[]>>;
}

export interface CabState {
  readonly fuel: CabSide;
  readonly water: CabSide;
  readonly answer: CabAnswer;
}

/** What the crew can do from there: on, back, by how much, for each commodity and for both. */
export function cabState(runs: CabRuns, ask: CabAsk): CabState {
  const sides = byCommodity((commodity) => sideOf(runs[commodity], commodity, ask));
  return { ...sides, answer: cabAnswer(sides.fuel, sides.water) };
}

function sideOf(runs: CabSideRuns, commodity: Commodity, ask: CabAsk): CabSide {
  const litres = ask.litres[commodity];
  if (litres === null) return { commodity, none: 'unread' };
  const least = leastThere(runs, ask, ask.failed[commodity]);
  return least === null ? { commodity, none: 'beyond-plan' } : sideState(commodity, least, litres);
}

/** By the runs of the plan, or over a supply that failed; null where that ends or begins at another that failed. */
function leastThere(
  { planned, over }: CabSideRuns,
  { atM, left }: CabAsk,
  failed: readonly string[],
): LeastAboard | null {
  const fails = ({ id }: { readonly id: string | null }) => id !== null && failed.includes(id);
  const leaves = left && planned.some(({ from }) => from.atM === atM);
  const kind = atM <= 0 ? 'start' : left ? 'leaving' : 'step';
  const least = leastAt(planned, { atM, at: kind, own: leaves });
  if (!fails(least.run.from) && !fails(least.run.to)) return least;
  const run = over.find(
    (one) => failed.includes(one.id) && !fails(one.run.from) && !fails(one.run.to) && isOn(one.run, atM),
  )?.run;
  if (run === undefined) return null;
  return run.from.atM === atM || atM <= 0 ? leavingSupply(run) : leastIn(run, { atM, at: kind });
}

const isOn = ({ from, to }: GaugeRun, atM: number): boolean => from.atM <= atM && to.atM >= atM;
