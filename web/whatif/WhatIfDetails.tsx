import type { WhatIfRow } from '../../server/contract/whatif.ts';
import { formatAtKm, formatBeforeKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { countCans, marginWords, placeWords } from '../words/plan-words.ts';

/** One thing that goes wrong, in full. */
export function WhatIfDetails({ row, units }: { row: WhatIfRow; units: UnitSystem }) {
  const litres = (amount: number) => formatLitres(amount, units);
  return (
    <dl>
      <dt>Best then</dt>
      <dd>
        {row.next} to {placeWords(row.next === 'on' ? row.to : row.from, units)}
      </dd>
      <dt>There with</dt>
      <dd>{row.arriveL < 0 ? `nothing: ${litres(-row.arriveL)} lack` : litres(row.arriveL)}</dd>
      <dt>Margin</dt>
      <dd>{marginWords(row.marginL, units)}</dd>
      {row.lostL !== null && (
        <>
          <dt>Gone by it</dt>
          <dd>{litres(row.lostL)}</dd>
        </>
      )}
      {row.endsAtKm !== null && (
        <>
          <dt>Nothing is left at</dt>
          <dd>{formatAtKm(row.endsAtKm, units)}</dd>
        </>
      )}
      {row.coverL > 0 && (
        <>
          <dt>Would have kept the reserve</dt>
          <dd>
            {litres(row.coverL)} more, {countCans(row.coverCans)}
          </dd>
        </>
      )}
      {row.backMarginL !== null && (
        <>
          <dt>Back to {placeWords(row.from, units)}</dt>
          <dd>{marginWords(row.backMarginL, units)}</dd>
        </>
      )}
      {row.turnBackKm !== null && (
        <>
          <dt>Turn back before</dt>
          <dd>{formatBeforeKm(row.turnBackKm, units)}</dd>
        </>
      )}
      {row.instead !== null && (
        <>
          <dt>By way of</dt>
          <dd>
            {placeWords(row.instead.at, units)}: {marginWords(row.instead.marginL, units)}
          </dd>
        </>
      )}
    </dl>
  );
}
