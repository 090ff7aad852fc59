import type { Hazard, Logs, SourceKind } from '../../../contract/treatment.ts';
import { type LineEffect, lineEffect } from '../line/line-effect.ts';
import { lacksOf, logsText, roundedLog } from '../line/logs.ts';
import type { Treatment } from '../line/treatment.ts';
import { NOTHING_NOTED, type Noted } from './water-notes.ts';

/** The place of a source, as far as treating its water depends on it. */
export interface Surroundings {
  /** Highest place at which its water may be boiled, metres; null when not known. */
  altitudeM: number | null;
  /** At the drinking tap; null when not known. */
  flowLPerMin: number | null;
}

export interface SourceVerdict {
  ok: boolean;
  hazard: Hazard;
  logs: Logs;
  /** Why not. */
  lacks: string[];
  /** What to know where it does. */
  remarks: string[];
}

/**
 * Whether a line makes the water of a kind of source fit to drink. Germs: the logs of all classes in this water reach the
 * target. Salt and chemicals: only by reverse osmosis ("boiling and disinfection will not destroy other contaminants,
 * such as heavy metals, salts, and most other chemicals", EPA 816-F-15-003). Unknown salt is not treatable at all.
 */
export function judgeSource(
  line: Treatment,
  kind: SourceKind,
  place: Surroundings,
  notes: Noted = NOTHING_NOTED,
): SourceVerdict {
  const hazard = line.hazards[kind];
  const note = notes.latest;
  const effect = lineEffect(line, {
    turbidityNtu: note?.turbidityNtu ?? hazard.turbidityNtu,
    ph: note?.ph ?? null,
    temperatureC: note?.temperatureC ?? null,
    ...place,
  });
  const salt = notes.salt === 'ok' ? 'no' : notes.salt === 'bad' ? 'yes' : hazard.salt;
  const lacks = [...effect.clogs, ...(hazard.microbial ? germLacks(line, effect) : [])];
  const remarks = [...effect.unmeasured];
  if (salt === 'unknown') {
    lacks.push('salt not known: have it tested and note the date');
    lacks.push(...notes.unused);
  }
  if (salt === 'yes' && !effect.desalts) lacks.push('salt, which only reverse osmosis takes out');
  if (hazard.chemicals === 'yes' && !effect.desalts) {
    lacks.push('chemicals, which only reverse osmosis takes out');
  }
  if (hazard.chemicals === 'unknown' && !effect.desalts) {
    remarks.push('chemicals are not known, and this line takes out none');
  }
  return { ok: lacks.length === 0, hazard, logs: effect.logs, lacks, remarks };
}

function germLacks(line: Treatment, effect: LineEffect): string[] {
  const lacks = lacksOf(effect.logs, line.target.logs);
  if (lacks.length === 0) return [];
  const missing = lacks.map(({ germs, log }) => `${roundedLog(log)} log of ${germs}`).join(', ');
  const why = effect.stages.flatMap(({ name, nothing }) =>
    nothing === null ? [] : [`${name} counts for nothing: ${nothing}`],
  );
  return [`${missing} short of the target ${line.target.name} (reaches ${logsText(effect.logs)})`, ...why];
}
