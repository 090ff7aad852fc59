import { type FormEvent, useId, useState } from 'react';
import type { OwnPoint } from '../../server/contract/notes.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { Fields } from '../form/Fields.tsx';
import { below, TRIP, useForm } from '../form/form-context.ts';
import { type FormItem, text } from '../form/items.ts';
import { readTyped } from '../units/quantities.ts';
import { type UnitSystem, volumeUnit } from '../units/units.ts';
import { FUEL_WORDS } from '../words/words.ts';
import { toldIn, typedIn } from './form-values.ts';
import { coordinatesText, withOwnPoint, withoutOwnPoint } from './own-point.ts';
import { SaidFields } from './SaidFields.tsx';
import './notes.css';
import { andAll } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface OwnPointsProps {
  /** Where the reader clicked last, on the map or the strip. */
  place: { lon: number; lat: number } | null;
  today: string;
}

/** Supplies that no map has: those noted, and a form for one more at a place clicked or typed. */
export function OwnPoints({ place, today }: OwnPointsProps) {
  const { said, units, onEdit } = useForm();
  const points = said.trip.ownPoints ?? [];
  return (
    <section aria-labelledby="own-points" className="own-points">
      <h3 id="own-points">{t('Points of your own')}</h3>
      {points.length > 0 && (
        <ul>
          {points.map((point, index) => (
            <li
              key={point.id}
            >{tx`${<b>{point.name ?? point.id}</b>}, ${point.at}: ${offerOf(point)}, noted ${point.on}${point.by !== undefined && `, ${point.by}`} ${(
              <button
                type="button"
                className="quiet"
                onClick={() => onEdit({ ...said, trip: withoutOwnPoint(said.trip, point.id) })}
              >{tx`Take ${point.name ?? point.id} out`}</button>
            )}${(
              <details className="note-form">
                <summary>{tx`Change ${point.name ?? point.id}`}</summary>
                <div className="form">
                  <Fields items={POINT} at={below(TRIP, `/ownPoints/${index}`)} />
                </div>
              </details>
            )}`}</li>
          ))}
        </ul>
      )}
      <NewPoint
        key={place === null ? 'typed' : coordinatesText(place)}
        {...{ place, units }}
        rigFuel={said.rig.fuel.kind}
        onAdd={(point) => onEdit({ ...said, trip: withOwnPoint(said.trip, { ...point, on: today }) })}
      />
    </section>
  );
}

const POINT: readonly FormItem[] = [
  text(t('Name'), '/name'),
  text(t('Where'), '/at'),
  text(t('There from'), '/from', { type: 'date' }),
  text('until', '/until', { type: 'date' }),
  text(t('Hours'), '/openingHours'),
  text(t('Who said it'), '/by'),
  text(t('Telephone'), '/phone'),
  text(t('What they said'), '/words'),
];

const GRADE_WORDS = {
  drinking: t('drinking water'),
  treatable: t('water to be treated'),
  washing: t('water for washing'),
};

const offerOf = ({ fuels = [], grade }: OwnPoint): string =>
  andAll([...fuels.map((fuel) => FUEL_WORDS[fuel]), ...(grade === undefined ? [] : [GRADE_WORDS[grade]])]);

interface NewPointProps {
  place: OwnPointsProps['place'];
  units: UnitSystem;
  rigFuel: FuelKind;
  onAdd: (point: Omit<OwnPoint, 'id' | 'on'>) => void;
}

function NewPoint({ place, units, rigFuel, onAdd }: NewPointProps) {
  const id = useId();
  const [wrong, setWrong] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const read = pointIn(new FormData(event.currentTarget), units);
    setWrong(read.ok ? null : read.why);
    if (!read.ok) return;
    onAdd(read.point);
    event.currentTarget.reset();
  };
  return (
    <details className="note-form new-point" open={place !== null}>
      <summary>{t('Add a point of your own')}</summary>
      <form onSubmit={submit} noValidate>
        <div className="note-fields">
          <p>
            <label htmlFor={`${id}-name`}>{t('Name')}</label>
            <input id={`${id}-name`} name="name" maxLength={120} autoComplete="off" />
          </p>
          <p>
            <label htmlFor={`${id}-at`}>{t('Where')}</label>
            <input
              id={`${id}-at`}
              name="at"
              maxLength={100}
              autoComplete="off"
              aria-describedby={`${id}-at-hint`}
              defaultValue={place === null ? '' : coordinatesText(place)}
            />
            <span id={`${id}-at-hint`} className="second">
              {t('co-ordinates in any usual form, or click on the map or the strip')}
            </span>
          </p>
          <p>
            <label htmlFor={`${id}-gives`}>{t('Gives')}</label>
            <select id={`${id}-gives`} name="gives" defaultValue={rigFuel}>
              <option value={rigFuel}>{FUEL_WORDS[rigFuel]}</option>
              {Object.entries(GRADE_WORDS).map(([grade, words]) => (
                <option key={grade} value={grade}>
                  {words}
                </option>
              ))}
            </select>
          </p>
          <p>
            <label htmlFor={`${id}-litres`}>{tx`At most (${volumeUnit(units)})`}</label>
            <input id={`${id}-litres`} name="litres" inputMode="decimal" autoComplete="off" />
          </p>
          <p>
            <label htmlFor={`${id}-from`}>{t('There from')}</label>
            <input id={`${id}-from`} name="from" type="date" />
          </p>
          <p>
            <label htmlFor={`${id}-until`}>{t('until')}</label>
            <input id={`${id}-until`} name="until" type="date" />
          </p>
        </div>
        <SaidFields withDays={false} />
        <p className="actions">
          <button type="submit">{t('Add the point')}</button>
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

type Read = { ok: true; point: Omit<OwnPoint, 'id' | 'on'> } | { ok: false; why: string };

function pointIn(form: FormData, units: UnitSystem): Read {
  const at = typedIn(form, 'at');
  if (at === undefined) return { ok: false, why: t('Say where it is, or click on the map or the strip.') };
  const gives = typedIn(form, 'gives') ?? '';
  const isWater = gives in GRADE_WORDS;
  const litres = typedIn(form, 'litres');
  const read = litres === undefined ? null : readTyped(litres, 'volume', units);
  if (read?.ok === false) return { ok: false, why: read.why };
  if (read?.ok === true && read.value <= 0)
    return { ok: false, why: t('Needs more than nothing, or no figure.') };
  return {
    ok: true,
    point: {
      at,
      ...toldIn(form, 'name', 'from', 'until', 'by', 'phone', 'words'),
      ...(isWater ? { grade: gives as keyof typeof GRADE_WORDS } : { fuels: [gives as FuelKind] }),
      ...(read === null ? {} : { litres: { [isWater ? 'water' : 'fuel']: read.value } }),
    },
  };
}
