import type { Analysis, Passing } from '../../server/contract/analysis.ts';
import type { ObjectThen } from '../../server/contract/common.ts';
import type { Confirmation, Correction } from '../../server/contract/notes.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { isOnMap, objectThen } from './object-then.ts';

interface Plan {
  rig: RigFile;
  trip: TripFile;
}

/** Whether it works, and who said so. */
export type Report = Pick<Confirmation, 'works' | 'by' | 'phone' | 'words' | 'from' | 'until'>;

/** What the map has wrong of it; litres and price are of the commodity at hand. */
export type CorrectedFacts = Pick<
  Correction,
  'fuels' | 'grade' | 'openingHours' | 'by' | 'phone' | 'words'
> & { mostLitres?: number; pricePerLitre?: number };

/** What the user can find out about a supply: whether it works, what the map has wrong, what its water is like. */
export type Finding =
  | { report: Report; was?: ObjectThen }
  | { correction: CorrectedFacts; was?: ObjectThen }
  | 'not-salty'
  | 'salty'
  | 'safe-for-skin'
  | 'not-for-skin'
  | SaltMeasure
  | WellDepth;

/** From the ground to the water; how it tastes where nothing was noted of it before. */
export interface WellDepth {
  depthM: number;
  saltOk?: boolean;
}

/** Salt as an instrument shows it. */
export interface SaltMeasure {
  key: 'tdsMgPerLitre' | 'conductivityMicroSPerCm';
  value: number;
}

/**
 * What people drink at most: water above some 1,000 mg/l is increasingly unpalatable (WHO, Guidelines for drinking-water
 * quality, chapter 10; from memory); 1,400 µS/cm are no more than that at the usual 0.7 mg/l each.
 */
const PALATABLE: Record<SaltMeasure['key'], number> = {
  tdsMgPerLitre: 1000,
  conductivityMicroSPerCm: 1400,
};

/** The trip with salt measured: it replaces what was measured or tasted before, and keeps what else was noted. */
function withSalt(trip: TripFile, id: string, { key, value }: SaltMeasure, on: string): TripFile {
  const notes = trip.waterNotes ?? [];
  const { tdsMgPerLitre, conductivityMicroSPerCm, ...kept } = notes.find((note) => note.id === id) ?? {};
  const note = { ...kept, id, on, saltOk: value <= PALATABLE[key], [key]: value };
  return { ...trip, waterNotes: [...notes.filter((each) => each.id !== id), note] };
}

/**
 * The trip with the depth of a well. What was noted of its salt keeps its day: a depth is no test of the water. Without
 * such a note the taste must be told too, else nothing is noted.
 */
function withDepth(trip: TripFile, id: string, { depthM, saltOk }: WellDepth, on: string): TripFile {
  const notes = trip.waterNotes ?? [];
  const before = notes.find((note) => note.id === id);
  const tasted = saltOk === undefined ? before : { ...before, id, on, saltOk };
  if (tasted === undefined) return trip;
  return { ...trip, waterNotes: [...notes.filter((each) => each.id !== id), { ...tasted, depthM }] };
}

/** The trip with a report, in place of the one before. */
function withReport(trip: TripFile, report: Confirmation): TripFile {
  const { id, commodity } = report;
  const others = (trip.confirmations ?? []).filter(
    (each) => each.id !== id || (each.commodity ?? commodity) !== commodity,
  );
  return { ...trip, confirmations: [...others, report] };
}

/** The trip with a correction, and with litres and price where those of stops stand. */
function withCorrection(
  trip: TripFile,
  { id, commodity }: Passing,
  { mostLitres, pricePerLitre, ...facts }: CorrectedFacts,
  noted: { on: string; was?: ObjectThen },
): TripFile {
  const { fuels, grade, openingHours, phone } = facts;
  const isOfMap = [fuels, grade, openingHours, phone].some((one) => one !== undefined);
  const corrected = isOfMap
    ? { ...trip, corrections: [...(trip.corrections ?? []), { id, ...noted, ...facts }] }
    : trip;
  if (mostLitres === undefined && pricePerLitre === undefined) return corrected;
  const stops = corrected.plan?.stops ?? [];
  const before = stops.find((stop) => stop.id === id) ?? { id };
  const { by, phone: asked, words } = facts;
  const said = { ...(by && { by }), ...(asked && { phone: asked }), ...(words && { words }) };
  const stop = {
    ...before,
    ...(mostLitres && { mostLitres: { ...before.mostLitres, [commodity]: mostLitres } }),
    ...(pricePerLitre !== undefined && {
      pricePerLitre: { ...before.pricePerLitre, [commodity]: pricePerLitre },
    }),
    on: noted.on,
    ...said,
  };
  const others = stops.filter((each) => each.id !== id);
  return { ...corrected, plan: { ...corrected.plan, stops: [...others, stop] } };
}

/** The plan with a finding of this day (YYYY-MM-DD) noted in its trip; it replaces what was noted of that before. */
export function withFinding<P extends Plan>(said: P, passing: Passing, finding: Finding, on: string): P {
  const { trip } = said;
  const { id, commodity } = passing;
  if (typeof finding === 'object') {
    if ('depthM' in finding) return { ...said, trip: withDepth(trip, id, finding, on) };
    if ('key' in finding) return { ...said, trip: withSalt(trip, id, finding, on) };
    const was = finding.was === undefined ? {} : { was: finding.was };
    const noted =
      'report' in finding
        ? withReport(trip, { id, on, commodity, ...finding.report, ...was })
        : withCorrection(trip, passing, finding.correction, { on, ...was });
    return { ...said, trip: noted };
  }
  switch (finding) {
    case 'not-salty':
    case 'salty': {
      const before = trip.waterNotes?.find((note) => note.id === id);
      const others = (trip.waterNotes ?? []).filter((note) => note.id !== id);
      const note = { ...before, id, on, saltOk: finding === 'not-salty' };
      return { ...said, trip: { ...trip, waterNotes: [...others, note] } };
    }
    case 'safe-for-skin':
    case 'not-for-skin': {
      const others = (trip.washingSources ?? []).filter((source) => source !== id);
      const washingSources = finding === 'safe-for-skin' ? [...others, id] : others;
      return { ...said, trip: { ...trip, washingSources } };
    }
  }
}

/** The plan with a stop of the list to check confirmed on a day, for every commodity that it gives. */
export function withChecked<P extends Plan>(
  said: P,
  { id }: { id: string },
  { analysis, on }: { analysis: Analysis; on: string },
): P {
  const given = analysis.passings.filter((passing) => passing.id === id);
  const each = [...new Map(given.map((passing) => [passing.commodity, passing])).values()];
  return each.reduce((plan, passing) => {
    const was = isOnMap(passing) ? { was: objectThen(passing, analysis.passings) } : {};
    return withFinding(plan, passing, { report: { works: true }, ...was }, on);
  }, said);
}
