import type { TreatmentReport } from '../../server/contract/treatment.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatFigure } from '../units/units.ts';
import { GERMS } from './germs.ts';

const TARGET_WORDS: Record<string, string> = {
  purifier: t('purifier'),
  'two-star': 'two-star',
  'three-star': 'three-star',
  custom: t('your own'),
};

/** What the stages take out of each class of germs, laid end to end against the target. */
export function LogBars({ report }: { report: TreatmentReport }) {
  const { target, maximumLog, lacks } = report;
  const full = Math.max(maximumLog, ...GERMS.map((germs) => target.logs[germs]));
  const percent = (log: number) => `${(Math.min(log, full) / full) * 100}%`;
  return (
    <div className="log-bars">
      <h5>{tx`Against the target “${TARGET_WORDS[target.name] ?? target.name}”: ${report.meetsTarget ? t('met in clear water') : <span className="error">{tx`short by ${lacks.map(({ germs, log }) => t`${formatFigure(log, 2)} log of ${germs}`).join(', ')}`}</span>}`}</h5>
      {GERMS.map((germs) => {
        const parts = report.stages.filter((stage) => stage.logs[germs] > 0);
        return (
          <div className="log-bar" key={germs}>
            <span>{germs}</span>
            <span className="log-track" aria-hidden="true">
              {parts.map((stage, index) => (
                <span
                  key={`${stage.name} ${parts.indexOf(stage)}`}
                  className="log-part"
                  data-odd={index % 2 === 1 || undefined}
                  style={{ inlineSize: percent(stage.logs[germs]) }}
                />
              ))}
              <span className="log-target" style={{ insetInlineStart: percent(target.logs[germs]) }} />
            </span>
            <span className="log-figure">{tx`${<b>{formatFigure(report.logs[germs], 2)}</b>} of ${formatFigure(target.logs[germs], 2)} log`}</span>
          </div>
        );
      })}
      <p className="soft">{tx`1 log leaves a tenth, 2 log a hundredth. Each part of a bar is a stage; the mark is the target. All together are credited with at most ${formatFigure(maximumLog, 1)} log.`}</p>
    </div>
  );
}
