import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import { KeptTripReply, TripCopy } from '../../../contract/kept.ts';
import { DEMO_ID } from '../../../store/library/store.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { PROBLEMS, TRIP_REPLIES, tripReply } from '../../reply/trip-reply.ts';
import { NoBody, TripId } from '../../request/trip-id.ts';
import { demoTrip } from '../../service/demo-trip.ts';
import type { TripRoutesOptions } from './options.ts';

const COPY = {
  summary: 'Keep a second trip like this one',
  params: TripId,
  body: TripCopy,
  response: { 201: KeptTripReply, ...PROBLEMS },
};
const DELETE = {
  summary: 'Delete a kept trip; it can be restored',
  params: TripId,
  response: TRIP_REPLIES,
};
const RESTORE = {
  summary: 'Take back that a trip was deleted',
  params: TripId,
  body: NoBody,
  response: TRIP_REPLIES,
};
const RESET = { summary: 'Set the demo back to its first state', body: NoBody, response: TRIP_REPLIES };

/** Whole trips: copied, deleted and restored, and the demo set back. */
export function copyTrips({ store }: TripRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post('/api/trips/:id/duplicate', { schema: COPY }, async ({ params, body }, reply) => {
      const copy = foundOrThrow(store.copyTrip(params.id, body.name), 'trip');
      return reply.code(201).send(tripReply(copy));
    });

    app.delete('/api/trips/:id', { schema: DELETE }, async ({ params }) =>
      tripReply(foundOrThrow(store.deleteTrip(params.id, true), 'trip')),
    );

    app.post('/api/trips/:id/restore', { schema: RESTORE }, async ({ params }) =>
      tripReply(foundOrThrow(store.deleteTrip(params.id, false), 'trip')),
    );

    app.post('/api/trips/demo/reset', { schema: RESET }, async () =>
      tripReply(store.resetTrip(DEMO_ID, await demoTrip())),
    );
  };
}
