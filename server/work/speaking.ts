import { AsyncLocalStorage } from 'node:async_hooks';
import { hearLanguage, type Language } from '../words/parts/language.ts';

const spoken = new AsyncLocalStorage<Language>();
hearLanguage(() => spoken.getStore() ?? 'en');

export type Speaking = <Result>(language: Language, act: () => Result) => Result;

/** Does something, and all that follows from it, in a language: texts of a server are in that of whoever asked. */
export const speaking: Speaking = (language, act) => spoken.run(language, act);
