import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { PRINTED } from '../../words/printed.ts';
import type { ExportPack } from './pack.ts';

const WORDS = PRINTED.export;

/** What every file to take along says: that it is an aid, on invented land that too, and whose data it stands on. */
export function creditOf({ planned: { analysis, plan } }: ExportPack): string {
  const names = [
    ...new Set(
      analysis.extracts.map(({ source, attribution, licence }) =>
        [attribution ?? source, licence].filter((text) => text !== null).join(', '),
      ),
    ),
  ];
  return [
    WORDS.standing,
    ...(plan.status === 'found' ? [] : [WORDS.noPlan[plan.status]]),
    ...(COMMODITIES.some((each) => plan.legs[each].some(({ verdict }) => verdict === 'unknown'))
      ? [WORDS.notAllKnown]
      : []),
    ...analysis.noData.map(WORDS.noData),
    ...(names.length === 0 ? [] : [WORDS.credit(names.join('; '))]),
  ].join(' ');
}
