import type { TreatmentReport } from '../../server/contract/treatment.ts';
import { Terms } from '../kit/Terms.tsx';
import { Why } from '../kit/Why.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatFigure, formatFlow, type UnitSystem } from '../units/units.ts';
import { inUnits } from '../words/said.ts';
import { type LineStep, lineSteps, type Quality, STAGE_WORDS, TAP_WORDS } from './line-steps.ts';

interface LineChainProps {
  report: TreatmentReport;
  hasPump: boolean;
  units: UnitSystem;
}

const QUALITY_WORDS: Record<Quality, string> = {
  raw: t('as it came'),
  part: t('treated in part'),
  fit: t('reaches the target'),
};
const PLACE_WORDS = { source: 'Source', tank: 'Tank', pump: 'Pump' } as const;
const FLOW_WORDS = { measured: 'measured', estimate: 'estimate', unknown: '' } as const;

/**
 * The line drawn as water runs through it: the pipe is hollow while the water is as it came, striped while it is treated
 * in part, full once it reaches the target. Taps branch off to the right, each with its flow.
 */
export function LineChain({ report, hasPump, units }: LineChainProps) {
  const most = Math.max(...report.taps.map((tap) => tap.flowLPerMin ?? 0), 0);
  const steps = lineSteps(report, hasPump);
  return (
    <figure className="line-chain">
      <figcaption>{t('The line, from source to tap')}</figcaption>
      <ol>
        {steps.map((step, place) => (
          <li
            key={keyOf(step)}
            className={`step step-${step.kind}`}
            data-before={qualityBefore(steps, place)}
            data-after={step.quality}
          >
            <span className="mark" aria-hidden="true" />
            {step.kind === 'tap' ? (
              <TapStep tap={step.tap} most={most} units={units} />
            ) : step.kind === 'stage' ? (
              <StageStep index={step.index} stage={step.stage} quality={step.quality} units={units} />
            ) : (
              PLACE_WORDS[step.kind]
            )}
          </li>
        ))}
      </ol>
      <p className="chain-key" aria-hidden="true">
        {(['raw', 'part', 'fit'] as const).map((quality) => (
          <span key={quality}>
            <span className="pipe" data-after={quality} /> {QUALITY_WORDS[quality]}
          </span>
        ))}
      </p>
    </figure>
  );
}

const keyOf = (step: LineStep): string =>
  step.kind === 'stage' || step.kind === 'tap' ? `${step.kind} ${step.index}` : step.kind;

/** The water in the pipe as it comes to a step: that of the step before on the main pipe. */
function qualityBefore(steps: readonly LineStep[], place: number): Quality {
  const before = steps.slice(0, place).findLast((step) => step.kind !== 'tap');
  return before?.quality ?? 'raw';
}

function StageStep(props: {
  index: number;
  stage: TreatmentReport['stages'][number];
  quality: Quality;
  units: UnitSystem;
}) {
  const { index, stage, quality, units } = props;
  const { bacteria, viruses, protozoa } = stage.logs;
  const named =
    stage.name.toLowerCase() === `${index + 1} ${stage.kind}` ? STAGE_WORDS[stage.kind] : stage.name;
  return (
    <>
      <b>
        {index + 1}. {named}
      </b>
      {named !== STAGE_WORDS[stage.kind] && <span className="soft"> {STAGE_WORDS[stage.kind]}</span>}{' '}
      <Why of={t`what ${named} takes out`}>
        <ul>
          {stage.why.map((why, place) => (
            <li key={why}>{inUnits(units, why, stage.whyParts?.[place])}</li>
          ))}
        </ul>
      </Why>
      <span className="second">{tx`takes out ${
        bacteria + viruses + protozoa === 0
          ? t('no germs that count')
          : t`bacteria ${formatFigure(bacteria, 2)}, viruses ${formatFigure(viruses, 2)}, protozoa ${formatFigure(protozoa, 2)} log`
      }${<span className="only-read">{tx`; the water is then ${QUALITY_WORDS[quality]}`}</span>}`}</span>
    </>
  );
}

function TapStep(props: { tap: TreatmentReport['taps'][number]; most: number; units: UnitSystem }) {
  const { tap, most, units } = props;
  const flow = tap.flowLPerMin;
  return (
    <>
      <b>{tap.name}</b> <span className="soft">{TAP_WORDS[tap.use]}</span>
      <div>
        {flow === null ? (
          <span className="soft">{t('flow not known')}</span>
        ) : (
          <>
            <span
              className="flow-bar"
              aria-hidden="true"
              style={{ inlineSize: `${most > 0 ? Math.max(2, (flow / most) * 70) : 2}px` }}
            />
            <b>{formatFlow(flow, units)}</b> <span className="soft">{FLOW_WORDS[tap.flowFrom]}</span>
          </>
        )}
        {tap.starves && <strong className="error">{t(' starves')}</strong>}{' '}
        {tap.working.length > 0 && (
          <Why of={t`the flow of ${tap.name}`}>
            <Terms terms={tap.working} units={units} />
          </Why>
        )}
      </div>
      <span className="second">
        {tap.grade === 'drinking'
          ? t('fit to drink from clear sources')
          : t('for washing only: short of the target')}
        {tap.use === 'drinking' && tap.grade !== 'drinking' && (
          <strong className="error">{t(', yet meant for drinking')}</strong>
        )}
      </span>
    </>
  );
}
