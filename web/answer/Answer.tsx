import type { Analysis } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAtKm, formatDays, formatKm, type UnitSystem } from '../units/units.ts';
import { capitalised, commodityWords, edgeName } from '../words/words.ts';
import { headlineOf, shareWords, worstWords } from './headline.ts';
import { type PlanStanding, PlanTodo } from './PlanTodo.tsx';
import { Sentences } from './Sentences.tsx';
import { TodoBox } from './TodoBox.tsx';

interface AnswerProps {
  analysis: Analysis;
  units: UnitSystem;
  /** The plan to go by. */
  plan: PlanReply | null;
}

/** One commodity's answer: the verdict as one would say it, then the figures. All the sentences are in the panel. */
export function CommodityAnswer({
  analysis,
  units,
  plan,
  commodity,
}: AnswerProps & { commodity: Commodity }) {
  const report = analysis[commodity];
  const longest = report.gaps[report.longest];
  const headline = headlineOf(analysis, commodity, { plan, units });
  const { verdict, words, worst } = headline;
  const headingId = `answer-${commodity}`;
  return (
    <section className="answer" aria-labelledby={headingId}>
      <h2 className="label" id={headingId}>
        <span className={`swatch swatch-${commodity}`} aria-hidden="true" />
        {capitalised(commodityWords(commodity, analysis.rig.fuel.kind))}
      </h2>
      <p className={`headline headline-${verdict}`} data-testid={`headline-${commodity}`}>
        {words}
      </p>
      {worst === null ? (
        <p className="figures">
          {t('No extract tells of it on this route: neither where it is nor that there is none.')}
        </p>
      ) : (
        <p className="figures">
          <span>{worstWords(headline, units)}</span>{' '}
          {worst.verdict !== 'enough' && (
            <>
              <span className="quantity">{shareWords(report, worst.verdict)}.</span>{' '}
            </>
          )}
          {longest !== undefined &&
            tx`Longest stretch ${(
              <b data-testid={`longest-${commodity}`}>
                {formatKm(longest.lengthKm, units)}
                {commodity === 'water' && `, ${formatDays(longest.days)}`}
              </b>
            )}${
              longest !== worst &&
              t` (${edgeName(longest.from)} to ${edgeName(longest.to)}, ${formatAtKm(longest.from.atKm, units)} to ${formatAtKm(longest.to.atKm, units)})`
            }.`}
        </p>
      )}
    </section>
  );
}

interface TodoProps extends AnswerProps {
  /** A plan is being made: what is said without one may be replaced. */
  coming: boolean;
  standing: PlanStanding;
}

/** What to do; by the plan where one is at hand. */
export function Todo({ analysis, units, plan, coming, standing }: TodoProps) {
  if (plan?.plan.status === 'found') return <PlanTodo {...{ analysis, units, plan, standing }} />;
  return (
    <TodoBox label={coming ? t('Do this; a plan is being made') : t('Do this')}>
      {plan?.plan.status === 'none' && (
        <p>{tx`${<strong>{t('No carry plan keeps the reserve')}</strong>} as things stand: see under Plan what breaks it and what helps.`}</p>
      )}
      {analysis.answer.todo.map((sentence) => (
        <Sentences key={JSON.stringify(sentence)} sentences={[sentence]} units={units} />
      ))}
    </TodoBox>
  );
}
