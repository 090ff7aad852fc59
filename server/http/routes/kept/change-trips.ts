import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import { TripChange, TripNaming, TripStand } from '../../../contract/kept.ts';
import { InputProblem } from '../../../core/input/problem.ts';
import { sendSaved, tripReply, WRITE_REPLIES } from '../../reply/trip-reply.ts';
import { TripId } from '../../request/trip-id.ts';
import type { TripRoutesOptions } from './options.ts';

const CHANGE = {
  summary: 'Put rig and trip in place of what is kept, with the change in words',
  description:
    'The revision is the one that the change goes out from. Where another is kept by now, nothing is written: the reply has status 409 and what is kept. Shapes are checked; whether rig and trip fit each other is seen when they are analysed.',
  params: TripId,
  body: TripChange,
  response: WRITE_REPLIES,
};
const STAND = {
  summary: 'Go to the state after one of the changes: undo and redo',
  params: TripId,
  body: TripStand,
  response: WRITE_REPLIES,
};
const NAME = {
  summary: 'Rename a kept trip, or write its notes',
  params: TripId,
  body: TripNaming,
  response: WRITE_REPLIES,
};

/** Writes that go out from a revision. */
export function changeTrips({ store, service }: TripRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.put('/api/trips/:id', { schema: CHANGE }, async ({ params, body }, reply) => {
      const saved = store.changeTrip(params.id, body.revision, body);
      if (saved.outcome !== 'saved') return sendSaved(reply, saved, body.revision);
      service.noteResults(params.id);
      return reply.send(tripReply(store.trip(params.id) ?? saved.trip));
    });

    app.post('/api/trips/:id/stand', { schema: STAND }, async ({ params, body }, reply) => {
      const saved = store.standTrip(params.id, body.revision, body.seq);
      if (saved === null) throw noSuchChange(body.seq);
      return sendSaved(reply, saved, body.revision);
    });

    app.patch('/api/trips/:id', { schema: NAME }, async ({ params, body: { revision, ...parts } }, reply) =>
      sendSaved(reply, store.nameTrip(params.id, revision, parts), revision),
    );
  };
}

const noSuchChange = (seq: number) =>
  new InputProblem({
    code: 'not-found',
    place: '/seq',
    came: `the change ${seq}`,
    expected: 'one of the changes that are kept',
    remedy: 'Get the list of changes again',
  });
