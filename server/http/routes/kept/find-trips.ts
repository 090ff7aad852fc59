import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { TripChanges, type TripEntry, TripList } from '../../../contract/kept.ts';
import type { StoredTrip } from '../../../store/port/port.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { PROBLEMS, TRIP_REPLIES, tripEntry, tripReply } from '../../reply/trip-reply.ts';
import { TripId } from '../../request/trip-id.ts';
import { isDemoChanged } from '../../service/demo-trip.ts';
import type { TripRoutesOptions } from './options.ts';

const ListQuery = Type.Object(
  { deleted: Type.Optional(Type.Literal('true', { description: 'Those that were deleted alone' })) },
  { additionalProperties: false },
);

const LIST = {
  summary: 'The trips that are kept, those last changed first, and where they are kept',
  querystring: ListQuery,
  response: { 200: TripList, ...PROBLEMS },
};
const GET = { summary: 'A kept trip whole', params: TripId, response: TRIP_REPLIES };
const CHANGES = {
  summary: 'The changes of a kept trip, the newest first, each with rig and trip after it',
  params: TripId,
  response: { 200: TripChanges, ...PROBLEMS },
};

async function listedTrip(trip: StoredTrip): Promise<TripEntry> {
  return trip.isDemo ? { ...tripEntry(trip), isChanged: await isDemoChanged(trip) } : tripEntry(trip);
}

/** What is kept of trips. */
export function findTrips({ store, isShared }: TripRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.get('/api/trips', { schema: LIST }, async ({ query }) => ({
      trips: await Promise.all(store.trips(query.deleted === 'true').map(listedTrip)),
      store: store.state,
      isShared,
    }));

    app.get('/api/trips/:id', { schema: GET }, async ({ params }) =>
      tripReply(foundOrThrow(store.trip(params.id), 'trip')),
    );

    app.get('/api/trips/:id/changes', { schema: CHANGES }, async ({ params }) => {
      const { id, standsAt } = foundOrThrow(store.trip(params.id), 'trip');
      return { standsAt, changes: store.changes(id) };
    });
  };
}
