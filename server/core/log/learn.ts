import type { LogResult } from '../../contract/log.ts';
import type { Surface } from '../../contract/surface.ts';
import { InputProblem, type Outcome } from '../input/problem.ts';
import { readColumns } from './columns.ts';
import { readCsv } from './csv.ts';
import { learnFuel } from './fuel-log.ts';
import { logFault } from './log-fault.ts';
import { learnWater } from './water-log.ts';

export interface LearnOptions {
  /** Take only intervals of a fuel log that are on this surface throughout; null takes all. */
  surface: Surface | null;
  /** People of the crew to plan for by a water log; null takes the most that the log has. */
  people: number | null;
}

/**
 * Learns from a log as text: CSV whose header names columns and units. One with an odometer is a log of fill-ups, one
 * with people a water log. `source` names it in the result and in a refusal, whose place is the line.
 */
export function learnFromLog(text: string, source: string, options: LearnOptions): Outcome<LogResult> {
  try {
    const table = readCsv(text);
    const columns = readColumns(table.header);
    const isFuel = columns.kind === 'fuel';
    refuseMisplaced(isFuel, options);
    return {
      ok: true,
      value: isFuel
        ? learnFuel(table, columns, source, options.surface)
        : learnWater(table, columns, source, options.people),
    };
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    return { ok: false, problem: { ...error.problem, source } };
  }
}

/** An option of the other kind of log would do nothing: say so. */
function refuseMisplaced(isFuel: boolean, { surface, people }: LearnOptions): void {
  if (isFuel && people !== null) {
    throw logFault('people', `${people} people`, 'a water log', 'Leave people out for a log of fill-ups');
  }
  if (!isFuel && surface !== null) {
    throw logFault('surface', surface, 'a log of fill-ups', 'Leave the surface out for a water log');
  }
}
