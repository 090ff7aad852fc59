import type { Analysis, Gap, Report } from '../../server/contract/analysis.ts';
import type { Commodity, Verdict } from '../../server/contract/common.ts';
import type { PlanLeg } from '../../server/contract/plan.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { plural, t } from '../language/t.ts';
import { formatAtKm, formatFigure, formatLitres, type UnitSystem } from '../units/units.ts';
import { placeWords } from '../words/plan-words.ts';
import { worstOf } from '../words/words.ts';

/** A commodity's answer in a few words, and the stretch that it is about. */
export interface Headline {
  readonly verdict: Verdict;
  readonly words: string;
  /** The worst stretch as the route stands; null where no map tells of the commodity. */
  readonly worst: Gap | null;
  /** The plan keeps the reserve where the worst stretch does not. */
  readonly byPlan: boolean;
  /** The leg of the plan that nobody knows to hold, where it is that which the words are about. */
  readonly open?: PlanLeg;
}

/** The verdict as a traveller says it. `plan` is the plan to go by, or null. */
export function headlineOf(
  analysis: Analysis,
  commodity: Commodity,
  { plan, units }: { plan: PlanReply | null; units: UnitSystem },
): Headline {
  const worst = worstOf(analysis[commodity].gaps) ?? null;
  const closed = analysis.cautions.find(({ code }) => code === 'route-closed');
  if (closed !== undefined) {
    const words = t`Route closed at ${formatAtKm(closed.fromKm ?? 0, units)}`;
    return { verdict: 'unknown', words, worst, byPlan: false };
  }
  if (worst === null || analysis.noData.includes(commodity))
    return { verdict: 'unknown', words: t('Not on the map'), worst: null, byPlan: false };
  if (plan?.plan.status === 'found') {
    // The plan passes supplies by: it may rest on what is not known where every stretch by itself is enough.
    const open = plan.plan.legs[commodity].find(({ verdict }) => verdict !== 'enough');
    if (open !== undefined) {
      const words = isOnwardAlone(analysis[commodity], open)
        ? PAST_THE_END
        : t`Not known from ${formatAtKm(open.from.atKm, units)}, by the plan`;
      return { verdict: open.verdict, words, worst, byPlan: false, open };
    }
    if (worst.verdict !== 'enough')
      return { verdict: 'enough', words: t('Holds with the plan'), worst, byPlan: true };
  }
  return { verdict: worst.verdict, words: wordsOf(worst, units), worst, byPlan: false };
}

const PAST_THE_END = t('Not known past the end');

/** Whether a last leg is not known for nothing but that nobody said where the next supply is. */
const isOnwardAlone = ({ gaps }: Report, { from, to, acrossNoData }: PlanLeg): boolean =>
  to.kind === 'end' &&
  !acrossNoData &&
  gaps
    .filter((gap) => gap.to.atKm > from.atKm)
    .every(({ doubt, acrossNoData: across }) => !across && (doubt === null || doubt.of === 'onward'));

function wordsOf(gap: Gap, units: UnitSystem): string {
  switch (gap.verdict) {
    case 'enough':
      return t('Enough all the way');
    case 'short':
      return gap.runsDryKm === null
        ? t('Runs dry on the way')
        : t`Runs dry at ${formatAtKm(gap.runsDryKm, units)}`;
    case 'into-reserve':
      return gap.reserveFromKm === null
        ? t('Into the reserve')
        : t`Into the reserve at ${formatAtKm(gap.reserveFromKm, units)}`;
    case 'unknown':
      if (gap.doubt?.of === 'onward' && gap.doubt.leavesUnknown) return PAST_THE_END;
      return t`Not known from ${formatAtKm(gap.from.atKm, units)}`;
  }
}

/** What the worst stretch comes to without the plan, in a sentence; empty where all is well. */
export function worstWords({ words, worst, byPlan, open }: Headline, units: UnitSystem): string {
  if (words === PAST_THE_END) return t('Say how far it is from the end of the route to the next supply.');
  if (open !== undefined) return `${between(open, units)}.`;
  if (worst === null || worst.verdict === 'enough') return '';
  const missing = worst.extraL > 0 ? t`, ${formatLitres(worst.extraL, units)} missing` : '';
  if (!byPlan) return `${between(worst, units)}${missing}.`;
  const without = wordsOf(worst, units);
  return t`Without it ${without.charAt(0).toLowerCase()}${without.slice(1)}${missing}.`;
}

const between = ({ from, to }: Pick<Gap, 'from' | 'to'>, units: UnitSystem): string =>
  t`${placeWords(from, units)} to ${placeWords(to, units)}`;

const VERBS: Record<Verdict, readonly [one: string, more: string]> = {
  enough: [t('is enough'), t('are enough')],
  'into-reserve': [t('goes into the reserve'), t('go into the reserve')],
  short: [t('runs dry'), t('run dry')],
  unknown: [t('is not known'), t('are not known')],
};

/** "1 of 6 stretches runs dry": how many share a verdict. */
export function shareWords({ gaps }: Report, verdict: Verdict): string {
  const count = gaps.filter((gap) => gap.verdict === verdict).length;
  const [one, more] = VERBS[verdict];
  const of = plural(gaps.length, t('stretch'), t('stretches'));
  return t`${formatFigure(count, 0)} of ${formatFigure(gaps.length, 0)} ${of} ${plural(count, one, more)}`;
}
