import { useState } from 'react';
import type { Hazard, SourceKind, TreatmentReport } from '../../server/contract/treatment.ts';
import { useForm } from '../form/form-context.ts';
import { SOURCE_WORDS } from './line-steps.ts';

const PRESENCES = ['no', 'unknown', 'yes'] as const;
/** Cloudiness to choose from, NTU: clear, a little, cloudy, a river, a river in flood. */
const CLOUDY = [0.5, 1, 5, 20, 50, 200];

/** What is expected of the water of one kind of source: the reader may know better. */
export function HazardFields({ sources }: { sources: TreatmentReport['sources'] }) {
  const { said, onEdit } = useForm();
  const [kind, setKind] = useState<SourceKind>('river');
  const hazard = sources.find((source) => source.kind === kind)?.hazard;
  const { treatment } = said.rig;
  if (hazard === undefined || treatment === undefined) return null;
  const change = (part: Partial<Hazard>) => {
    // Our reason must not stand beside a figure of the reader's own.
    const { why: _, ...own } = treatment.hazards?.[kind] ?? {};
    const hazards = { ...treatment.hazards, [kind]: { ...own, ...part } };
    onEdit({ ...said, rig: { ...said.rig, treatment: { ...treatment, hazards } } });
  };
  const choices = CLOUDY.includes(hazard.turbidityNtu) ? CLOUDY : [hazard.turbidityNtu, ...CLOUDY];
  return (
    <details>
      <summary>Change what is expected of a source</summary>
      <label className="field">
        <span>Source</span>
        <span className="control">
          <select
            value={kind}
            onChange={(event) =>
              setKind(sources.find((source) => source.kind === event.target.value)?.kind ?? kind)
            }
          >
            {sources.map((source) => (
              <option key={source.kind} value={source.kind}>
                {SOURCE_WORDS[source.kind]}
              </option>
            ))}
          </select>
        </span>
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={hazard.microbial}
          onChange={(event) => change({ microbial: event.target.checked })}
        />{' '}
        Germs that must be taken out
      </label>
      {(['salt', 'chemicals'] as const).map((key) => (
        <label className="field" key={key}>
          <span>{key === 'salt' ? 'Salt' : 'Chemicals'}</span>
          <span className="control">
            <select
              value={hazard[key]}
              onChange={(event) =>
                change({ [key]: PRESENCES.find((each) => each === event.target.value) ?? hazard[key] })
              }
            >
              {PRESENCES.map((presence) => (
                <option key={presence} value={presence}>
                  {presence === 'unknown' ? 'not known' : presence}
                </option>
              ))}
            </select>
          </span>
        </label>
      ))}
      <label className="field">
        <span>Cloudiness</span>
        <span className="control">
          <select
            value={hazard.turbidityNtu}
            onChange={(event) => change({ turbidityNtu: Number(event.target.value) })}
          >
            {choices.map((ntu) => (
              <option key={ntu} value={ntu}>
                {ntu} NTU
              </option>
            ))}
          </select>
        </span>
      </label>
    </details>
  );
}
