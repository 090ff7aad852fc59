import type { Verdict } from '../../../contract/common.ts';

/**
 * A plan as it is printed: words and pictures, nothing left to reckon. `sheetOf` makes it, `sheetHtml` and the PDF set
 * it. Who sets it otherwise goes through `parts` and sets each `Block` by its kind; all texts are bare and need escaping,
 * `svg` alone is markup of ours in which names are escaped already.
 */
export interface Sheet {
  /** Name of the route. */
  readonly title: string;
  /** On top of each page: what it is of; and from when it and its map data are. */
  readonly head: string;
  readonly dates: string;
  /** At the foot of each page: that the land is invented, where it is, and that all this is an aid. */
  readonly foot: string;
  readonly parts: readonly SheetPart[];
}

export type SheetPartName =
  | 'answer'
  | 'trouble'
  | 'stops'
  | 'gauge'
  | 'days'
  | 'what-ifs'
  | 'check'
  | 'cautions'
  | 'data'
  | 'home';

export interface SheetPart {
  readonly name: SheetPartName;
  /** Null where the part begins with its headline. */
  readonly heading: string | null;
  /** Whether it begins on a page of its own, to be handed to somebody else. */
  readonly startsPage: boolean;
  readonly blocks: readonly Block[];
}

export type Block =
  /** What is to be read from a distance. */
  | { readonly kind: 'headline'; readonly lines: readonly string[] }
  /** What to do, set off from all else. */
  | { readonly kind: 'box'; readonly label: string; readonly lines: readonly string[] }
  /** Sentences under each other. */
  | { readonly kind: 'lines'; readonly lines: readonly string[] }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly toTick: boolean }
  | SheetTable
  /** Beside each other where there is room. */
  | { readonly kind: 'pictures'; readonly pictures: readonly Picture[] };

export interface SheetTable {
  readonly kind: 'table';
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
}

export interface SheetColumn {
  readonly head: string;
  /** Of all figures below; empty for words. */
  readonly unit: string;
  readonly lean: 'left' | 'right';
  /** Share of the table's width against those of the other columns. */
  readonly width: number;
  /** Whether it and those behind it are one thing, which stands by itself where a row does not fit one line. */
  readonly startsGroup?: boolean;
}

export interface SheetRow {
  readonly cells: readonly SheetCell[];
  /** Whether it goes with the row before, without a line between. */
  readonly goesOn: boolean;
}

export interface SheetCell {
  readonly text: string;
  /** Set small below. */
  readonly second: string;
  readonly strong: boolean;
  /** The verdict that the text says in words; a line of its kind goes with it. */
  readonly verdict: Verdict | null;
}

/** Black on white: what differs, differs by pattern, width and words. */
export interface Picture {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What it shows, for those who do not see it. */
  readonly alt: string;
}

/** A cell of words or a figure. */
export const cell = (text: string, more: Partial<SheetCell> = {}): SheetCell => ({
  text,
  second: '',
  strong: false,
  verdict: null,
  ...more,
});

export const row = (cells: readonly SheetCell[], goesOn = false): SheetRow => ({ cells, goesOn });
