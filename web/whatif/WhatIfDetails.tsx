import type { WhatIfRow } from '../../server/contract/whatif.ts';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAtKm, formatBeforeKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { countCans, marginWords, placeWords } from '../words/plan-words.ts';

/** One thing that goes wrong, in full. */
export function WhatIfDetails({ row, units }: { row: WhatIfRow; units: UnitSystem }) {
  const litres = (amount: number) => formatLitres(amount, units);
  return (
    <dl>
      <dt>{t('Best then')}</dt>
      <dd>{tx`${worded(row.next)} to ${placeWords(row.next === 'on' ? row.to : row.from, units)}`}</dd>
      <dt>{t('There with')}</dt>
      <dd>{row.arriveL < 0 ? t`nothing: ${litres(-row.arriveL)} lack` : litres(row.arriveL)}</dd>
      <dt>{t('Margin')}</dt>
      <dd>{marginWords(row.marginL, units)}</dd>
      {row.lostL !== null && (
        <>
          <dt>{t('Gone by it')}</dt>
          <dd>{litres(row.lostL)}</dd>
        </>
      )}
      {row.endsAtKm !== null && (
        <>
          <dt>{t('Nothing is left at')}</dt>
          <dd>{formatAtKm(row.endsAtKm, units)}</dd>
        </>
      )}
      {row.coverL > 0 && (
        <>
          <dt>{t('Would have kept the reserve')}</dt>
          <dd>{tx`${litres(row.coverL)} more, ${countCans(row.coverCans)}`}</dd>
        </>
      )}
      {row.backMarginL !== null && (
        <>
          <dt>{tx`Back to ${placeWords(row.from, units)}`}</dt>
          <dd>{marginWords(row.backMarginL, units)}</dd>
        </>
      )}
      {row.turnBackKm !== null && (
        <>
          <dt>{t('Turn back before')}</dt>
          <dd>{formatBeforeKm(row.turnBackKm, units)}</dd>
        </>
      )}
      {row.instead !== null && (
        <>
          <dt>{t('By way of')}</dt>
          <dd>
            {placeWords(row.instead.at, units)}: {marginWords(row.instead.marginL, units)}
          </dd>
        </>
      )}
    </dl>
  );
}
