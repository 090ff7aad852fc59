import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { figureLitres, formatAtKm, formatBeforeKm, type UnitSystem, volumeUnit } from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { commodityWords, edgeName } from '../words/words.ts';
import '../table/plain-table.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

/** From one supply that is used to the next: what it leaves with, what it needs, what is left. */
export function Legs({ plan, analysis, units }: { plan: Plan; analysis: Analysis; units: UnitSystem }) {
  const volume = volumeUnit(units);
  return (
    <section aria-label={t('Leg by leg')}>
      {(['fuel', 'water'] as const).map((commodity) => (
        <table className="plain-table" key={commodity}>
          <caption>{tx`Leg by leg, ${commodityWords(commodity, analysis.rig.fuel.kind)}`}</caption>
          <thead>
            <tr>
              <th scope="col">{t('To')}</th>
              <th scope="col" className="end">{tx`leaves ${volume}`}</th>
              <th scope="col" className="end">{tx`needs ${volume}`}</th>
              <th scope="col" className="end">{tx`left ${volume}`}</th>
              <th scope="col" className="end">
                {t('Verdict')}
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.legs[commodity].map((leg) => (
              <tr key={`${leg.from.atKm} ${leg.to.atKm}`}>
                <th scope="row">
                  {edgeName(leg.to)}{' '}
                  <span className="second">{tx`${formatAtKm(leg.to.atKm, units)}, from ${edgeName(leg.from)}`}</span>
                </th>
                <td className="end">
                  {figureLitres(leg.departL, units)}
                  {leg.cans > 0 && <span className="second">{tx`with ${countCans(leg.cans)}`}</span>}
                </td>
                <td className="end">{figureLitres(leg.needL, units)}</td>
                <td className="end">
                  {figureLitres(leg.arriveL, units)}
                  <span className="second">{tx`reserve ${figureLitres(leg.reserveL, units)}`}</span>
                </td>
                <td className="end">
                  <VerdictMark verdict={leg.verdict} />
                  {leg.turnBackKm !== null && (
                    <span className="second">{tx`back before ${formatBeforeKm(leg.turnBackKm, units)}`}</span>
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
