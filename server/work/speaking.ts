import { AsyncLocalStorage } from 'node:async_hooks';
import type { Units } from '../contract/answers/units.ts';
import { hearLanguage, type Language } from '../words/parts/language.ts';
import { hearUnits, UNIT_PRESETS } from '../words/parts/reader-units.ts';

const measured = new AsyncLocalStorage<Units>();
hearUnits(() => measured.getStore() ?? UNIT_PRESETS.metric);

/** Does something, and all that follows from it, in a reader's units. */
export const measuring = <Result>(units: Units, act: () => Result): Result => measured.run(units, act);

const spoken = new AsyncLocalStorage<Language>();
hearLanguage(() => spoken.getStore() ?? 'en');

export type Speaking = <Result>(language: Language, act: () => Result) => Result;

/** Does something, and all that follows from it, in a language: texts of a server are in that of whoever asked. */
export const speaking: Speaking = (language, act) => spoken.run(language, act);
