import type { Caution } from '../core/phrases/cautions.ts';
import type { LogFault } from '../core/phrases/log-faults.ts';
import type { Misfit } from '../core/phrases/misfits.ts';
import type { Phrase } from '../core/phrases/phrases.ts';
import type { Reason } from '../core/phrases/reasons.ts';
import type { RouteRefusal } from '../core/phrases/route.ts';
import { GERMAN } from './de/german.ts';
import { ENGLISH } from './en/english.ts';
import type { Catalogue, MisfitWords, PlacedWords, Say } from './parts/catalogue.ts';
import { type Language, language } from './parts/language.ts';
import { metricText } from './parts/metric.ts';
import type { Parts } from './parts/part.ts';

const CATALOGUES: Readonly<Record<Language, Catalogue>> = { en: ENGLISH, de: GERMAN };
const spoken = (): Catalogue => CATALOGUES[language()];

/** Anything that core says. */
export type Utterance = Caution | Reason | Phrase;

type Saying = (facts: unknown, say: Say) => Parts;

/** The parts that say it. Codes of cautions and reasons are looked up in that order: no code is in both. */
export function wordsOf(said: Utterance, catalogue: Catalogue = spoken()): Parts {
  const [name, tables] =
    'phrase' in said
      ? [said.phrase, [catalogue.phrases]]
      : [said.code, [catalogue.cautions, catalogue.reasons]];
  for (const table of tables) {
    const saying = (table as Record<string, Saying | undefined>)[name];
    if (saying !== undefined) return saying(said.facts, (phrase) => wordsOf(phrase, catalogue));
  }
  throw new Error(`No words for "${name}": add them to server/words/en`);
}

/** In metric units, as one line. */
export const textOf = (said: Utterance, catalogue: Catalogue = spoken()): string =>
  metricText(wordsOf(said, catalogue));

type MisfitSaying = (facts: unknown, path: string) => MisfitWords;

/** Why a rig or a trip is refused, in words. */
export const misfitWords = ({ misfit, facts, path }: Misfit, catalogue: Catalogue = spoken()): MisfitWords =>
  (catalogue.misfits[misfit] as MisfitSaying)(facts, path);

type RouteRefusalSaying = (facts: unknown) => PlacedWords;

/** Why no route can be made of a file, in words. */
export const routeRefusalWords = (
  { code, facts }: RouteRefusal,
  catalogue: Catalogue = spoken(),
): PlacedWords => (catalogue.routeRefusals[code] as RouteRefusalSaying)(facts);

type LogFaultSaying = (facts: unknown) => MisfitWords;

/** Why a log is refused, in words, with the place in it. */
export function logFaultWords(
  { place, fault, facts }: LogFault,
  catalogue: Catalogue = spoken(),
): PlacedWords {
  const words = (catalogue.logFaults[fault] as LogFaultSaying)(facts);
  return { place: place === null ? null : catalogue.logPlace(place), ...words };
}
