import { useState } from 'react';
import type { Hazard, SourceKind, TreatmentReport } from '../../server/contract/treatment.ts';
import { SelectRow, TickRow } from '../form/FormRow.tsx';
import { useForm } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { SOURCE_WORDS } from './line-steps.ts';

const PRESENCES = [
  { value: 'no', words: 'no' },
  { value: 'unknown', words: 'not known' },
  { value: 'yes', words: 'yes' },
] as const;
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
  const cloudy = CLOUDY.includes(hazard.turbidityNtu) ? CLOUDY : [hazard.turbidityNtu, ...CLOUDY];
  const presence = (label: string, key: 'salt' | 'chemicals') => (
    <SelectRow
      label={label}
      value={hazard[key]}
      choices={PRESENCES}
      onChoose={(chosen) => {
        const found = PRESENCES.find(({ value }) => value === chosen);
        if (found !== undefined) change({ [key]: found.value });
      }}
    />
  );
  return (
    <details>
      <summary>{t('Change what is expected of a source')}</summary>
      <SelectRow
        label={t('Source')}
        value={kind}
        choices={sources.map((source) => ({ value: source.kind, words: SOURCE_WORDS[source.kind] }))}
        onChoose={(chosen) => setKind(sources.find((source) => source.kind === chosen)?.kind ?? kind)}
      />
      <TickRow
        label={t('Germs that must be taken out')}
        checked={hazard.microbial}
        onTick={(microbial) => change({ microbial })}
      />
      {presence(t('Salt'), 'salt')}
      {presence(t('Chemicals'), 'chemicals')}
      <SelectRow
        label={t('Cloudiness')}
        value={String(hazard.turbidityNtu)}
        choices={cloudy.map((ntu) => ({ value: String(ntu), words: t`${ntu} NTU` }))}
        onChoose={(chosen) => change({ turbidityNtu: Number(chosen) })}
      />
    </details>
  );
}
