import { COMMODITIES } from '../../quantity/commodities.ts';
import { fullCansKg } from '../question/can-kg.ts';
import { mostCansOf } from '../question/can-limits.ts';
import { questionOf } from '../question/question-of.ts';
import { byCommodity } from '../side/other-of.ts';
import { fewestMoreCans } from './fewest-cans.ts';
import { cansWith, type WaysOutContext } from './try-change.ts';
import { WAY_OUT, type WayOut } from './way-out.ts';

/** The fewest cans beyond those there may be, whatever limit the trip sets. */
export function moreCansWay(context: WaysOutContext): WayOut[] {
  if (!context.moreCans) return [];
  const { reckoned } = context;
  const most = mostCansOf(questionOf(reckoned).question);
  const fewest = fewestMoreCans({ reckoned, open: COMMODITIES, anyMass: false }, context);
  if (fewest.status === 'out-of-time') context.state.ranOut = true;
  if (fewest.status !== 'found') return [];
  const { mostCans } = fewest;
  const more = byCommodity((commodity) => Math.max(0, mostCans[commodity] - most[commodity]));
  const counts = COMMODITIES.map((commodity) => ({ commodity, count: more[commodity] })).filter(
    ({ count }) => count > 0,
  );
  const cans = counts.length === 0 ? null : cansWith(reckoned, context, { mostCans });
  if (cans === null) return [];
  const moreKg = fullCansKg(reckoned.analysis.rig, more);
  return [
    {
      ...WAY_OUT,
      kind: 'more-cans',
      text: { phrase: 'with-more-cans', facts: { cans: counts, moreKg } },
      cans,
      amount: more.fuel + more.water,
      unit: 'cans',
      moreKg,
    },
  ];
}
