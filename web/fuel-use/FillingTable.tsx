import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { formatFigure, formatLitres, formatTemperature, type UnitSystem } from '../units/units.ts';

/** How far each container may be filled while cool, and by how much a full one grows. Liquids only. */
export function FillingTable({ filling, units }: { filling: FuelUse['filling']; units: UnitSystem }) {
  if (filling.length === 0) return null;
  return (
    <table className="plain-table">
      <caption>Filled cool, hot later</caption>
      <thead>
        <tr>
          <th scope="col">Container</th>
          <th scope="col" className="end">
            filled to
          </th>
          <th scope="col" className="end">
            limit
          </th>
          <th scope="col" className="end">
            grows, full
          </th>
        </tr>
      </thead>
      <tbody>
        {filling.map((one) => (
          <tr key={`${one.name} ${one.litres}`}>
            <th scope="row">
              {one.name} <span className="second">{formatLitres(one.litres, units)}</span>
            </th>
            <td className="end">{formatFigure(one.fillPercent, 1)}&nbsp;%</td>
            <td className="end">
              {formatFigure(Math.max(one.safePercent, one.boilingPercent), 1)}&nbsp;%
              <span className="second">
                by expansion {formatFigure(one.safePercent, 1)}, by boiling{' '}
                {formatFigure(one.boilingPercent, 1)}
              </span>
            </td>
            <td className="end">{formatLitres(one.growsL, units)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={4} className="soft">
            Limits for packagings of dangerous goods filled at {formatTemperature(15, units)} (ADR 4.1.1.4):
            either rule may be kept to. The growth is from {formatTemperature(15, units)} to{' '}
            {formatTemperature(50, units)}.
          </td>
        </tr>
      </tfoot>
    </table>
  );
}
