import type { FuelUse } from '../../server/contract/fuel-use.ts';
import { formatAtKm, formatKm, formatLitres, type UnitSystem } from '../units/units.ts';

/** The third fluid: what the route takes of it, and the longest way between places that sell it. */
export function UreaWords({ urea, units }: { urea: NonNullable<FuelUse['urea']>; units: UnitSystem }) {
  const { needL, tankL, rangeKm, longestKm, shortL, points } = urea;
  return (
    <div>
      <b>Urea solution:</b> {formatLitres(needL, units)} over the route; the tank of{' '}
      {formatLitres(tankL, units)} goes {formatKm(rangeKm, units)}. Longest way without any:{' '}
      {formatKm(longestKm, units)}
      {shortL > 0 ? (
        <>
          , <strong className="error">{formatLitres(shortL, units)} too little</strong>
        </>
      ) : (
        ', which it covers'
      )}
      .
      {points.length > 0 && (
        <ul>
          {points.map((point) => (
            <li key={`${point.id} ${point.atKm}`}>
              {formatAtKm(point.atKm, units)}: {point.name ?? point.id}, {formatKm(point.detourKm, units)} off
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
