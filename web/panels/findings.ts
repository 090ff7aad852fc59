import type { Passing } from '../../server/contract/analysis.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';

interface Plan {
  rig: RigFile;
  trip: TripFile;
}

/** What the user can find out about a supply: whether it works, whether its water is salty, whether skin stands it. */
export type Finding = 'works' | 'fails' | 'not-salty' | 'salty' | 'safe-for-skin' | 'not-for-skin';

/** The plan with a finding of this day (YYYY-MM-DD) noted in its trip; it replaces what was noted of that before. */
export function withFinding<P extends Plan>(said: P, passing: Passing, finding: Finding, on: string): P {
  const { trip } = said;
  const { id, commodity } = passing;
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
