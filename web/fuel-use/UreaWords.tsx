import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAtKm, formatKm, formatLitres, type UnitSystem } from '../units/units.ts';

/** The third fluid: what the route takes of it, and the longest way between places that sell it. */
export function UreaWords({ urea, units }: { urea: NonNullable<FuelUse['urea']>; units: UnitSystem }) {
  const { needL, tankL, rangeKm, longestKm, shortL, points } = urea;
  return (
    <div>{tx`${<b>{t('Urea solution:')}</b>} ${formatLitres(needL, units)} over the route; the tank of ${formatLitres(tankL, units)} goes ${formatKm(rangeKm, units)}. Longest way without any: ${formatKm(longestKm, units)}${
      shortL > 0 ? (
        <>
          , <strong className="error">{tx`${formatLitres(shortL, units)} too little`}</strong>
        </>
      ) : (
        t(', which it covers')
      )
    }.${
      points.length > 0 && (
        <ul>
          {points.map((point) => (
            <li
              key={`${point.id} ${point.atKm}`}
            >{tx`${formatAtKm(point.atKm, units)}: ${point.name ?? point.id}, ${formatKm(point.detourKm, units)} off`}</li>
          ))}
        </ul>
      )
    }`}</div>
  );
}
