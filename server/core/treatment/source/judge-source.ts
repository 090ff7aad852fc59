import type { Logs, SourceKind } from '../../../contract/treatment.ts';
import type { WaterLack, WaterRemark } from '../../phrases/rig/treatment-waters.ts';
import type { Hazard } from '../line/hazards.ts';
import { type LineEffect, lineEffect } from '../line/line-effect.ts';
import { lacksOf } from '../line/logs.ts';
import { pressingOf, tdsOf } from '../line/osmosis.ts';
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
  lacks: WaterLack[];
  /** What to know where it does. */
  remarks: WaterRemark[];
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
  const lacks: WaterLack[] = [...clogsOf(effect), ...(hazard.microbial ? germLacks(line, effect) : [])];
  const remarks: WaterRemark[] = [...effect.unmeasured];
  const salty = saltOf(salt, notes, () => desaltingOf(line, effect, note));
  lacks.push(...salty.lacks);
  remarks.push(...salty.remarks);
  if (hazard.chemicals === 'yes' && !effect.desalts) {
    lacks.push({ phrase: 'chemicals-stay', facts: {} });
  }
  if (hazard.chemicals === 'unknown' && !effect.desalts) {
    remarks.push({ phrase: 'chemicals-not-known', facts: {} });
  }
  return { ok: lacks.length === 0, hazard, logs: effect.logs, lacks, remarks };
}

/** What salt lacks, or asks to be said. */
function saltOf(
  salt: Hazard['salt'],
  { unused }: Noted,
  desalting: () => ReturnType<typeof desaltingOf>,
): { lacks: readonly WaterLack[]; remarks: readonly WaterRemark[] } {
  if (salt === 'no') return { lacks: [], remarks: [] };
  if (salt === 'unknown') return { lacks: [{ phrase: 'salt-not-known', facts: {} }, ...unused], remarks: [] };
  const pressing = desalting();
  return 'lack' in pressing
    ? { lacks: [pressing.lack], remarks: [] }
    : { lacks: [], remarks: [pressing.remark] };
}

/** Whether the line takes out the salt of a water: only where the pump presses it through the membrane. */
function desaltingOf(
  line: Treatment,
  { desalts }: LineEffect,
  note: Noted['latest'],
): { lack: WaterLack } | { remark: WaterRemark } {
  const membrane = line.stages.find(({ kind, fault }) => kind === 'reverse-osmosis' && fault === null);
  if (!desalts || membrane === undefined) return { lack: { phrase: 'salt-stays', facts: {} } };
  const tdsMgPerLitre = tdsOf(note);
  if (tdsMgPerLitre === null) return { lack: { phrase: 'salinity-not-told', facts: {} } };
  const pressing = pressingOf(line, membrane, { tdsMgPerLitre, temperatureC: note?.temperatureC ?? null });
  if (pressing === null) return { lack: { phrase: 'osmosis-pump-untold', facts: {} } };
  return pressing.pumpKPa > pressing.osmoticKPa
    ? { remark: { phrase: 'osmosis-strong-enough', facts: pressing } }
    : { lack: { phrase: 'osmosis-too-weak', facts: pressing } };
}

/** Stages through which the water does not go. */
const clogsOf = ({ stages }: LineEffect): WaterLack[] =>
  stages.flatMap(({ name, clogs, nothing: why }): WaterLack[] =>
    clogs && why !== null ? [{ phrase: 'stage-clogs', facts: { stage: name, why } }] : [],
  );

function germLacks(line: Treatment, { logs, stages }: LineEffect): WaterLack[] {
  const lacks = lacksOf(logs, line.target.logs);
  if (lacks.length === 0) return [];
  const idle = stages.flatMap(({ name, nothing: why }): WaterLack[] =>
    why === null ? [] : [{ phrase: 'stage-counts-for-nothing', facts: { stage: name, why } }],
  );
  return [{ phrase: 'short-of-target', facts: { lacks, target: line.target.name, logs } }, ...idle];
}
