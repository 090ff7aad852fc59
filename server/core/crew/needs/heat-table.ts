import type { Work } from '../../../contract/crew.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { US_QUART_L } from './levels.ts';

/**
 * Water intake and work/rest by heat: US Army TB MED 507, fluid replacement guidelines (Montain, Latzka and Sawka,
 * Military Medicine 164(7), 1999). US quarts for each hour, for an average acclimated soldier in hot-weather uniform.
 * `null`: no limit to work.
 */
interface HeatRow {
  /** Lower bound of the category, °F of WBGT. */
  fromF: number;
  quartsPerHour: Record<Work, number>;
  /** Minutes of work in an hour; the rest of it is rest. */
  workMinutes: Record<Work, number | null>;
}

const HEAT_TABLE: readonly HeatRow[] = [
  {
    fromF: 78,
    quartsPerHour: { easy: 0.5, moderate: 0.75, hard: 0.75 },
    workMinutes: { easy: null, moderate: null, hard: 40 },
  },
  {
    fromF: 82,
    quartsPerHour: { easy: 0.5, moderate: 0.75, hard: 1 },
    workMinutes: { easy: null, moderate: 50, hard: 30 },
  },
  {
    fromF: 85,
    quartsPerHour: { easy: 0.75, moderate: 0.75, hard: 1 },
    workMinutes: { easy: null, moderate: 40, hard: 30 },
  },
  {
    fromF: 88,
    quartsPerHour: { easy: 0.75, moderate: 0.75, hard: 1 },
    workMinutes: { easy: null, moderate: 30, hard: 20 },
  },
  {
    fromF: 90,
    quartsPerHour: { easy: 1, moderate: 1, hard: 1 },
    workMinutes: { easy: 50, moderate: 20, hard: 10 },
  },
];

/** Below the table, US quarts for each hour of work (ours: never more than its first row). */
const BELOW_TABLE: Record<Work, number> = { easy: 0.25, moderate: 0.5, hard: 0.5 };
/** Individual needs differ by so much, and full sun or shade shift them by as much (same table), US quarts an hour. */
const SPREAD_QUARTS = 0.25;

/** The most that may be drunk in an hour and in a day (same table): a limit of the body. */
export const MOST_PER_HOUR_L = 1.5 * US_QUART_L;
export const MOST_PER_DAY_L = 12 * US_QUART_L;

/** What is carried for one person to drink in a day at the most (ours, by that limit): the rest nobody can drink. */
export const MOST_CARRIED_L = 12;

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/** Lower bounds of the five categories, °C of WBGT. */
export const CATEGORY_FROM_C: readonly number[] = HEAT_TABLE.map((row) => celsius(row.fromF));

/** Category of the table, 1 to 5; 0 below it. */
export function categoryOf(wbgtC: number): number {
  // A value read off in whole or tenth degrees Fahrenheit and converted must not fall through by float noise.
  return CATEGORY_FROM_C.filter((fromC) => wbgtC >= fromC - 1e-9).length;
}

/**
 * Litres that an hour of work adds, for one person. Full sun raises the typical and the high end; shade lowers the low
 * end only, so that nobody plans on it.
 */
export function litresPerWorkHour(wbgtC: number, work: Work, sun: 'shade' | 'some' | 'full'): UseRange {
  const row = HEAT_TABLE[categoryOf(wbgtC) - 1];
  const quarts = (row?.quartsPerHour ?? BELOW_TABLE)[work];
  const bySun = sun === 'full' ? SPREAD_QUARTS : 0;
  const inShade = sun === 'shade' ? SPREAD_QUARTS : 0;
  return {
    low: Math.max(0, quarts - SPREAD_QUARTS - inShade) * US_QUART_L,
    typical: (quarts + bySun) * US_QUART_L,
    high: (quarts + bySun + SPREAD_QUARTS) * US_QUART_L,
  };
}

/** Minutes of work and rest in an hour; null where the table sets no limit. */
export function workRestOf(wbgtC: number, work: Work): { workMinutes: number; restMinutes: number } | null {
  const minutes = HEAT_TABLE[categoryOf(wbgtC) - 1]?.workMinutes[work] ?? null;
  return minutes === null ? null : { workMinutes: minutes, restMinutes: 60 - minutes };
}

/** WBGT at which drinking at rest begins to rise, and where it has doubled: first and last category, °C. */
const REST_FROM_C = celsius(78);
const REST_DOUBLE_C = celsius(90);

/**
 * By how much drinking at rest rises with heat: "in very hot temperatures needs can double" (US FEMA, Ready.gov,
 * water). In between, and on beyond double, a straight line (ours).
 */
export const restFactor = (wbgtC: number): number =>
  1 + Math.max(0, wbgtC - REST_FROM_C) / (REST_DOUBLE_C - REST_FROM_C);
