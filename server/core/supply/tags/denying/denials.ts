import type { Tags } from '../../../input/sources.ts';
import { DENYING_LANGUAGES, type DenyingLanguage } from './denying-words.ts';
import { holdsAny, wholeWords } from './whole-words.ts';

/** What mappers write into a tag against the object, as it stands there. */
export interface Denial {
  readonly key: string;
  readonly quote: string;
}

/** Keys in which mappers write sentences; with and without a language ("note:fr"). */
const PROSE_KEYS = ['note', 'description', 'fixme', 'todo', 'comment', 'inscription', 'remark'];
/** Keys that hold names, in which a word may be part of a place's name. */
const NAME_KEYS = ['name', 'alt_name', 'official_name', 'loc_name', 'operator'];
/** Longer quotes are cut, characters. */
const QUOTE_MOST = 100;

/** How a phrase denies: wherever it stands, beside a supply ("dry well"), or only apart from a name. */
type Strength = 'always' | 'beside' | 'apart';

interface Phrase {
  /** Whole words, a blank on either side; of a language without blanks the bare signs. */
  readonly words: string;
  readonly strength: Strength;
  readonly never: readonly string[];
  readonly neverAfter: readonly string[];
  readonly joined: boolean;
}

const pairs = (first: readonly string[], second: readonly string[]): string[] =>
  first.flatMap((one) => second.map((other) => `${one} ${other}`));

function phrasesOf(language: DenyingLanguage): Phrase[] {
  const {
    always,
    apart,
    no,
    noAfter = [],
    supplies,
    sources,
    never,
    neverAfter = [],
    joined = false,
  } = language;
  const things = [...supplies, ...sources];
  const asSought = joined ? (text: string) => wholeWords(text).trim() : wholeWords;
  const phrases = (strength: Strength, texts: readonly string[]): Phrase[] =>
    texts.map((text) => ({
      words: asSought(text),
      strength,
      never: never.map(asSought),
      neverAfter: neverAfter.map(asSought),
      joined,
    }));
  return [
    ...phrases('always', [...always, ...pairs(no, supplies), ...pairs(supplies, noAfter)]),
    ...phrases('beside', [...pairs(apart, things), ...pairs(things, apart)]),
    ...phrases('apart', apart),
  ];
}

const firstWord = (words: string): string => words.trim().split(' ', 1)[0] ?? '';

/** Phrases by their first word, as every name on the map is looked through; those without blanks by themselves. */
const BY_WORD = new Map<string, Phrase[]>();
const JOINED: Phrase[] = [];
for (const phrase of DENYING_LANGUAGES.flatMap(phrasesOf)) {
  const word = firstWord(phrase.words);
  if (phrase.joined) JOINED.push(phrase);
  else BY_WORD.set(word, [...(BY_WORD.get(word) ?? []), phrase]);
}

/** The phrases that may stand in a text of whole words. */
const candidatesIn = (words: string): Phrase[] => [
  ...words
    .trim()
    .split(' ')
    .flatMap((word) => BY_WORD.get(word) ?? []),
  ...(/\p{Script=Han}/u.test(words) ? JOINED : []),
];

/** Whether a phrase stands in the words and is not taken back by what stands next to it. */
function stands(words: string, { words: sought, never, neverAfter, joined }: Phrase): boolean {
  for (let place = words.indexOf(sought); place >= 0; place = words.indexOf(sought, place + 1)) {
    const before = words.slice(0, joined ? place : place + 1);
    const after = words.slice(place + sought.length - (joined ? 0 : 1));
    const isTakenBack =
      never.some((word) => before.endsWith(word)) || neverAfter.some((word) => after.startsWith(word));
    if (!isTakenBack) return true;
  }
  return false;
}

/** The parts of a name: what stands in brackets or behind a dash or a comma is said of it. */
const partsOf = (name: string): string[] => name.split(/[()[\]{}/|;:,!?"]|\s[-–—]+\s/u);

/** Whether a word that may belong to a place's name stands apart from it: "Bore 12 (dry since May)". */
const standsApart = (name: string): boolean =>
  partsOf(name).some((part, index) => {
    const words = wholeWords(part);
    const first = BY_WORD.get(firstWord(words)) ?? [];
    return first.some(
      (phrase) =>
        phrase.strength === 'apart' &&
        (words === phrase.words || (index > 0 && words.startsWith(phrase.words))),
    );
  });

/** Whether a text says that there is nothing to be had; in a name, words of place names do so only apart from it. */
export function denies(text: string, isName: boolean): boolean {
  const words = wholeWords(text);
  const found = candidatesIn(words).filter((phrase) => phrase.strength !== 'apart' || !isName);
  return found.some((phrase) => stands(words, phrase)) || (isName && standsApart(text));
}

/** Words that deny whatever stands beside them, in a text that speaks of nothing but a supply. */
const BARE = DENYING_LANGUAGES.flatMap(({ no, noAfter = [] }) => [...no, ...noAfter]);

/** As `denies`, for a note on a supply: "no", "sin" and their like deny it wherever they stand. */
export const deniesInNote = (text: string, isName: boolean): boolean =>
  denies(text, isName) || holdsAny(wholeWords(text), BARE);

/** What a tag holds in words; null for keys that hold none. Of opening hours only their comments are words. */
function wordsIn(key: string, value: string): { texts: string[]; isName: boolean } | null {
  const small = key.toLowerCase();
  if (small.startsWith('opening_hours')) {
    const comments = [...value.matchAll(/"([^"]*)"/g)].map(([, comment = '']) => comment);
    return { texts: small.endsWith(':note') ? [value] : comments, isName: false };
  }
  const [bare = ''] = small.split(':');
  if (NAME_KEYS.includes(bare)) return { texts: [value], isName: true };
  const isProse = PROSE_KEYS.includes(bare) || PROSE_KEYS.some((one) => small.endsWith(`:${one}`));
  return isProse ? { texts: value.split(/[.;!?\n]+/u), isName: false } : null;
}

const quoted = (text: string): string => {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length <= QUOTE_MOST ? line : `${line.slice(0, QUOTE_MOST - 1)}…`;
};

/** What the tags say in words against the object, in the order of the tags. */
export function denialsIn(tags: Tags): Denial[] {
  return Object.entries(tags).flatMap(([key, value]) => {
    const words = wordsIn(key, value);
    const text = words?.texts.find((one) => denies(one, words.isName));
    return text === undefined ? [] : [{ key, quote: quoted(text) }];
  });
}
