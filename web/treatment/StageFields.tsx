import type { StageKind, TreatmentFile, TreatmentStage } from '../../server/contract/treatment.ts';
import { QuantityField, TextField, TickField } from '../form/fields.tsx';
import { OptionalGroup } from '../form/OptionalGroup.tsx';
import { isTypical, ofKind, removeStage, STAGE_KEYS, swapStages, TYPICAL_DROP } from './edit-line.ts';
import { GERMS } from './germs.ts';
import { STAGE_WORDS } from './line-steps.ts';

export const STAGE_KINDS = Object.keys(STAGE_WORDS) as StageKind[];

interface StageFieldsProps {
  line: TreatmentFile;
  index: number;
  onLine: (line: TreatmentFile) => void;
}

/** One stage: its kind, its place in the line, and what its maker states. */
export function StageFields({ line, index, onLine }: StageFieldsProps) {
  const stage = line.stages[index]!;
  const base = `/treatment/stages/${index}`;
  const number = index + 1;
  const becomes = (kind: StageKind) =>
    onLine({
      ...line,
      stages: line.stages.map((each, place) => (place === index ? ofKind(each, kind) : each)),
    });
  return (
    <details className="entry stage-entry">
      <summary>
        {number}. {STAGE_WORDS[stage.kind]}
        {stage.name !== undefined && <span className="soft"> {stage.name}</span>}
      </summary>
      {isTypical(stage) && <p className="says">Typical values: change them to those of its maker.</p>}
      <label className="field">
        <span>Kind</span>
        <span className="control">
          <select value={stage.kind} onChange={(event) => becomes(kindOf(event.target.value, stage.kind))}>
            {STAGE_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {STAGE_WORDS[kind]}
              </option>
            ))}
          </select>
        </span>
      </label>
      <TextField label="Called" at={`${base}/name`} />
      <KindFields stage={stage} base={base} />
      <details>
        <summary>What its maker says it takes out</summary>
        {GERMS.map((germs) => (
          <QuantityField
            key={germs}
            label={`${germs}, as log`}
            at={`${base}/logs/${germs}`}
            kind="log"
            optional
          />
        ))}
        {GERMS.map((germs) => (
          <QuantityField
            key={germs}
            label={`or ${germs} stopped`}
            at={`${base}/stopsPercent/${germs}`}
            kind="percent"
            optional
            {...(germs === 'bacteria' ? { hint: '94 % is 1.22 log' } : {})}
          />
        ))}
      </details>
      <p className="actions">
        <button
          type="button"
          className="quiet"
          disabled={index === 0}
          onClick={() => onLine(swapStages(line, index - 1))}
        >
          Earlier<span className="only-read"> with stage {number}</span>
        </button>
        <button
          type="button"
          className="quiet"
          disabled={number === line.stages.length}
          onClick={() => onLine(swapStages(line, index))}
        >
          Later<span className="only-read"> with stage {number}</span>
        </button>
        {line.stages.length > 1 && (
          <button type="button" className="quiet" onClick={() => onLine(removeStage(line, index))}>
            Remove<span className="only-read"> stage {number}</span>
          </button>
        )}
      </p>
    </details>
  );
}

const kindOf = (value: string, before: StageKind): StageKind =>
  STAGE_KINDS.find((kind) => kind === value) ?? before;

function KindFields({ stage, base }: { stage: TreatmentStage; base: string }) {
  const has = (key: (typeof STAGE_KEYS)[StageKind][number]) => STAGE_KEYS[stage.kind].includes(key);
  return (
    <>
      {has('poreMicron') && (
        <QuantityField label="Pores, absolute" at={`${base}/poreMicron`} kind="pores" optional />
      )}
      {has('recovery') && (
        <QuantityField
          label="Of the water becomes clean"
          at={`${base}/recovery`}
          kind="share"
          optional
          hint="the rest is thrown away"
        />
      )}
      {has('doseMJPerCm2') && (
        <QuantityField
          label="Dose at the end of its life"
          at={`${base}/doseMJPerCm2`}
          kind="dose"
          optional
          hint="40 and more count"
        />
      )}
      {has('flowLPerMin') && (
        <QuantityField
          label={stage.kind === 'uv' ? 'Gives its dose up to' : 'Makes at most'}
          at={`${base}/flowLPerMin`}
          kind="flow"
          optional
        />
      )}
      {has('mgPerLitre') && (
        <QuantityField label="Free chlorine dosed" at={`${base}/mgPerLitre`} kind="strength" optional />
      )}
      {has('minutes') && (
        <QuantityField
          label={stage.kind === 'boiling' ? 'Rolling boil' : 'Contact'}
          at={`${base}/minutes`}
          kind="minutes"
          optional
        />
      )}
      {has('standsNtu') && (
        <QuantityField
          label="Stands water as cloudy as"
          at={`${base}/standsNtu`}
          kind="cloudiness"
          optional
          hint="1 NTU looks clear, 50 like a stirred river"
        />
      )}
      {has('leavesNtu') && (
        <QuantityField label="and leaves" at={`${base}/leavesNtu`} kind="cloudiness" optional />
      )}
      {has('lifeLitres') && (
        <>
          <QuantityField label="Lasts for" at={`${base}/lifeLitres`} kind="volume" optional />
          <QuantityField
            label="of it used before the trip"
            at={`${base}/usedLitres`}
            kind="volume"
            optional
          />
        </>
      )}
      {has('drop') && (
        <OptionalGroup
          legend="Pressure it takes"
          at={{ in: 'rig', path: `${base}/drop` }}
          start={TYPICAL_DROP}
          typical="Typical values: change them to those of its maker."
        >
          <QuantityField label="Takes" at={`${base}/drop/kPa`} kind="pressure" />
          <QuantityField label="at" at={`${base}/drop/atLPerMin`} kind="flow" />
        </OptionalGroup>
      )}
      {has('backwash') && <TickField label="Can be washed backwards" at={`${base}/backwash`} />}
      {has('mayHaveFrozen') && (
        <TickField label="May have frozen: counts for nothing" at={`${base}/mayHaveFrozen`} />
      )}
    </>
  );
}
