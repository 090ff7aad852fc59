import { LANGUAGES, type Language } from '../../server/words/parts/language.ts';

/** Where the browser keeps what was chosen. */
const KEPT = 'drystage-language';

/** What a language calls itself. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  de: 'Deutsch',
};

/** The locale whose figures and days a language has. English has the day before the month, as the texts do. */
const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };

const known = (tag: string | null): Language | undefined =>
  LANGUAGES.find((each) => tag === each || tag?.startsWith(`${each}-`) === true);

function chosen(): Language | undefined {
  try {
    return known(localStorage.getItem(KEPT));
  } catch {
    return undefined;
  }
}

/** The first of the reader's own languages that the page has; none where there is no browser. */
function ofBrowser(): Language | undefined {
  if (typeof document === 'undefined') return undefined;
  return navigator.languages.map(known).find((each) => each !== undefined);
}

/**
 * The language of the page, from its loading to its end: what was chosen, else the browser's, else English. Texts in
 * tables and constants are set once, so another choice loads the page again.
 */
export const language: Language = chosen() ?? ofBrowser() ?? 'en';
export const locale: string = LOCALES[language];
/** For names of days and months, short: the one of "en-GB" for September has four letters. */
export const dateLocale: string = language === 'en' ? 'en-US' : locale;
/** Before decimals, as figures are written and typed. */
export const DECIMAL_SIGN = new Intl.NumberFormat(locale).format(1.5).charAt(1);

/** Takes another language: the page comes again in it, with all that is said kept. */
export function chooseLanguage(next: Language): void {
  try {
    localStorage.setItem(KEPT, next);
  } catch {
    // Storage is switched off: the page stays in the language that the browser asks for.
  }
  location.reload();
}
