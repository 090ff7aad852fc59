import { type FormEvent, useId, useState } from 'react';
import type { Passing } from '../../server/contract/analysis.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { readTyped } from '../units/quantities.ts';
import { type UnitSystem, volumeUnit } from '../units/units.ts';
import { FUEL_WORDS } from '../words/words.ts';
import type { CorrectedFacts } from './findings.ts';
import { toldIn, typedIn } from './form-values.ts';
import { SaidFields } from './SaidFields.tsx';
import './notes.css';
import { t } from '../language/t.ts';

const FUELS = Object.keys(FUEL_WORDS) as FuelKind[];

const GRADES = [
  { value: '', words: 'as the map says' },
  { value: 'drinking', words: 'fit to drink' },
  { value: 'treatable', words: 'to be treated' },
  { value: 'washing', words: 'for washing only' },
] as const;

interface CorrectionFormProps {
  passing: Passing;
  units: UnitSystem;
  onCorrected: (facts: CorrectedFacts) => void;
}

/** What the map has wrong of a supply: fuels or grade of water, hours, telephone, and what is to be had at most. */
export function CorrectionForm({ passing, units, onCorrected }: CorrectionFormProps) {
  const [wrong, setWrong] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const read = factsIn(new FormData(event.currentTarget), units);
    setWrong(read.ok ? null : read.why);
    if (!read.ok) return;
    onCorrected(read.facts);
    event.currentTarget.reset();
  };
  return (
    <details className="note-form">
      <summary>{t('Correct what the map says')}</summary>
      <form onSubmit={submit} noValidate>
        <div className="note-fields">
          {passing.commodity === 'fuel' ? <Fuels /> : <Grade />}
          <Field name="openingHours" words={t('Hours')} hint={t('like Mo-Sa 08:00-17:00')} />
          <Field name="litres" words={t`Gives at most (${volumeUnit(units)})`} />
          <Field name="price" words={t`Price (per ${volumeUnit(units)})`} />
        </div>
        <SaidFields withDays={false} />
        <p className="actions">
          <button type="submit">{t('Note the correction')}</button>
          {wrong !== null && (
            <span className="error" role="alert">
              {wrong}
            </span>
          )}
        </p>
      </form>
    </details>
  );
}

function Field({ name, words, hint }: { name: string; words: string; hint?: string }) {
  const id = useId();
  return (
    <p>
      <label htmlFor={id}>{words}</label>
      <input id={id} name={name} autoComplete="off" />
      {hint !== undefined && <span className="second">{hint}</span>}
    </p>
  );
}

const Fuels = () => (
  <fieldset>
    <legend>{t('It sells')}</legend>
    {FUELS.map((fuel) => (
      <label key={fuel}>
        <input type="checkbox" name="fuels" value={fuel} /> {FUEL_WORDS[fuel]}
      </label>
    ))}
  </fieldset>
);

function Grade() {
  const id = useId();
  return (
    <p>
      <label htmlFor={id}>{t('Its water is')}</label>
      <select id={id} name="grade">
        {GRADES.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </p>
  );
}

type Read = { ok: true; facts: CorrectedFacts } | { ok: false; why: string };

function factsIn(form: FormData, units: UnitSystem): Read {
  const amounts: { mostLitres?: number; pricePerLitre?: number } = {};
  const litres = typedIn(form, 'litres');
  if (litres !== undefined) {
    const read = readTyped(litres, 'volume', units);
    if (!read.ok) return { ok: false, why: read.why };
    if (read.value <= 0)
      return { ok: false, why: t('Needs more than nothing: say that it does not work instead.') };
    amounts.mostLitres = read.value;
  }
  const price = typedIn(form, 'price');
  if (price !== undefined) {
    const read = readTyped(price, 'count', 'metric');
    const perUnit = readTyped('1', 'volume', units);
    if (!read.ok) return { ok: false, why: read.why };
    if (!perUnit.ok || read.value < 0) return { ok: false, why: t('Needs a price of nothing or more.') };
    amounts.pricePerLitre = read.value / perUnit.value;
  }
  const grade = typedIn(form, 'grade') as CorrectedFacts['grade'];
  const fuels = FUELS.filter((fuel) => form.getAll('fuels').includes(fuel));
  const facts: CorrectedFacts = {
    ...toldIn(form, 'openingHours', 'by', 'phone', 'words'),
    ...(fuels.length === 0 ? {} : { fuels }),
    ...(grade === undefined ? {} : { grade }),
    ...amounts,
  };
  const { by: _by, words: _words, ...changes } = facts;
  return Object.keys(changes).length === 0
    ? { ok: false, why: t('Say what is to be corrected.') }
    : { ok: true, facts };
}
