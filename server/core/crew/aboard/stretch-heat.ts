import type { Heat } from '../../../contract/crew.ts';
import type { HotterStretch } from '../../gaps/course/course.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Rig } from '../../rig/rig.ts';
import { crewUse } from '../needs/crew-use.ts';

type CrewOfRig = NonNullable<Rig['crew']>;

/** A stretch of the route of which the heat is told, metres along it. */
export type HeatSpan = SpanM & Heat;

/** The heat of a stretch as a crew has it: sun, work and its hours are those of its own heat where they are left out. */
export function heatThere(crew: CrewOfRig['file'], stretch: Heat): Heat {
  const { sun, work, workHoursPerDay } = crew.heat ?? {};
  const told = { sun, work, workHoursPerDay, ...stretch };
  return Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
}

/**
 * Litres a day at the high end that a crew drinks more in the heat of a stretch than it does elsewhere; never less than
 * none, as a cooler stretch saves nothing that one may count on. What is drunk, with what reverse osmosis throws away for it,
 * rises as the sum of its parts does; so does an observed figure's share of it.
 */
export function addedPerDay({ file, use }: CrewOfRig, stretch: Heat): number {
  const before = crewUse(file, null).drinking.high;
  const after = crewUse({ ...file, heat: heatThere(file, stretch) }, null).drinking.high;
  return use.drinking.high * Math.max(0, after / before - 1);
}

/** Where a crew drinks more than elsewhere, of a route so long; none where no crew is told. */
export function hotterStretches(
  { crew }: Pick<Rig, 'crew'>,
  stretches: readonly HeatSpan[],
  lengthM: number,
): HotterStretch[] {
  if (crew === null) return [];
  return stretches
    .filter(({ fromM }) => fromM < lengthM)
    .map((stretch) => ({
      fromM: stretch.fromM,
      toM: Math.min(stretch.toM, lengthM),
      addedPerDay: addedPerDay(crew, stretch),
    }))
    .filter((stretch) => stretch.addedPerDay > 0)
    .sort((a, b) => a.fromM - b.fromM);
}
