import type { Analysis } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { OneFailure, Plan } from '../../server/contract/plan.ts';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Rest } from '../state/use-plan.ts';
import { formatKm, formatLitres, formatMass, type UnitSystem } from '../units/units.ts';
import { cansFor, contentWord, placeWords } from '../words/plan-words.ts';
import { saidIn } from '../words/said.ts';
import { carryWords } from './PlanWords.tsx';
import { Sheet } from './Sheet.tsx';

interface OneFailureProps {
  plan: Plan;
  rest: Rest;
  analysis: Analysis;
  units: UnitSystem;
}

/** The plan that stands the failure of any one stop, beside the plain one. */
export function OneFailureWords({ plan, rest, analysis, units }: OneFailureProps) {
  const { oneFailure } = plan;
  return (
    <section aria-labelledby="plan-failure">
      <h3 id="plan-failure">{t('Safe against the failure of any one stop')}</h3>
      {oneFailure === null ? (
        <p className="soft">{rest === 'coming' ? t('Being reckoned…') : t('Not reckoned.')}</p>
      ) : oneFailure.status === 'out-of-time' ? (
        <p>{t('Not found in the time there was; whether there is such a plan is not known.')}</p>
      ) : oneFailure.status === 'none' ? (
        <>
          <p>{tx`There is no such plan: not with the cans there may be, and not with 6 more of each${oneFailure.spendsReserve ? t(', even with the reserve spent') : ''}.`}</p>
          <ul>
            {oneFailure.breaks.map((one) => (
              <li key={`${one.at.atKm} ${one.text}`}>{saidIn(units, one)}</li>
            ))}
          </ul>
        </>
      ) : (
        <Found {...{ oneFailure, analysis, units }} />
      )}
    </section>
  );
}

/** "6 more fuel cans", "1 fewer water can". */
const moreWords = (count: number, commodity: Commodity): string =>
  `${count === 0 ? t('no') : Math.abs(count)} ${count < 0 ? t('fewer') : t('more')} ${cansFor(commodity, Math.abs(count))}`;

function Found(props: { oneFailure: OneFailure; analysis: Analysis; units: UnitSystem }) {
  const { oneFailure, analysis, units } = props;
  const { kind } = analysis.rig.fuel;
  const { moreCans, moreKg, moreDrivingKm, spendsReserve, proven, sheet, totals } = oneFailure;
  return (
    <>
      <p>{tx`It takes ${<b>{moreWords(moreCans.fuel, 'fuel')}</b>} and ${<b>{moreWords(moreCans.water, 'water')}</b>} than the plan above, ${formatMass(Math.abs(moreKg), units)} ${moreKg < 0 ? t('less') : t('more')} when full and ${formatKm(Math.abs(moreDrivingKm), units)} ${moreDrivingKm < 0 ? t('less') : t('more')} off the route${proven ? '' : t(' (not proven to be the least)')}; ${spendsReserve ? t('the reserve may be spent on a failure') : t('the reserve is kept even then')}.`}</p>
      <ul>
        {oneFailure.carries.map((carry) => (
          <li key={`${carry.commodity} ${carry.from.id} ${carry.to.id} ${carry.fromKm}`}>
            {carryWords(carry, kind, units)}
          </li>
        ))}
        {oneFailure.nights.map((night) => (
          <li key={`${night.code} ${night.fromKm}`}>{saidIn(units, night)}</li>
        ))}
      </ul>
      <details>
        <summary>{t('The whole safe plan')}</summary>
        <Sheet
          caption={t('Safe plan, halt by halt')}
          halts={sheet}
          totals={totals}
          kind={kind}
          units={units}
        />
      </details>
      <details>
        <summary>{t('What is done when a stop fails')}</summary>
        <ul>
          {oneFailure.failures.map(({ commodity, at, next, to, arriveL }) => (
            <li
              key={`${commodity} ${at.id} ${at.atKm}`}
            >{tx`No ${contentWord(commodity, kind)} at ${placeWords(at, units)}: ${worded(next)} to ${placeWords(to, units)}, there with ${formatLitres(arriveL, units)}.`}</li>
          ))}
        </ul>
      </details>
    </>
  );
}
