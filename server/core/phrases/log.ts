import type { Surface } from '../../contract/surface.ts';
import type { NoFacts } from './said/said.ts';

/** Lines of a log as in the file, from 1. */
export interface Lines {
  readonly fromLine: number;
  readonly toLine: number;
}

interface IntervalRate extends Lines {
  readonly litresPer100Km: number;
}
interface EntryRate {
  readonly line: number;
  readonly litresPerPersonDay: number;
}
/** Days between one line and the next that none or both of them tell of. */
interface BetweenLines extends Lines {
  readonly days: number;
}

/** What to know before planning with what a log taught. */
export interface LogCautions {
  'above-high': { kind: 'fuel'; worst: IntervalRate } | { kind: 'water'; worst: EntryRate };
  outliers: { kind: 'fuel'; rates: readonly IntervalRate[] } | { kind: 'water'; rates: readonly EntryRate[] };
  'few-intervals': { intervals: number };
  'short-intervals': { intervals: readonly (Lines & { km: number })[] };
  'mixed-surfaces': NoFacts;
  'surface-not-told': NoFacts;
  'mass-not-told': NoFacts;
  'all-in': NoFacts;
  'split-fill': { lines: readonly number[] };
  'newest-first': NoFacts;
  'people-vary': { crews: readonly number[] };
  'days-not-logged': { stretches: readonly BetweenLines[] };
  'days-overlap': { stretches: readonly BetweenLines[] };
  'weather-as-logged': NoFacts;
}

/** Why lines of a log of fill-ups give no rate. */
export interface LogOmissions {
  'before-first-full': NoFacts;
  'after-last-full': NoFacts;
  /** `line`: before it a fill-up is missing, or it has no litres. */
  'fill-missing': { line: number; lacks: 'fill-up' | 'litres' };
  'other-surface': { surface: Surface };
}
/** What was left out, and why. */
export type LogOmission = {
  readonly [Code in keyof LogOmissions]: Lines & { readonly code: Code; readonly facts: LogOmissions[Code] };
}[keyof LogOmissions];

/** How the figures of a log were come by. */
export interface LogPhrases {
  'log-intervals': NoFacts;
  'log-percentiles': { each: 'interval' | 'line' };
  'log-fences': { fence: number };
  'log-entries': NoFacts;
  'log-crew': { people: number; from: 'asked' | 'log' };
  /** Beside the lines for a rig: what they were learned from. */
  'log-yaml-intervals': { intervals: number; km: number };
  'log-yaml-lines': { people: number; lines: number };
  'log-yaml-crew': NoFacts;
}
