import type { StageKind, TreatmentFile } from '../../server/contract/treatment.ts';
import { Fields } from '../form/Fields.tsx';
import { below, RIG, useForm } from '../form/form-context.ts';
import { Part } from '../form/Part.tsx';
import { addStage, TYPICAL_LINE } from './edit-line.ts';
import { HazardFields } from './HazardFields.tsx';
import { LineFigures } from './LineFigures.tsx';
import { LINE_ITEMS } from './line-items.tsx';
import { STAGE_KINDS, STAGE_WORDS } from './line-steps.ts';
import { StageFields } from './StageFields.tsx';
import './treatment.css';
import { t } from '../language/t.ts';

/** The treatment line as a form, and what it does drawn above. */
export function TreatmentSection() {
  const { said, onEdit } = useForm();
  const { treatment: line, ...rig } = said.rig;
  const onLine = (treatment: TreatmentFile) => onEdit({ ...said, rig: { ...rig, treatment } });
  return (
    <Part
      told={line !== undefined}
      without={t('No treatment line: only water stated fit to drink counts.')}
      add={{ words: t('Add a treatment line'), onClick: () => onLine(TYPICAL_LINE) }}
      leaveOut={{ words: t('Remove the treatment line'), onClick: () => onEdit({ ...said, rig }) }}
    >
      {line !== undefined && <LineFields line={line} onLine={onLine} />}
    </Part>
  );
}

function LineFields({ line, onLine }: { line: TreatmentFile; onLine: (line: TreatmentFile) => void }) {
  const { analysis, units } = useForm();
  const report = analysis.treatment;
  return (
    <>
      {report !== null && <LineFigures report={report} hasPump={line.pump !== undefined} units={units} />}
      <fieldset className="list">
        <legend>{t('Stages, as water runs through them')}</legend>
        {line.stages.map((stage, index) => (
          // Stages are told apart by their place; the count starts the fields afresh after one was added or removed.
          <StageFields key={placeKey(line, index)} {...{ line, stage, index, onLine }} />
        ))}
        <AddStage onAdd={(kind) => onLine(addStage(line, kind))} />
      </fieldset>
      <Fields items={LINE_ITEMS} at={below(RIG, '/treatment')} />
      {report !== null && <HazardFields sources={report.sources} />}
    </>
  );
}

const placeKey = (line: TreatmentFile, index: number): string => `${line.stages.length} ${index}`;

function AddStage({ onAdd }: { onAdd: (kind: StageKind) => void }) {
  return (
    <label className="add-stage">
      <span className="only-read">{t('Add a stage at the end')}</span>
      <select
        value=""
        onChange={(event) => {
          const kind = STAGE_KINDS.find((each) => each === event.target.value);
          if (kind !== undefined) onAdd(kind);
        }}
      >
        <option value="">{t('Add a stage…')}</option>
        {STAGE_KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {STAGE_WORDS[kind]}
          </option>
        ))}
      </select>
    </label>
  );
}
