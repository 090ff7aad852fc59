import type { FuelLimit } from '../../server/contract/vehicle.ts';
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
      <summary>
        Limits on carried fuel, examples:{' '}
        {over === 0 ? 'none passed' : <b>{`${over} of ${limits.length} passed`}</b>}
      </summary>
      <p className="says">The rules of the place come first; these show how they can be.</p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">Rule</th>
            <th scope="col" className="end">
              carried
            </th>
            <th scope="col" className="end">
              limit
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
                {passed && <span className="only-read"> over</span>}
              </td>
              <td className="end">{amount(limit, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
