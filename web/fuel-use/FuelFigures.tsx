import type { FuelRange, FuelUse } from '../../server/contract/fuel-use.ts';
import { Terms } from '../kit/Terms.tsx';
import { Why } from '../kit/Why.tsx';
import { unitOf } from '../units/conversions.ts';
import { fieldText } from '../units/quantities.ts';
import {
  distanceUnit,
  figureKm,
  formatAs,
  formatFigure,
  formatHeight,
  formatLitres,
  formatMass,
  type UnitSystem,
} from '../units/units.ts';
import { FillingTable } from './FillingTable.tsx';
import { SurfaceTable } from './SurfaceTable.tsx';
import { UreaWords } from './UreaWords.tsx';
import '../table/plain-table.css';
import './fuel-use.css';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

const ENDS = ['low', 'typical', 'high'] as const;
type Ranges = FuelUse['range'];

/** Range, the litres of the whole route, and everything that makes them more or less. */
export function FuelFigures({ use, units }: { use: FuelUse; units: UnitSystem }) {
  return (
    <div className="fuel-figures">
      <RangeTable caption={t('Range at your own rate')} ranges={use.range} units={units} />
      {use.model === 'full' ? (
        <RangeTable
          caption={t('Range on this route, surfaces, climb and hours included')}
          ranges={use.onRoute}
          units={units}
        />
      ) : (
        <p className="soft">
          {t(
            'One rate all the way. Tell what it was observed on, mark surfaces or add hours standing, and the parts are reckoned one by one.',
          )}
        </p>
      )}
      <div>{tx`${<b>{t('The whole route takes')}</b>} ${ENDS.map((end) => formatLitres(use.routeL[end], units)).join(', ')} (low, typical, high use). ${(
        <Why of={t('the litres of the whole route')}>
          <Terms terms={use.terms} units={units} />
        </Why>
      )}`}</div>
      <SurfaceTable use={use} units={units} />
      <LoadWords use={use} units={units} />
      <ClimbWords climb={use.climb} units={units} />
      <FillingTable filling={use.filling} units={units} />
      {use.urea !== null && <UreaWords urea={use.urea} units={units} />}
      <div>
        <b>{use.fuel.label}:</b>{' '}
        {formatAs(
          'density',
          use.fuel.densityKgPerM3.typical,
          units,
          unitOf('density', units) === 'kg/m³' ? 0 : 2,
        )}
        , {formatAs('energy', use.fuel.energyMJPerL.typical, units, 1)}{' '}
        <Why of={t('density and energy')}>{use.fuel.source}</Why>
      </div>
    </div>
  );
}

function RangeTable(props: { caption: string; ranges: Ranges; units: UnitSystem }) {
  const { caption, ranges, units } = props;
  const rows: { name: string; figure: (range: FuelRange) => string }[] = [
    {
      name: t`use, ${unitOf('fuelUse', units)}`,
      figure: ({ litresPer100Km }) => formatFigure(Number(fieldText(litresPer100Km, 'fuelUse', units)), 1),
    },
    {
      name: t`to the last drop, ${distanceUnit(units)}`,
      figure: ({ beforeKm }) => figureKm(beforeKm, units),
    },
    {
      name: t`to the reserve, ${distanceUnit(units)}`,
      figure: ({ afterKm }) => figureKm(afterKm, units),
    },
  ];
  return (
    <table className="plain-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{t('A full load')}</th>
          {ENDS.map((end) => (
            <th scope="col" className="end" key={end}>{tx`${worded(end)} use`}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, figure }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {ENDS.map((end) => (
              <td className="end" key={end}>
                {figure(ranges[end])}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function LoadWords({ use, units }: { use: FuelUse; units: UnitSystem }) {
  const { load } = use;
  if (load === null) {
    return (
      <p className="soft">
        {t(
          'Load is not reckoned: tell the mass at which your rate was observed, and what the vehicle weighs.',
        )}
      </p>
    );
  }
  return (
    <p>{tx`${<b>{t('Load:')}</b>} ${formatMass(load.massKg, units)} against ${formatMass(load.observedKg, units)} when the rate was observed, ${formatFigure(load.percentPer100Kg, 2)} % for each ${formatMass(100, units)}: × ${formatFigure(load.factor, 3)}.`}</p>
  );
}

function ClimbWords({ climb, units }: { climb: FuelUse['climb']; units: UnitSystem }) {
  if (climb === null) return <p className="soft">{t('Climb is not reckoned: the route has no heights.')}</p>;
  return (
    <div>{tx`${<b>{t('Climb:')}</b>} ${formatHeight(climb.upM, units)} up, ${formatHeight(climb.downM, units)} down: ${
      climb.litres === null
        ? t('not reckoned, as the mass is not told')
        : t`${formatLitres(climb.litres, units)} more`
    }. ${<Why of={t('the climb')}>{tx`Heights that change by less than ${formatHeight(climb.thresholdM, units)} are taken for noise: the track as recorded climbs ${formatHeight(climb.rawUpM, units)}. Of the fuel's energy ${formatFigure(climb.efficiency * 100, 0)} % lifts; of a descent's ${formatFigure(climb.giveBack * 100, 0)} % spares fuel.`}</Why>}`}</div>
  );
}
