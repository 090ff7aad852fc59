import type { ContainerEffect, MassReport } from '../../server/contract/vehicle.ts';
import { Why } from '../kit/Why.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import {
  figureSignedMass,
  formatLength,
  formatMass,
  massUnit,
  perLitreFigure,
  type UnitSystem,
  volumeUnit,
} from '../units/units.ts';
import { inUnits } from '../words/said.ts';
import type { Thing } from './scene.ts';

interface EffectTableProps {
  things: readonly Thing[];
  mass: MassReport;
  units: UnitSystem;
}

/** The containers by their numbers in the drawing, and what each does to the axles: so that places can be compared. */
export function EffectTable({ things, mass, units }: EffectTableProps) {
  const containers = things.flatMap((thing) => {
    const effect = mass.containers.find(({ path }) => path === thing.path);
    return effect === undefined ? [] : [{ thing, effect }];
  });
  if (containers.length === 0) return null;
  const unit = massUnit(units);
  return (
    <table className="plain-table">
      <caption>{tx`Containers, ${unit} ${<Why of={t('the figures of containers')}>{tx`When full: what it and its filling add to each axle. Each ${volumeUnit(units)}: what one more adds to the rear axle, by how far behind the front axle it sits. A smaller figure is the better place.`}</Why>}`}</caption>
      <thead>
        <tr>
          <th scope="col">{t('No., name')}</th>
          <th scope="col" className="end">
            {t('now')}
          </th>
          <th scope="col" className="end">
            {t('full: front')}
          </th>
          <th scope="col" className="end">
            {t('rear')}
          </th>
          <th scope="col" className="end">{tx`each ${volumeUnit(units)}: rear`}</th>
        </tr>
      </thead>
      <tbody>
        {containers.map(({ thing, effect }) => (
          <tr key={thing.path}>
            <th scope="row">
              <b>{thing.number}</b> {inUnits(units, effect.name, effect.nameParts)}
              <span className="second">{levelWords(thing)}</span>
            </th>
            <td className="end">{figureSignedMass(thing.kg, units).replace('+', '')}</td>
            <td className="end">{signed(effect.whenFull.frontKg, units)}</td>
            <td className="end">{signed(effect.whenFull.rearKg, units)}</td>
            <td className="end">{rearOfOne(effect, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** People, pets and gear by their numbers in the drawing. */
export function RiderTable({ things, units }: { things: readonly Thing[]; units: UnitSystem }) {
  const riders = things.filter(({ full }) => full === null);
  if (riders.length === 0) return null;
  return (
    <table className="plain-table">
      <caption>{t('People and gear')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('No., name')}</th>
          <th scope="col" className="end">
            {t('behind front axle')}
          </th>
          <th scope="col" className="end">
            {t('up')}
          </th>
          <th scope="col" className="end">
            {t('weighs')}
          </th>
        </tr>
      </thead>
      <tbody>
        {riders.map(({ path, number, name, place, kg }) => (
          <tr key={path}>
            <th scope="row">
              <b>{number}</b> {name}
            </th>
            <td className="end">
              {place === null ? t('not told') : formatLength(place.behindFrontAxleM, units)}
            </td>
            <td className="end">{place === null ? '–' : formatLength(place.heightM, units)}</td>
            <td className="end">{formatMass(kg, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function levelWords({ what, full, place }: Thing): string {
  const level = full === null || full === 0 ? 'empty' : t`${Math.round(full * 100)} % full`;
  return `${what}, ${level}${place === null ? t(', place not told') : ''}`;
}

const signed = (kg: number | null, units: UnitSystem): string =>
  kg === null ? '–' : figureSignedMass(kg, units);

const rearOfOne = ({ perLitre }: ContainerEffect, units: UnitSystem): string =>
  perLitre === null ? '–' : perLitreFigure(perLitre.rearKg, units);
