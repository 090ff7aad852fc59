import type { Passing } from '../../server/contract/analysis.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';

interface Plan {
  rig: RigFile;
  trip: TripFile;
}

/** What the user can find out about a supply: whether it works, whether its water is salty, whether skin stands it. */
export type Finding =
  | 'works'
  | 'fails'
  | 'not-salty'
  | 'salty'
  | 'safe-for-skin'
  | 'not-for-skin'
  | SaltMeasure;

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

/** The plan with a finding of this day (YYYY-MM-DD) noted in its trip; it replaces what was noted of that before. */
export function withFinding<P extends Plan>(said: P, passing: Passing, finding: Finding, on: string): P {
  const { trip } = said;
  const { id, commodity } = passing;
  if (typeof finding === 'object') return { ...said, trip: withSalt(trip, id, finding, on) };
  switch (finding) {
    case 'works':
    case 'fails': {
      const others = (trip.confirmations ?? []).filter(
        (each) => each.id !== id || (each.commodity ?? commodity) !== commodity,
      );
      const note = { id, on, works: finding === 'works', commodity };
      return { ...said, trip: { ...trip, confirmations: [...others, note] } };
    }
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
