import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { Why } from '../kit/Why.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { distanceUnit, figureKm, formatFigure, type UnitSystem } from '../units/units.ts';

/** Use on each surface of the route as a multiple of the reader's own rate, and what physics would say beside it. */
export function SurfaceTable({ use, units }: { use: FuelUse; units: UnitSystem }) {
  const rows = use.surfaces.filter((row) => row.km > 0);
  const estimated = rows.some((row) => row.estimate !== null);
  return (
    <table className="plain-table">
      <caption>{tx`By surface, as a multiple of your own rate (observed on ${use.observed.surface === 'unknown' ? t('a surface not told') : use.observed.surface})`}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Surface')}</th>
          <th scope="col" className="end">
            {distanceUnit(units)}
          </th>
          <th scope="col" className="end">
            {t('winding')}
          </th>
          <th scope="col" className="end">
            {t('factor')}
          </th>
          {estimated && (
            <th scope="col" className="end">
              {t('physics')}
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.surface}>
            <th scope="row">
              {row.surface === 'unknown' ? t('not told') : row.surface}{' '}
              <Why of={t`the factor on ${row.surface}`}>
                <p>{tx`${formatFigure(row.tableFactor, 2)} times the use on sealed road: ${row.from === 'rig' ? t('your own factor') : t('our default')}.`}</p>
                <p>{row.trust}</p>
              </Why>
            </th>
            <td className="end">{figureKm(row.km, units)}</td>
            <td className="end">{tx`${formatFigure(row.allowancePercent, 0)} %`}</td>
            <td className="end">× {formatFigure(row.factor, 2)}</td>
            {estimated && (
              <td className="end">
                {row.estimate === null
                  ? t('none')
                  : t`${formatFigure(row.estimate.low, 2)} to ${formatFigure(row.estimate.high, 2)}`}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
