import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { Why } from '../kit/Why.tsx';
import { distanceUnit, figureKm, formatFigure, type UnitSystem } from '../units/units.ts';

/** Use on each surface of the route as a multiple of the reader's own rate, and what physics would say beside it. */
export function SurfaceTable({ use, units }: { use: FuelUse; units: UnitSystem }) {
  const rows = use.surfaces.filter((row) => row.km > 0);
  const estimated = rows.some((row) => row.estimate !== null);
  return (
    <table className="plain-table">
      <caption>
        By surface, as a multiple of your own rate (observed on{' '}
        {use.observed.surface === 'unknown' ? 'a surface not told' : use.observed.surface})
      </caption>
      <thead>
        <tr>
          <th scope="col">Surface</th>
          <th scope="col" className="end">
            {distanceUnit(units)}
          </th>
          <th scope="col" className="end">
            winding
          </th>
          <th scope="col" className="end">
            factor
          </th>
          {estimated && (
            <th scope="col" className="end">
              physics
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.surface}>
            <th scope="row">
              {row.surface === 'unknown' ? 'not told' : row.surface}{' '}
              <Why of={`the factor on ${row.surface}`}>
                <p>
                  {formatFigure(row.tableFactor, 2)} times the use on sealed road:{' '}
                  {row.from === 'rig' ? 'your own factor' : 'our default'}.
                </p>
                <p>{row.trust}</p>
              </Why>
            </th>
            <td className="end">{figureKm(row.km, units)}</td>
            <td className="end">{formatFigure(row.allowancePercent, 0)}&nbsp;%</td>
            <td className="end">× {formatFigure(row.factor, 2)}</td>
            {estimated && (
              <td className="end">
                {row.estimate === null
                  ? 'none'
                  : `${formatFigure(row.estimate.low, 2)} to ${formatFigure(row.estimate.high, 2)}`}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
