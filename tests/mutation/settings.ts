/** Draws the same mutants each time, as long as the lines that they stand in stay the same. */
export const SEED = 8;

/** Of the mutants of core that count, at least so many percent must be noticed by a test. */
export const FLOOR_PERCENT = 85;

/** Drawn for the run before each change is taken; it ends within ten minutes on two cores. */
export const SAMPLE = 600;

/** Drawn at a time where all are tried: each lot runs the tests once more, and fits in memory. */
export const LOT = 1_500;

/** What is broken: core as a whole, and what else promises are kept by. */
export const MUTATED: readonly string[] = ['server/core', 'server/io/opening-hours.ts', 'server/http'];

/** Which tests a mutant is tried by: those that mirror its folder. */
export const HELD_BY: readonly (readonly [source: string, tests: string])[] = [
  ['server/core/', 'tests/core/'],
  ['server/io/', 'tests/io/'],
  ['server/http/', 'tests/http/'],
];

/**
 * The order of the tests, by folder, or file where it stands by itself, lowest first: those of a mutant's own folder come before those that meet
 * it on their way, and most are noticed there. What is not listed comes last.
 */
export const TEST_ORDER: readonly string[] = [
  'lists',
  'input',
  'quantity',
  'phrases',
  'geodesy',
  'rig',
  'trip',
  'surface',
  'route',
  'supply',
  'pace',
  'crew',
  'treatment',
  'fuel',
  'mass',
  'log',
  'notes',
  'gaps',
  'mapview',
  'analyse',
  'answer',
  'plan',
  'cab',
  'request',
  'reply',
  'service',
  'session',
  'own-requests.test.ts',
];

/** Longest that a property is tried with one mutant, ms: most fail at their first cases. */
export const PROPERTY_MS = 1_000;

/**
 * What one mutant may cost each process, ms of its time, and as much again in the tests of its own folder, which come late for
 * some: one that no test notices would be tried by all of them.
 */
export const TRY_MS = 5_000;

/** A mutant that keeps a test busy for so long runs for ever, and is noticed; seconds of the processor. */
export const STUCK_S = 40;

/** A mutant with which a test waits for so long and does nothing waits for ever, and is noticed; ms. */
export const QUIET_MS = 8_000;

/** The same of a test as it is, which something that an earlier mutant left behind may hold up; ms. */
export const QUIET_AS_IT_IS_MS = 60_000;

/** How many times as often as the whole code a mutant may be come by in one test before it is taken to run for ever. */
export const HITS_FACTOR = 100;
