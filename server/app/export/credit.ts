import { PRINTED } from '../../words/printed.ts';
import type { ExportPack } from './marks.ts';

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
    ...(plan.status === 'found' ? [] : [WORDS.noPlan]),
    ...(names.length === 0 ? [] : [WORDS.credit(names.join('; '))]),
  ].join(' ');
}
