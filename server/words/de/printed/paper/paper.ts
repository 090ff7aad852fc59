import type { PaperWords } from '../../../en/printed/paper/paper.ts';
import { ANSWER_WORDS } from './answer.ts';
import { HOME_WORDS } from './home.ts';
import { PAGE_WORDS } from './page.ts';
import { PICTURE_WORDS } from './pictures.ts';
import { TABLE_WORDS } from './tables.ts';

/** Words of the sheet as it is printed. Figures come in as they are set. */
export const PAPER_WORDS: PaperWords = {
  page: PAGE_WORDS,
  answer: ANSWER_WORDS,
  pictures: PICTURE_WORDS,
  tables: TABLE_WORDS,
  home: HOME_WORDS,
};
