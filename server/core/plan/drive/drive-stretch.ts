import { levelsOf } from '../../gaps/course/levels.ts';
import { type Reckoning, reckon } from '../../gaps/reckon.ts';
import { drawableOf } from '../side/carry-side.ts';
import { type ContainerLevel, containersAlong } from './containers.ts';
import type { Stretch } from './stretch.ts';

/** A stretch driven: what is aboard along it, of all containers. */
export interface StretchDrive {
  readonly stretch: Stretch;
  /** With all that is aboard, cans included, and every detour on the way. */
  readonly figures: Reckoning;
  readonly levels: readonly ContainerLevel[];
  /** Metres along the route, first can to last; those still full on arrival are not among them. */
  readonly poursM: readonly number[];
  /** On arrival, and above the reserve; of drinking grade, where that is less. */
  readonly arriveL: number;
  readonly marginL: number;
}

/** Stretches are never changed, and each is asked for by many rows. */
const drives = new WeakMap<Stretch, StretchDrive>();

/** Drives a stretch with what it leaves with: plans, what-ifs and the gauge are all read from this. */
export function driveStretch(stretch: Stretch): StretchDrive {
  const known = drives.get(stretch) ?? reckonDrive(stretch);
  drives.set(stretch, known);
  return known;
}

function reckonDrive(stretch: Stretch): StretchDrive {
  const { course, from, to, tankL, cans, canL, detours } = stretch;
  const viaM = detours.reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const figures = reckon(course, from, to, {
    departL: tankL + cans * canL,
    viaM,
    washingCansL: washingCansL(stretch),
  });
  const points = levelsOf({ course, from, to }, figures, detours);
  const { levels, poursM } = containersAlong(points, {
    capacityL: drawableOf(stretch),
    tankL,
    canL,
    cans,
  });
  const drinking = figures.grades?.drinking ?? figures;
  return {
    stretch,
    figures,
    levels,
    poursM,
    arriveL: Math.min(figures.arriveL, drinking.arriveL),
    marginL: Math.min(figures.marginL, drinking.marginL),
  };
}

/** Litres aboard on leaving in cans kept for washing. */
export const washingCansL = ({ washingCans, cans, canL }: Stretch): number =>
  washingCans === true ? cans * canL : 0;
