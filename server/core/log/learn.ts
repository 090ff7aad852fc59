import type { Surface } from '../../contract/surface.ts';
import type { LogFault } from '../phrases/log-faults.ts';
import { readColumns } from './columns.ts';
import { readCsv } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';
import { learnFuel } from './fuel-log.ts';
import type { LogLesson } from './lesson.ts';
import { learnWater } from './water-log.ts';

export interface LearnOptions {
  /** Take only intervals of a fuel log that are on this surface throughout; null takes all. */
  surface: Surface | null;
  /** People of the crew to plan for by a water log; null takes the most that the log has. */
  people: number | null;
}

/**
 * Learns from a log as text: CSV whose header names columns and units. One with an odometer is a log of fill-ups, one
 * with people a water log.
 */
export function learnFromLog(
  text: string,
  options: LearnOptions,
): { ok: true; value: LogLesson } | { ok: false; fault: LogFault } {
  try {
    const table = readCsv(text);
    const columns = readColumns(table.header);
    refuseMisplaced(columns.kind, options);
    const value =
      columns.kind === 'fuel'
        ? learnFuel(table, columns, options.surface)
        : learnWater(table, columns, options.people);
    return { ok: true, value };
  } catch (error) {
    if (!(error instanceof FaultyLog)) throw error;
    return { ok: false, fault: error.fault };
  }
}

/** An option of the other kind of log would do nothing: say so. */
function refuseMisplaced(kind: LogLesson['kind'], { surface, people }: LearnOptions): void {
  if (kind === 'fuel' && people !== null) {
    throw new FaultyLog({ place: { option: 'people' }, fault: 'people-misplaced', facts: { people } });
  }
  if (kind === 'water' && surface !== null) {
    throw new FaultyLog({ place: { option: 'surface' }, fault: 'surface-misplaced', facts: { surface } });
  }
}
