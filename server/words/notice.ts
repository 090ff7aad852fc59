import { NOTICES } from './de/notices.ts';
import { type Language, language } from './parts/language.ts';

const TEXTS: Readonly<Record<Language, Readonly<Record<string, string>>>> = { en: {}, de: NOTICES };

/** What a trip on an invented land says of it, in the language that is spoken; one that nobody knows as it is kept. */
export const noticeWords = <Notice extends string | null>(notice: Notice): Notice | string =>
  notice === null ? notice : (TEXTS[language()][notice] ?? notice);
