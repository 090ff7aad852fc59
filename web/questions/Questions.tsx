import { type FormEvent, useId, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { type QuantityKind, unitOf } from '../units/conversions.ts';
import { readTyped } from '../units/quantities.ts';
import type { UnitSystem } from '../units/units.ts';
import { capitalised, FUEL_WORDS } from '../words/words.ts';
import { AgeQuestion } from './AgeQuestion.tsx';
import { CutQuestion } from './CutQuestion.tsx';

interface QuestionsProps {
  analysis: Analysis;
  units: UnitSystem;
  onAnswer: (change: Pick<TripFile, 'aboard' | 'onward' | 'extracts'>) => void;
}

type Aboard = NonNullable<TripFile['aboard']>;

const FUEL_WAYS = [
  { key: 'fuelLitres', words: 'this much that can be used', kind: 'volume' },
  { key: 'fuelKmSinceFill', words: 'driven since full', kind: 'distance' },
] as const;
const WATER_WAYS = [
  { key: 'waterLitres', words: 'this much that can be used', kind: 'volume' },
  { key: 'waterDaysSinceFill', words: 'days since full', kind: 'days' },
] as const;

/** What no file tells: whether a map that looks cut off is whole, and how old one is that does not say. Each is asked until it is answered; the answer stands in the trip's form. */
export function Questions({ analysis, units, onAnswer }: QuestionsProps) {
  const asks = (code: string) => analysis.cautions.some((caution) => caution.code === code);
  const start = asks('start-assumed-full');
  const onward = asks('onward-unknown');
  const age = asks('age-unknown');
  const cut = analysis.extracts.some(({ maybeCut }) => maybeCut === true);
  if (!start && !onward && !age && !cut) return null;
  return (
    <section className="questions" aria-label={t('What the files do not tell')}>
      {cut && <CutQuestion {...{ analysis, onAnswer }} />}
      {age && <AgeQuestion {...{ analysis, onAnswer }} />}
      {start && <StartQuestion {...{ analysis, units, onAnswer }} />}
      {onward && <OnwardQuestion {...{ analysis, units, onAnswer }} />}
    </section>
  );
}

function StartQuestion({ analysis, units, onAnswer }: QuestionsProps) {
  const [wrong, setWrong] = useState<string | null>(null);
  const fuel = FUEL_WORDS[analysis.rig.fuel.kind];
  const answer = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const aboard: Aboard = {};
    for (const [commodity, ways] of [
      ['fuel', FUEL_WAYS],
      ['water', WATER_WAYS],
    ] as const) {
      const way = ways.find((each) => each.key === form.get(`${commodity}-way`));
      if (way === undefined) {
        Object.assign(aboard, commodity === 'fuel' ? { fuelKmSinceFill: 0 } : { waterDaysSinceFill: 0 });
        continue;
      }
      const read = readTyped(String(form.get(`${commodity}-amount`) ?? ''), way.kind, units);
      if (!read.ok) {
        setWrong(`${commodity === 'fuel' ? fuel : 'water'}: ${read.why}`);
        return;
      }
      aboard[way.key] = read.value;
    }
    setWrong(null);
    onAnswer({ aboard });
  };
  return (
    <form onSubmit={answer} noValidate>
      <h2>{t('What is aboard at the start?')}</h2>
      <p className="only-read">{t('Until you say, the tanks are taken as full.')}</p>
      <div className="inputs">
        <AboardInput commodity="fuel" label={fuel} ways={FUEL_WAYS} units={units} />
        <AboardInput commodity="water" label={t('Water')} ways={WATER_WAYS} units={units} />
        <button type="submit">{t('Use this')}</button>
      </div>
      {wrong !== null && (
        <p className="error" role="alert">
          {wrong}
        </p>
      )}
    </form>
  );
}

function AboardInput(props: {
  commodity: 'fuel' | 'water';
  label: string;
  ways: readonly { key: string; words: string; kind: QuantityKind }[];
  units: UnitSystem;
}) {
  const [chosen, setChosen] = useState('');
  const id = useId();
  const way = props.ways.find((each) => each.key === chosen);
  return (
    <span className="aboard">
      <label htmlFor={id}>{capitalised(props.label)}</label>{' '}
      <select
        id={id}
        name={`${props.commodity}-way`}
        value={chosen}
        onChange={(event) => setChosen(event.target.value)}
      >
        <option value="">{t('all full')}</option>
        {props.ways.map((each) => (
          <option key={each.key} value={each.key}>
            {each.words}
          </option>
        ))}
      </select>
      {way !== undefined && (
        <>
          <input
            name={`${props.commodity}-amount`}
            inputMode="decimal"
            autoComplete="off"
            aria-label={`${props.label}: ${way.words}, ${unitOf(way.kind, props.units)}`}
          />{' '}
          {unitOf(way.kind, props.units)}
        </>
      )}
    </span>
  );
}

function OnwardQuestion({ units, onAnswer }: QuestionsProps) {
  const [wrong, setWrong] = useState<string | null>(null);
  const kmId = useId();
  const hoursId = useId();
  const answer = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const km = readTyped(String(form.get('km') ?? ''), 'distance', units);
    const typedHours = String(form.get('hours') ?? '');
    const hours = readTyped(typedHours.trim() === '' ? '0' : typedHours, 'hours', units);
    if (!km.ok || !hours.ok) {
      setWrong(!km.ok ? t`Distance: ${km.why}` : !hours.ok ? t`Hours: ${hours.why}` : null);
      return;
    }
    setWrong(null);
    onAnswer({ onward: typedHours.trim() === '' ? { km: km.value } : { km: km.value, hours: hours.value } });
  };
  return (
    <form onSubmit={answer} noValidate>
      <h2>{t('How far is it from the end to the next supply?')}</h2>
      <p className="only-read">{t('Until you say, the last stretch is at best unknown.')}</p>
      <div className="inputs">
        <span>
          <label className="only-read" htmlFor={kmId}>
            {t('Distance')}
          </label>
          <input id={kmId} name="km" inputMode="decimal" autoComplete="off" /> {unitOf('distance', units)}
        </span>
        <span>{tx`${<label htmlFor={hoursId}>{t('driving')}</label>} ${<input id={hoursId} name="hours" inputMode="decimal" autoComplete="off" />} hours`}</span>
        <button type="submit">{t('Use this')}</button>
        <button type="button" onClick={() => onAnswer({ onward: { km: 0, hours: 0 } })}>
          {t('It is right there')}
        </button>
      </div>
      {wrong !== null && (
        <p className="error" role="alert">
          {wrong}
        </p>
      )}
    </form>
  );
}
