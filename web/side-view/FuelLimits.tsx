import type { FuelLimit } from '../../server/contract/vehicle.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatLitres, formatMass, type UnitSystem } from '../units/units.ts';
import { inUnits } from '../words/said.ts';

/** What some countries let a vehicle carry: examples, folded away; how many are passed stands on the outside. */
export function FuelLimits({ limits, units }: { limits: readonly FuelLimit[]; units: UnitSystem }) {
  if (limits.length === 0) return null;
  const over = limits.filter((limit) => limit.over).length;
  const amount = (value: number, unit: FuelLimit['unit']) =>
    unit === 'l' ? formatLitres(value, units) : formatMass(value, units);
  return (
    <details className="fuel-limits">
      <summary>{tx`Limits on carried fuel, examples: ${over === 0 ? t('none passed') : <b>{t`${over} of ${limits.length} passed`}</b>}`}</summary>
      <p className="says">{t('The rules of the place come first; these show how they can be.')}</p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{t('Rule')}</th>
            <th scope="col" className="end">
              {t('carried')}
            </th>
            <th scope="col" className="end">
              {t('limit')}
            </th>
          </tr>
        </thead>
        <tbody>
          {limits.map(({ code, text, parts, carried, limit, unit, over: passed, source }) => (
            <tr key={code}>
              <th scope="row">
                {inUnits(units, text, parts)}
                <span className="second">{source}</span>
              </th>
              <td className={passed ? 'end over' : 'end'}>
                {amount(carried, unit)}
                {passed && <span className="only-read">{t(' over')}</span>}
              </td>
              <td className="end">{amount(limit, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
