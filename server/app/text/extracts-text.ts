import type { Extract } from '../../contract/analysis.ts';
import { noticeWords } from '../../words/notice.ts';
import { printed } from '../../words/printed.ts';
import { plain } from './lines/plain.ts';

const words = () => printed().extracts;

/** One line for each extract: of when it is, whom to credit, under what terms. */
export const extractLines = (extracts: readonly Extract[]): string[] =>
  extracts.map((extract) =>
    words().mapData(plain(fileName(extract.source)), dateText(extract), creditText(extract)),
  );

/** Folders are the user's own business; --json has the file as it was named. */
const fileName = (source: string): string => source.split(/[\\/]/).at(-1) ?? source;

function dateText({ asOf, asOfBy, newestEdit }: Extract): string {
  if (asOf !== null) return words().asOf(asOf.slice(0, 10), asOfBy === 'user');
  return newestEdit === null ? words().unknownDate : words().newestEdit(plain(newestEdit.slice(0, 10)));
}

function creditText({ attribution, licence }: Extract): string {
  if (attribution === null && licence === null) return words().uncredited;
  const credit = [attribution, licence]
    .flatMap((text) => (text === null ? [] : [plain(noticeWords(text))]))
    .join(', ');
  return credit.endsWith('.') ? credit.slice(0, -1) : credit;
}
