import { askingOf } from '../model/ask.ts';
import { legSearches } from '../model/leg-searches.ts';
import type { SolveOptions } from '../model/time.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { searchPlan } from '../search/search-plan.ts';

/** Whether there is any plan; null where the time was not enough to tell, or not all was looked at. */
export function canBeDone(question: CarryQuestion, options: SolveOptions): boolean | null {
  const searched = searchPlan(question, legSearches(question));
  if (searched.status === 'found') return true;
  if (searched.status === 'none') return question.suppliesLeftOut === true ? null : false;
  const { model, hasChain, minimise } = askingOf(question, options);
  const none = model.complete ? false : null;
  if (!hasChain) return none;
  const { status, values } = minimise(new Float64Array(model.mip.columns.length), [], null);
  if (values !== null) return true;
  return status === 'infeasible' ? none : null;
}
