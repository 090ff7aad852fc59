import type { Analysis } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { distanceUnit, figureKm, formatDays, formatFigure, type UnitSystem } from '../units/units.ts';
import { commodityWords, VERDICT_WORDS, worstOf } from '../words/words.ts';
import { PlanTodo } from './PlanTodo.tsx';
import { Sentences } from './Sentences.tsx';

interface AnswerProps {
  analysis: Analysis;
  units: UnitSystem;
}

/** One commodity's answer: its longest stretch as a figure, how many stretches are how bad, and why. */
export function CommodityAnswer({ analysis, units, commodity }: AnswerProps & { commodity: Commodity }) {
  const report = analysis[commodity];
  const longest = report.gaps[report.longest];
  const { verdict, count, of } = worstOf(report);
  const headingId = `answer-${commodity}`;
  const isWithoutData = analysis.noData.includes(commodity);
  return (
    <section className="answer" aria-labelledby={headingId}>
      <h2 className="label" id={headingId}>
        <span className={`swatch swatch-${commodity}`} aria-hidden="true" />
        {isWithoutData ? 'No data on' : 'Longest stretch without'}{' '}
        {commodityWords(commodity, analysis.rig.fuel.kind)}
      </h2>
      {longest !== undefined && !isWithoutData && (
        <p className="figure" data-testid={`longest-${commodity}`}>
          <span className="big">{figureKm(longest.lengthKm, units)}</span>{' '}
          <span className="unit">
            {distanceUnit(units)}
            {commodity === 'water' && `, ${formatDays(longest.days)}`}
          </span>
        </p>
      )}
      <Sentences sentences={analysis.answer[commodity]} units={units}>
        <VerdictMark verdict={verdict}>
          {shareWords(count, of)} {VERDICT_WORDS[verdict]}
        </VerdictMark>{' '}
      </Sentences>
    </section>
  );
}

/** "1 of 6 stretches", "all 6 stretches". */
function shareWords(count: number, of: number): string {
  if (of === 1) return 'The only stretch:';
  return count === of
    ? `All ${formatFigure(of, 0)} stretches`
    : `${formatFigure(count, 0)} of ${formatFigure(of, 0)} stretches`;
}

/** What to do, a line each, set off from all else by being turned inside out; by the plan where one is at hand. */
export function Todo({ analysis, units, plan }: AnswerProps & { plan: PlanReply | null }) {
  if (plan?.plan.status === 'found') return <PlanTodo {...{ analysis, units, plan }} />;
  return (
    <section className="todo" aria-labelledby="todo">
      <h2 className="label" id="todo">
        Do this
      </h2>
      {plan?.plan.status === 'none' && (
        <p>
          <strong>No carry plan keeps the reserve</strong> as things stand: see under Carry what breaks it and
          what helps.
        </p>
      )}
      {analysis.answer.todo.map((sentence) => (
        <Sentences key={JSON.stringify(sentence)} sentences={[sentence]} units={units} />
      ))}
    </section>
  );
}
