import type { StageKind, TreatmentFile, TreatmentStage } from '../../server/contract/treatment.ts';
import { Fields } from '../form/Fields.tsx';
import { Searched } from '../form/FindFields.tsx';
import { SelectRow } from '../form/FormRow.tsx';
import { below, RIG } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { isTypical, ofKind, removeStage, swapStages } from './edit-line.ts';
import { STAGE_KINDS, STAGE_WORDS } from './line-steps.ts';
import { stageGroup } from './stage-items.ts';

const KINDS = STAGE_KINDS.map((value) => ({ value, words: STAGE_WORDS[value] }));

interface StageFieldsProps {
  line: TreatmentFile;
  stage: TreatmentStage;
  index: number;
  onLine: (line: TreatmentFile) => void;
}

/** One stage: its kind, its place in the line, and what its maker states. */
export function StageFields({ line, stage, index, onLine }: StageFieldsProps) {
  const becomes = (kind: StageKind) =>
    onLine({
      ...line,
      stages: line.stages.map((each, place) => (place === index ? ofKind(each, kind) : each)),
    });
  const group = stageGroup(stage.kind);
  return (
    <Searched item={group}>
      {(unfolded) => (
        <details className="entry stage-entry" open={unfolded}>
          <summary>
            {index + 1}. {STAGE_WORDS[stage.kind]}
            {stage.name !== undefined && <span className="soft"> {stage.name}</span>}
          </summary>
          {isTypical(stage) && (
            <p className="says">{t('Typical values: change them to those of its maker.')}</p>
          )}
          <SelectRow
            label={t('Kind')}
            value={stage.kind}
            choices={KINDS}
            onChoose={(value) => becomes(STAGE_KINDS.find((kind) => kind === value) ?? stage.kind)}
          />
          <Fields items={group.items} at={below(RIG, `/treatment/stages/${index}`)} />
          <StageButtons {...{ line, index, onLine }} />
        </details>
      )}
    </Searched>
  );
}

function StageButtons({ line, index, onLine }: Omit<StageFieldsProps, 'stage'>) {
  const number = index + 1;
  return (
    <p className="actions">
      <button
        type="button"
        className="quiet"
        disabled={index === 0}
        onClick={() => onLine(swapStages(line, index - 1))}
      >{tx`Earlier${<span className="only-read">{tx` with stage ${number}`}</span>}`}</button>
      <button
        type="button"
        className="quiet"
        disabled={number === line.stages.length}
        onClick={() => onLine(swapStages(line, index))}
      >{tx`Later${<span className="only-read">{tx` with stage ${number}`}</span>}`}</button>
      {line.stages.length > 1 && (
        <button
          type="button"
          className="quiet"
          onClick={() => onLine(removeStage(line, index))}
        >{tx`Remove${<span className="only-read">{tx` stage ${number}`}</span>}`}</button>
      )}
    </p>
  );
}
