import { type FormEvent, useId, useState } from 'react';
import { t } from '../language/t.ts';
import type { SaltMeasure } from '../notes/findings.ts';
import { readTyped } from '../units/quantities.ts';

/** What instruments show; the same in all systems of units. */
const SCALES: readonly { key: SaltMeasure['key']; words: string; most: number }[] = [
  { key: 'tdsMgPerLitre', words: t('mg/l of salts'), most: 300_000 },
  { key: 'conductivityMicroSPerCm', words: t('µS/cm'), most: 400_000 },
];

/** Takes what an instrument showed of the salt in a water. */
export function SaltForm({ onMeasured }: { onMeasured: (measure: SaltMeasure) => void }) {
  const id = useId();
  const [wrong, setWrong] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const scale = SCALES.find(({ key }) => key === form.get('scale'));
    const read = readTyped(String(form.get('salt') ?? ''), 'count', 'metric');
    if (scale === undefined) return;
    const fault = !read.ok
      ? read.why
      : read.value < 0 || read.value > scale.most
        ? t`Needs a number from 0 to ${scale.most}.`
        : null;
    setWrong(fault);
    if (read.ok && fault === null) onMeasured({ key: scale.key, value: read.value });
  };
  return (
    <form className="actions" onSubmit={submit} noValidate>
      <label htmlFor={id}>{t('Measured today:')}</label>
      <input id={id} name="salt" inputMode="decimal" autoComplete="off" aria-invalid={wrong !== null} />
      <select name="scale" aria-label={t('Shown in')}>
        {SCALES.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      <button type="submit">{t('Note the salt')}</button>
      {wrong !== null && (
        <span className="error" role="alert">
          {wrong}
        </span>
      )}
    </form>
  );
}
