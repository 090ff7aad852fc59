import type { Unit, Verdict } from '../../contract/common.ts';

export type { Unit } from '../../contract/common.ts';

/** A figure in its metric unit; each reader sets it in units of its own. */
export interface Figure {
  readonly figure: number;
  readonly unit: Unit;
  /** Decimals at most; as exact as it is, where left out. */
  readonly decimals?: number;
  /** With just so many decimals, zeros included. */
  readonly fixed?: true;
  /** The unit follows with a later figure ("5 to 12 km"), or not at all. */
  readonly bare?: true;
  /** A difference between two figures of the unit: 3 °C warmer. */
  readonly difference?: true;
}

/** A place of the route, km along it: "km 212". */
export interface Place {
  readonly place: number;
  readonly decimals?: number;
  readonly fixed?: true;
}

/** Words, names and marks; never a quantity that would change with the reader's units. */
export interface Words {
  readonly text: string;
  /** Stressed, with the verdict that it speaks of where it does. */
  readonly strong?: true;
  readonly verdict?: Verdict;
  /** Tags as mapped, with the blank and the brackets round them: the sentence is whole without. */
  readonly exact?: true;
}

/** A sentence in parts: the command line, the page, the sheet and other languages set them. */
export type Part = Words | Figure | Place;
export type Parts = readonly Part[];

type Piece = string | number | Part | Parts;

/** Parts from a template: strings and numbers become words, parts and lists of parts go in as they are. */
export function parts(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Part[] {
  const all: Part[] = [];
  strings.forEach((text, index) => {
    addTo(all, text);
    const piece = pieces[index];
    if (piece !== undefined) addTo(all, piece);
  });
  return all;
}

function addTo(all: Part[], piece: Piece): void {
  if (typeof piece === 'string' || typeof piece === 'number') addWords(all, String(piece));
  else if (isList(piece)) for (const part of piece) addTo(all, part);
  else if (isPlain(piece)) addWords(all, piece.text);
  else all.push(piece);
}

function addWords(all: Part[], text: string): void {
  if (text === '') return;
  const last = all.at(-1);
  if (last !== undefined && isPlain(last)) {
    all[all.length - 1] = { text: last.text + text };
  } else all.push({ text });
}

/** As a traveller reads it: without the tags. */
export const withoutTags = (all: Parts): Parts =>
  all.filter((part) => !('text' in part && part.exact === true));

const isPlain = (part: Part): part is Words =>
  'text' in part && part.strong === undefined && part.exact === undefined;

const isList = (piece: Part | Parts): piece is Parts => Array.isArray(piece);

/** Several lists of parts with words between them. */
export const joined = (lists: readonly Parts[], between: string): Part[] =>
  lists.reduce<Part[]>((all, list, index) => parts`${all}${index === 0 ? '' : between}${list}`, []);
