import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatFigure, formatLitres, formatTemperature, type UnitSystem } from '../units/units.ts';

/** How far each container may be filled while cool, and by how much a full one grows. Liquids only. */
export function FillingTable({ filling, units }: { filling: FuelUse['filling']; units: UnitSystem }) {
  if (filling.length === 0) return null;
  return (
    <table className="plain-table">
      <caption>{t('Filled cool, hot later')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Container')}</th>
          <th scope="col" className="end">
            {t('filled to')}
          </th>
          <th scope="col" className="end">
            {t('limit')}
          </th>
          <th scope="col" className="end">
            {t('grows, full')}
          </th>
        </tr>
      </thead>
      <tbody>
        {filling.map((one) => (
          <tr key={`${one.name} ${one.litres}`}>
            <th scope="row">
              {one.name} <span className="second">{formatLitres(one.litres, units)}</span>
            </th>
            <td className="end">{tx`${formatFigure(one.fillPercent, 1)} %`}</td>
            <td className="end">{tx`${formatFigure(Math.max(one.safePercent, one.boilingPercent), 1)} %${<span className="second">{tx`by expansion ${formatFigure(one.safePercent, 1)}, by boiling ${formatFigure(one.boilingPercent, 1)}`}</span>}`}</td>
            <td className="end">{formatLitres(one.growsL, units)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td
            colSpan={4}
            className="soft"
          >{tx`Limits for packagings of dangerous goods filled at ${formatTemperature(15, units)} (ADR 4.1.1.4): either rule may be kept to. The growth is from ${formatTemperature(15, units)} to ${formatTemperature(50, units)}.`}</td>
        </tr>
      </tfoot>
    </table>
  );
}
