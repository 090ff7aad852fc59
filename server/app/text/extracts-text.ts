import type { Extract } from '../../contract/analysis.ts';
import { plain } from './lines/plain.ts';

/** One line for each extract: of when it is, whom to credit, under what terms. */
export const extractLines = (extracts: readonly Extract[]): string[] =>
  extracts.map(
    (extract) =>
      `Map data: ${plain(fileName(extract.source))}, ${dateText(extract)}. ${creditText(extract)}.`,
  );

/** Folders are the user's own business; --json has the file as it was named. */
const fileName = (source: string): string => source.split(/[\\/]/).at(-1) ?? source;

function dateText({ asOf, asOfBy, newestEdit }: Extract): string {
  if (asOf !== null) return `as of ${asOf.slice(0, 10)}${asOfBy === 'user' ? ' by your word' : ''}`;
  return newestEdit === null
    ? 'of unknown date'
    : `of unknown date, newest edit among its supplies near the route ${plain(newestEdit.slice(0, 10))}`;
}

function creditText({ attribution, licence }: Extract): string {
  if (attribution === null && licence === null) return 'It does not say whose data it is';
  const credit = [attribution, licence].flatMap((text) => (text === null ? [] : [plain(text)])).join(', ');
  return credit.endsWith('.') ? credit.slice(0, -1) : credit;
}
