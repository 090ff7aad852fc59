import type { Surface } from '../../contract/surface.ts';
import type { Lines, LogOmission } from './log.ts';
import type { NoFacts } from './said/said.ts';

/** Numbers that a cell of a log may hold: from the least, or from above it where `above` says so, to the most. */
export interface NumberRange {
  readonly above?: number;
  readonly least?: number;
  readonly most: number;
  readonly unit: string;
  readonly whole?: boolean;
}

/** What is wrong with a cell; `text` is what it holds. */
interface CellFaults {
  'number-form': { text: string; range: NumberRange; decimalComma: boolean };
  'number-ambiguous': { text: string; range: NumberRange };
  'number-outside': { text: string; range: NumberRange };
  'number-missing': { range: NumberRange };
  'word-unknown': { text: string; yes: readonly string[]; no: readonly string[] };
  'full-missing': { yes: readonly string[]; no: readonly string[] };
  'surface-unknown': { text: string; surfaces: readonly Surface[] };
  'date-form': { text: string };
}

/** What is wrong with the file or its header. */
interface TableFaults {
  'log-empty': NoFacts;
  'log-long': { most: number };
  'cells-surplus': { cells: number; most: number; separator: ',' | ';' | '\t' };
  'quote-inside': NoFacts;
  'quote-open': NoFacts;
  'column-twice': { title: string; first: string };
  'column-missing': {
    kind: 'fuel' | 'water';
    missing: readonly NeededColumn[];
    needed: readonly NeededColumn[];
  };
  'kind-unclear': { titles: readonly string[] };
  'unit-missing': { title: string; of: 'odometer' | 'trip' | 'mass' | 'gallons' };
}
export type NeededColumn = 'odometer' | 'volume' | 'full' | 'date' | 'people' | 'days';

/** What is wrong with what the lines tell. */
interface ContentFaults {
  'odometer-falls': { odometer: number; line: number; before: number; beforeLine: number };
  'fill-twice': { line: number };
  'line-twice': { line: number; date: string };
  'rate-impossible': { litres: number; km: number; litresPer100Km: number; most: number };
  'use-impossible': { litresPerDay: number; people: number; most: number };
  'intervals-few': {
    intervals: readonly Lines[];
    leftOut: readonly LogOmission[];
    least: number;
    /** Fill-ups to the full that would give enough intervals. */
    more: number;
  };
  'lines-few': { lines: number; least: number };
  'people-misplaced': { people: number };
  'surface-misplaced': { surface: Surface };
}

export interface LogFaultFacts extends CellFaults, TableFaults, ContentFaults {}

/** Where in a log: a line and its column, several lines, or an option that came beside it. */
export type LogPlace =
  | { readonly line: number; readonly column?: string }
  | Lines
  | { readonly option: 'people' | 'surface' };

/** Why a log cannot be used: where (null: as a whole), what is wrong, and the facts of the case. */
export type LogFault = {
  readonly [Name in keyof LogFaultFacts]: {
    readonly place: LogPlace | null;
    readonly fault: Name;
    readonly facts: LogFaultFacts[Name];
  };
}[keyof LogFaultFacts];
