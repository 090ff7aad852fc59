import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { figureLitres, formatAtKm, formatBeforeKm, type UnitSystem, volumeUnit } from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { commodityWords, edgeName } from '../words/words.ts';
import '../table/plain-table.css';

/** From one supply that is used to the next: what it leaves with, what it needs, what is left. */
export function Legs({ plan, analysis, units }: { plan: Plan; analysis: Analysis; units: UnitSystem }) {
  const volume = volumeUnit(units);
  return (
    <section aria-label="Leg by leg">
      {(['fuel', 'water'] as const).map((commodity) => (
        <table className="plain-table" key={commodity}>
          <caption>Leg by leg, {commodityWords(commodity, analysis.rig.fuel.kind)}</caption>
          <thead>
            <tr>
              <th scope="col">To</th>
              <th scope="col" className="end">
                leaves&nbsp;{volume}
              </th>
              <th scope="col" className="end">
                needs&nbsp;{volume}
              </th>
              <th scope="col" className="end">
                left&nbsp;{volume}
              </th>
              <th scope="col" className="end">
                Verdict
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.legs[commodity].map((leg) => (
              <tr key={`${leg.from.atKm} ${leg.to.atKm}`}>
                <th scope="row">
                  {edgeName(leg.to)}{' '}
                  <span className="second">
                    {formatAtKm(leg.to.atKm, units)}, from {edgeName(leg.from)}
                  </span>
                </th>
                <td className="end">
                  {figureLitres(leg.departL, units)}
                  {leg.cans > 0 && <span className="second">with {countCans(leg.cans)}</span>}
                </td>
                <td className="end">{figureLitres(leg.needL, units)}</td>
                <td className="end">
                  {figureLitres(leg.arriveL, units)}
                  <span className="second">reserve {figureLitres(leg.reserveL, units)}</span>
                </td>
                <td className="end">
                  <VerdictMark verdict={leg.verdict} />
                  {leg.turnBackKm !== null && (
                    <span className="second">back before {formatBeforeKm(leg.turnBackKm, units)}</span>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}
