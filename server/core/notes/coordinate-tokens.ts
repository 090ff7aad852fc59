import type { CoordinateFault } from '../phrases/notes.ts';

/** A piece of a text of co-ordinates. */
export interface CoordinateToken {
  readonly kind: 'number' | 'letter' | 'sign' | 'between';
  readonly text: string;
  /** Of a number: its value, whether it has no decimals, and the mark that follows it. */
  readonly value: number;
  readonly isWhole: boolean;
  readonly mark: 'degrees' | 'minutes' | 'seconds' | null;
}

export type Tokens =
  | { readonly ok: true; readonly tokens: CoordinateToken[] }
  | { readonly ok: false; readonly fault: CoordinateFault };

/** Signs that people type, paste and print. Longer ones stand before what they begin with. */
const MARKS: readonly [string, NonNullable<CoordinateToken['mark']>][] = [
  ['°', 'degrees'],
  ['º', 'degrees'],
  ['˚', 'degrees'],
  ["''", 'seconds'],
  ['′′', 'seconds'],
  ['’’', 'seconds'],
  ['″', 'seconds'],
  ['”', 'seconds'],
  ['“', 'seconds'],
  ['"', 'seconds'],
  ["'", 'minutes'],
  ['′', 'minutes'],
  ['’', 'minutes'],
  ['‘', 'minutes'],
  ['´', 'minutes'],
  ['`', 'minutes'],
];

/** Hyphens, dashes and the minus sign. */
const MINUS = ['-', '\u2212', '\u2010', '\u2011', '\u2012', '\u2013', '\u2014'];
const LETTERS = ['N', 'S', 'E', 'W'];
/** Stands for west in French, Spanish and Italian, for east in German and Dutch. */
const UNCLEAR_LETTER = 'O';

const PLAIN = { value: 0, isWhole: true, mark: null } as const;

/** The pieces of a text; what is none of them, and a comma that may be a point, is a fault. */
export function tokensOf(text: string): Tokens {
  const comma = commaOf(text);
  if (comma === 'unclear') return { ok: false, fault: { phrase: 'coordinate-comma-unclear', facts: {} } };
  const tokens: CoordinateToken[] = [];
  let rest = text.trim();
  if (rest === '') return { ok: false, fault: { phrase: 'coordinate-two-wanted', facts: {} } };
  while (rest !== '') {
    const piece = pieceAt(rest, comma);
    if (piece === null) return { ok: false, fault: faultAt(rest) };
    if (piece.token !== null) tokens.push(piece.token);
    rest = rest.slice(piece.length).trimStart();
  }
  return { ok: true, tokens };
}

function faultAt(rest: string): CoordinateFault {
  const [character = ''] = rest;
  return character.toUpperCase() === UNCLEAR_LETTER
    ? { phrase: 'coordinate-letter-unclear', facts: { letter: character } }
    : { phrase: 'coordinate-not-read', facts: { character } };
}

interface Piece {
  readonly token: CoordinateToken | null;
  readonly length: number;
}

/** The piece that a text begins with. */
function pieceAt(text: string, comma: 'point' | 'between'): Piece | null {
  const number = numberAt(text, comma);
  if (number !== null) return number;
  const [character = ''] = text;
  if (MINUS.includes(character))
    return { token: { ...PLAIN, kind: 'sign', text: '-' }, length: character.length };
  if (character === '+') return { token: { ...PLAIN, kind: 'sign', text: '+' }, length: 1 };
  if (',;/'.includes(character)) return { token: { ...PLAIN, kind: 'between', text: character }, length: 1 };
  const letter = character.toUpperCase();
  return LETTERS.includes(letter) ? { token: { ...PLAIN, kind: 'letter', text: letter }, length: 1 } : null;
}

/** Digits, with a point or what stands for one, and the mark behind. */
function numberAt(text: string, comma: 'point' | 'between'): Piece | null {
  const digits = (comma === 'point' ? /^(\d{1,9})(?:[.,](\d{1,20}))?/ : /^(\d{1,9})(?:\.(\d{1,20}))?/).exec(
    text,
  );
  if (digits === null) return null;
  const [written, whole = '', decimals] = digits;
  const behind = text.slice(written.length);
  const blanks = behind.length - behind.trimStart().length;
  const mark = MARKS.find(([sign]) => behind.trimStart().startsWith(sign)) ?? null;
  return {
    token: {
      kind: 'number',
      text: written,
      value: Number(decimals === undefined ? whole : `${whole}.${decimals}`),
      isWhole: decimals === undefined,
      mark: mark === null ? null : mark[1],
    },
    length: written.length + (mark === null ? 0 : blanks + mark[0].length),
  };
}

/**
 * What a comma stands for. Between, where a point is there as well or a blank beside it; a point, where a mark or a letter
 * follows its number, or where each of two numbers has one. "33,84" may be either.
 */
function commaOf(text: string): 'point' | 'between' | 'unclear' {
  const inNumbers = text.match(/\d,\d/g)?.length ?? 0;
  if (inNumbers === 0 || text.includes('.')) return 'between';
  const commas = text.split(',').length - 1;
  const marked = text.match(/\d,\d+\s*[°º˚'′’‘´`"″”“NSEWnsew]/g)?.length ?? 0;
  if (marked === inNumbers) return 'point';
  const isPair =
    /^\s*[-+\u2010-\u2014\u2212]?\d+,\d+(?:\s*[;/]\s*|,\s+|\s+)[-+\u2010-\u2014\u2212]?\d+,\d+\s*$/.test(
      text,
    );
  return isPair && commas >= 2 ? 'point' : 'unclear';
}
