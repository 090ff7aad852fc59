import { Type } from '@fastify/type-provider-typebox';
import type { FastifyReply } from 'fastify';
import { KeptTripReply, type TripEntry } from '../../contract/kept.ts';
import { problemOf } from '../../core/input/problem.ts';
import type { Saved } from '../../store/library/store.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import { notKept } from './not-kept.ts';
import { ProblemReply, sendProblem } from './problem-reply.ts';

/** The refusal of a write that goes out from another revision: with what is kept, so that both can be offered. */
const ChangedElsewhere = Type.Object({ ...ProblemReply.properties, kept: KeptTripReply });

export const PROBLEMS = { '4xx': ProblemReply, '5xx': ProblemReply };
/** Replies of a route that gives a trip. */
export const TRIP_REPLIES = { 200: KeptTripReply, ...PROBLEMS };
/** Replies of a route that writes to one. */
export const WRITE_REPLIES = { 200: KeptTripReply, 409: ChangedElsewhere, ...PROBLEMS };

/** A trip as replies have it. */
export const tripReply = ({ mapsRevision: _, ...trip }: StoredTrip): KeptTripReply => trip;

/** A trip as a list has it. */
export function tripEntry(trip: StoredTrip): TripEntry {
  const { rig: _rig, trip: _trip, notes: _notes, standsAt: _at, ...entry } = tripReply(trip);
  return entry;
}

/** Sends what became of a write. Throws InputProblem where there is no such trip. */
export function sendSaved(reply: FastifyReply, saved: Saved, revision: number): FastifyReply {
  if (saved.outcome === 'not-kept') throw notKept('trip');
  if (saved.outcome === 'saved') return reply.send(tripReply(saved.trip));
  const { kept } = saved;
  const problem = problemOf({
    code: 'changed-elsewhere',
    came: `a change of revision ${revision} of a trip that is at ${kept.revision} since ${kept.changedAt}`,
    expected: `a change of revision ${kept.revision}`,
    remedy: 'Choose between the two versions, or make the change again on the one that is kept',
  });
  return sendProblem(reply, problem, { kept: tripReply(kept) });
}
