import { type FormEvent, useId, useState } from 'react';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { WellDepth } from '../notes/findings.ts';
import { unitOf } from '../units/conversions.ts';
import { readTyped } from '../units/quantities.ts';
import { formatLength, type UnitSystem } from '../units/units.ts';

/** Metres, as the contract has it. */
const DEEPEST_M = 500;

interface DepthFormProps {
  units: UnitSystem;
  /** Metres that are noted; null for none. */
  noted: number | null;
  /** Whether something is noted of its salt already. */
  isTasted: boolean;
  onDepth: (depth: WellDepth) => void;
}

/** Takes how deep the water of a well lies, which tells how long rope and bucket take. */
export function DepthForm({ units, noted, isTasted, onDepth }: DepthFormProps) {
  const id = useId();
  const [wrong, setWrong] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const read = readTyped(String(form.get('depth') ?? ''), 'length', units);
    const taste = form.get('taste');
    if (!read.ok) return setWrong(read.why);
    if (read.value < 0 || read.value > DEEPEST_M) return setWrong(t`Needs a depth from 0 to ${DEEPEST_M} m.`);
    if (!isTasted && taste === '') return setWrong(t('Say how it tastes as well.'));
    setWrong(null);
    onDepth({ depthM: read.value, ...(taste !== '' && { saltOk: taste === 'fresh' }) });
  };
  return (
    <form className="actions" onSubmit={submit} noValidate>
      <label
        htmlFor={id}
      >{tx`Depth to its water (${unitOf('length', units)}${noted !== null && t`, noted as ${formatLength(noted, units)}`}):`}</label>
      <input id={id} name="depth" inputMode="decimal" autoComplete="off" aria-invalid={wrong !== null} />
      <select name="taste" aria-label={t('It tastes')}>
        <option value="">{isTasted ? t('salt as noted') : t('salty or not?')}</option>
        <option value="fresh">{t('not salty')}</option>
        <option value="salty">{t('salty')}</option>
      </select>
      <button type="submit">{t('Note the depth')}</button>
      {wrong !== null && (
        <span className="error" role="alert">
          {wrong}
        </span>
      )}
    </form>
  );
}
