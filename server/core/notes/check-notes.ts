import type { TripFile } from '../../contract/trip.ts';
import { heatMisfit } from '../crew/needs/check-crew.ts';
import type { Misfit } from '../phrases/misfits.ts';
import { coordinatesOf } from './coordinates.ts';

/** First contradiction within the notes of a trip. */
export function checkNotes(trip: TripFile): Misfit | null {
  return daysForward(trip) ?? ownPointsWhole(trip) ?? correctionsChange(trip) ?? heatTold(trip);
}

/** Every date of a note, with its path. */
export function datesOfNotes(trip: TripFile): { path: string; date: string | undefined }[] {
  const {
    confirmations = [],
    corrections = [],
    ownPoints = [],
    closed = [],
    heat = [],
    waterNotes = [],
    plan,
  } = trip;
  const lists = {
    confirmations,
    corrections,
    ownPoints,
    closed,
    heat,
    waterNotes,
    'plan/stops': plan?.stops ?? [],
  };
  return Object.entries(lists).flatMap(([list, entries]) =>
    entries.flatMap((entry: { on?: string; from?: string; until?: string }, index) =>
      (['on', 'from', 'until'] as const).map((key) => ({
        path: `/${list}/${index}/${key}`,
        date: entry[key],
      })),
    ),
  );
}

function daysForward({ confirmations = [], ownPoints = [], closed = [] }: TripFile): Misfit | null {
  for (const [list, entries] of Object.entries({ confirmations, ownPoints, closed }))
    for (const [index, { from, until }] of entries.entries())
      if (from !== undefined && until !== undefined && from > until)
        return { path: `/${list}/${index}`, misfit: 'days-backward', facts: { from, until } };
  return null;
}

function heatTold({ heat = [] }: TripFile): Misfit | null {
  for (const [index, stretch] of heat.entries()) {
    const misfit = heatMisfit(stretch, `/heat/${index}`);
    if (misfit !== null) return misfit;
  }
  return null;
}

function ownPointsWhole({ ownPoints = [] }: TripFile): Misfit | null {
  const seen = new Set<string>();
  for (const [index, { id, at, fuels, grade }] of ownPoints.entries()) {
    const path = `/ownPoints/${index}`;
    if (seen.has(id)) return { path, misfit: 'own-point-twice', facts: { id } };
    seen.add(id);
    if (fuels === undefined && grade === undefined)
      return { path, misfit: 'own-point-gives-nothing', facts: { id } };
    const coordinates = coordinatesOf(at);
    if (!coordinates.ok)
      return {
        path: `${path}/at`,
        misfit: 'place-unreadable',
        facts: { text: at, fault: coordinates.fault },
      };
  }
  return null;
}

function correctionsChange({ corrections = [] }: TripFile): Misfit | null {
  for (const [index, { id, fuels, grade, openingHours, phone }] of corrections.entries())
    if ([fuels, grade, openingHours, phone].every((told) => told === undefined))
      return { path: `/corrections/${index}`, misfit: 'correction-empty', facts: { id } };
  return null;
}
