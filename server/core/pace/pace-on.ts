import { SURFACES, type Surface } from '../../contract/surface.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Assumption } from '../quantity/assumption.ts';
import type { Rig } from '../rig/rig.ts';

export type PaceEnd = 'slow' | 'typical' | 'fast';

/** Hours driven in a day, and km/h. */
export interface Pace {
  hoursPerDay: number;
  kmPerHour: Record<PaceEnd, number>;
}

/**
 * Speed on a surface as a share of the rig's own pace, where the trip names surfaces and the rig no pace for them (all
 * ours). None is above 1: the rig's pace is taken as that of a good stretch, and no surface makes the crew faster.
 */
const SURFACE_PACE: Record<Surface, number> = {
  sealed: 1,
  gravel: 1,
  track: 0.8,
  sand: 0.6,
  rock: 0.4,
  mud: 0.5,
  salt: 0.9,
  unknown: 1,
};

/** The pace on each surface: the rig's own for it, else the rig's pace times the share above. */
export function paceOn(rig: Pick<Rig, 'pace'>, surface: Surface): Pace {
  const { hoursPerDay, kmPerHour, bySurface } = rig.pace;
  const own = bySurface?.[surface];
  if (own !== undefined) return { hoursPerDay: own.hoursPerDay ?? hoursPerDay, kmPerHour: own.kmPerHour };
  const share = SURFACE_PACE[surface];
  return {
    hoursPerDay,
    kmPerHour: {
      slow: kmPerHour.slow * share,
      typical: kmPerHour.typical * share,
      fast: kmPerHour.fast * share,
    },
  };
}

/** The rig with its days cut short, where the trip stops for the night after fewer hours than the rig drives. */
export function withCampHours(rig: Rig, campAfterHours: number | null): Rig {
  if (campAfterHours === null) return rig;
  const cut = (hours: number) => Math.min(hours, campAfterHours);
  const bySurface: Rig['pace']['bySurface'] = {};
  for (const surface of SURFACES) {
    const own = rig.pace.bySurface?.[surface];
    if (own === undefined) continue;
    const hours = own.hoursPerDay === undefined ? {} : { hoursPerDay: cut(own.hoursPerDay) };
    bySurface[surface] = { ...own, ...hours };
  }
  return { ...rig, pace: { ...rig.pace, hoursPerDay: cut(rig.pace.hoursPerDay), bySurface } };
}

/** Surfaces of the route whose pace nobody told, where that differs from the rig's own. */
export function paceAssumptions(rig: Pick<Rig, 'pace'>, surfaces: Iterable<Surface>): Assumption[] {
  return [...new Set(surfaces)]
    .filter((surface) => rig.pace.bySurface?.[surface] === undefined && SURFACE_PACE[surface] !== 1)
    .map((surface) => ({
      path: `/rig/pace/bySurface/${surface}`,
      value: { phrase: 'slow-pace', facts: { kmPerHour: paceOn(rig, surface).kmPerHour.slow } },
      why: { phrase: 'share-of-rig-pace', facts: { share: SURFACE_PACE[surface] } },
    }));
}

/** Says so where the trip asks for longer days than the rig drives: the rig's hours hold. */
export function campHoursCautions(rig: Pick<Rig, 'pace'>, campAfterHours: number | null): Caution[] {
  const { hoursPerDay } = rig.pace;
  if (campAfterHours === null || campAfterHours <= hoursPerDay) return [];
  const facts = { askedHours: campAfterHours, rigHours: hoursPerDay };
  return [{ code: 'camp-after-hours-late', facts }];
}
