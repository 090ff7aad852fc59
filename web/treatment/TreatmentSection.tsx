import type { StageKind, TreatmentFile } from '../../server/contract/treatment.ts';
import { ChoiceField, QuantityField, TextField, TickField } from '../form/fields.tsx';
import { useField, useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { OptionalGroup } from '../form/OptionalGroup.tsx';
import { useRefocus } from '../kit/use-refocus.ts';
import { addStage, TYPICAL_LINE, TYPICAL_PUMP } from './edit-line.ts';
import { GERMS } from './germs.ts';
import { HazardFields } from './HazardFields.tsx';
import { LineFigures } from './LineFigures.tsx';
import { STAGE_WORDS } from './line-steps.ts';
import { STAGE_KINDS, StageFields } from './StageFields.tsx';
import './treatment.css';

const PLACES = [
  { value: 'tap', words: 'between tank and tap' },
  { value: 'filling', words: 'while the tank is filled' },
];
const TAP_USES = [
  { value: 'drinking', words: 'drinking' },
  { value: 'kitchen', words: 'kitchen' },
  { value: 'shower', words: 'shower' },
];

/** The treatment line as a form, and what it does drawn below. */
export function TreatmentSection() {
  const { said, analysis, units, onEdit } = useForm();
  const line = said.rig.treatment;
  const { place, soon } = useRefocus<HTMLDivElement>('summary, button');
  const onLine = (treatment: TreatmentFile | undefined) => {
    if ((treatment === undefined) !== (line === undefined)) soon();
    const { treatment: _, ...rig } = said.rig;
    onEdit({ ...said, rig: treatment === undefined ? rig : { ...rig, treatment } });
  };
  if (line === undefined) {
    return (
      <div ref={place}>
        <p>
          No treatment line: only water stated fit to drink counts.{' '}
          <button type="button" onClick={() => onLine(TYPICAL_LINE)}>
            Add a treatment line
          </button>
        </p>
      </div>
    );
  }
  return (
    <div ref={place}>
      {analysis.treatment !== null && (
        <LineFigures report={analysis.treatment} hasPump={line.pump !== undefined} units={units} />
      )}
      <fieldset className="list">
        <legend>Stages, as water runs through them</legend>
        {line.stages.map((_, index) => (
          // Stages are told apart by their place; the count starts the fields afresh after one was added or removed.
          <StageFields key={placeKey(line, index)} {...{ line, index, onLine }} />
        ))}
        <AddStage onAdd={(kind) => onLine(addStage(line, kind))} />
      </fieldset>
      <ChoiceField label="Works" at="/treatment/at" choices={PLACES} />
      <TargetFields />
      <QuantityField label="All together credited with at most" at="/treatment/maximumLog" kind="log" />
      <TickField
        label="Treat every source that I have not confirmed, also what others drink as it comes"
        at="/treatment/treatEverything"
      />
      <TickField
        label="The line may have frozen: its membranes count for nothing"
        at="/treatment/mayHaveFrozen"
      />
      <OptionalGroup
        legend="Pump"
        at={{ in: 'rig', path: '/treatment/pump' }}
        start={TYPICAL_PUMP}
        typical="Typical values of a small pump: change them to those on its sheet."
      >
        <QuantityField label="Pressure at no flow" at="/treatment/pump/noFlowKPa" kind="pressure" />
        <QuantityField label="Pressure at the rated flow" at="/treatment/pump/ratedKPa" kind="pressure" />
        <QuantityField label="Rated flow" at="/treatment/pump/ratedLPerMin" kind="flow" />
      </OptionalGroup>
      <ListFields
        legend="Taps"
        one="tap"
        at={{ in: 'rig', path: '/treatment/taps' }}
        fresh={(count) => ({ name: `tap ${count + 1}`, afterStage: line.stages.length, use: 'drinking' })}
      >
        {(entry) => (
          <>
            <TextField label="Tap" at={`${entry}/name`} />
            <ChoiceField label="for" at={`${entry}/use`} choices={TAP_USES} />
            <AfterStage line={line} at={`${entry}/afterStage`} />
            <QuantityField
              label="Flow as measured"
              at={`${entry}/measuredLPerMin`}
              kind="flow"
              optional
              hint="empty: estimated from pump and line"
            />
          </>
        )}
      </ListFields>
      <ListFields
        legend="Hoses"
        one="hose"
        at={{ in: 'rig', path: '/treatment/hoses' }}
        fresh={() => ({ afterStage: 0, lengthM: 2, boreMm: 10 })}
      >
        {(entry) => (
          <>
            <AfterStage line={line} at={`${entry}/afterStage`} />
            <QuantityField label="Length" at={`${entry}/lengthM`} kind="length" />
            <QuantityField label="Bore" at={`${entry}/boreMm`} kind="bore" />
          </>
        )}
      </ListFields>
      {analysis.treatment !== null && <HazardFields sources={analysis.treatment.sources} />}
      <button type="button" className="quiet" onClick={() => onLine(undefined)}>
        Remove the treatment line
      </button>
    </div>
  );
}

function AddStage({ onAdd }: { onAdd: (kind: StageKind) => void }) {
  return (
    <label className="add-stage">
      <span className="only-read">Add a stage at the end</span>
      <select
        value=""
        onChange={(event) => {
          const kind = STAGE_KINDS.find((each) => each === event.target.value);
          if (kind !== undefined) onAdd(kind);
        }}
      >
        <option value="">Add a stage…</option>
        {STAGE_KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {STAGE_WORDS[kind]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** After which stage something branches off: a number in the file. */
function AfterStage({ line, at }: { line: TreatmentFile; at: string }) {
  const field = useField({ in: 'rig', path: at });
  return (
    <label className="field">
      <span>branches off</span>
      <span className="control">
        <select value={Number(field.value ?? 0)} onChange={(event) => field.set(Number(event.target.value))}>
          <option value={0}>before all stages</option>
          {line.stages.map((stage, index) => (
            <option key={placeKey(line, index)} value={index + 1}>
              after {index + 1}. {stage.name ?? STAGE_WORDS[stage.kind]}
            </option>
          ))}
        </select>
      </span>
    </label>
  );
}

const TARGETS = [
  { value: 'purifier', words: 'purifier: 6, 4, 3 log' },
  { value: 'three-star', words: 'three-star: 4, 5, 4 log' },
  { value: 'two-star', words: 'two-star: 2, 3, 2 log' },
  { value: 'own', words: 'your own' },
];

/** A named target, or three figures of the reader's own. */
function TargetFields() {
  const { analysis } = useForm();
  const target = useField({ in: 'rig', path: '/treatment/target' });
  const named = typeof target.value === 'string';
  const logs = analysis.treatment?.target.logs ?? { bacteria: 6, viruses: 4, protozoa: 3 };
  return (
    <>
      <label className="field">
        <span>Must take out (bacteria, viruses, protozoa)</span>
        <span className="control">
          <select
            value={named ? String(target.value) : 'own'}
            onChange={(event) => target.set(event.target.value === 'own' ? { ...logs } : event.target.value)}
          >
            {TARGETS.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </span>
        <span className="remark">
          {target.refused ?? (target.assumed === null ? '' : `assumed: ${target.assumed}`)}
        </span>
      </label>
      {!named &&
        GERMS.map((germs) => (
          <QuantityField key={germs} label={germs} at={`/treatment/target/${germs}`} kind="log" />
        ))}
    </>
  );
}

const placeKey = (line: TreatmentFile, index: number): string => `${line.stages.length} ${index}`;
