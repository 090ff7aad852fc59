import { rm } from 'node:fs/promises';
import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import type { FastifyReply, FastifyRequest } from 'fastify';
import {
  ExtractList,
  ExtractsForTrip,
  KeptExtract,
  TripExtract,
  TripExtractName,
} from '../../../contract/kept.ts';
import type { StoredTrip } from '../../../store/port/port.ts';
import type { KeepGive } from '../../../work/tasks.ts';
import { foundOrThrow, notKept } from '../../reply/not-kept.ts';
import { goneSignal } from '../../reply/reply.ts';
import { PROBLEMS, sendSaved, WRITE_REPLIES } from '../../reply/trip-reply.ts';
import { streamed } from '../../request/streamed.ts';
import { takeFile } from '../../request/take-file.ts';
import { TripId } from '../../request/trip-id.ts';
import { Reading } from '../../service/reading.ts';
import type { ExtractRoutesOptions, TripRoutesOptions } from './options.ts';

const ExtractId = Type.Object({ id: Type.String({ examples: ['6f1c2b1e-5f4e-4d55-9d0c-3b1f6a0e2a11'] }) });
const ExtractForm = Type.Object({
  extract: Type.String({ format: 'binary' }),
  name: Type.Optional(Type.String({ description: "Unlike all others; the file's name when left out" })),
});

const LIST = {
  summary: 'The extracts that are kept, by name, and those being read',
  response: { 200: ExtractList, ...PROBLEMS },
};
const ADD = {
  summary: 'Keep an extract for any number of routes; closing the connection calls it off',
  description:
    'The field "name" comes before the file. A file that is kept already gives what is kept of it.',
  consumes: ['multipart/form-data'],
  body: streamed(ExtractForm),
  response: { 201: KeptExtract, ...PROBLEMS },
};
const REMOVE = {
  summary: 'Keep an extract no longer; trips that were read with it stay as they are',
  params: ExtractId,
  response: { 204: Type.Null(), ...PROBLEMS },
};
const FOR_TRIP = {
  summary: 'What each kept extract has for the route of a trip: how many supplies, or how far off it lies',
  params: TripId,
  response: { 200: ExtractsForTrip, ...PROBLEMS },
};
const ADD_TO_TRIP = {
  summary: 'Add a kept extract to a trip',
  params: TripId,
  body: TripExtract,
  response: WRITE_REPLIES,
};
const TAKE_OFF = {
  summary: 'Take an extract off a trip; the extract itself stays kept',
  params: TripId,
  body: TripExtractName,
  response: WRITE_REPLIES,
};

/** Extracts that are kept. */
export function extractRoutes({ store, limits, keeper }: ExtractRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.get('/api/extracts', { schema: LIST }, async () => ({
      extracts: store.extracts.all(),
      reading: keeper.reading,
      store: store.state,
    }));

    app.post('/api/extracts', { schema: ADD }, async (request, reply) => {
      const path = store.extracts.incoming();
      try {
        const coming = new Reading('', 'coming', sentBytesOf(request));
        // Answered once the file is taken away below: whoever has the answer finds nothing left of what came.
        void reply.code(201);
        return await keeper.during(coming, goneSignal(reply), async (reading, signal) => {
          const onBytes = (bytes: number) => reading.came(bytes);
          const onName = (name: string) => {
            reading.name = name;
          };
          const ask = { field: 'extract', path, limits, signal, onBytes, onName };
          const { file, name } = await takeFile(request, ask);
          return keeper.keep(file, name, reading, signal);
        });
      } finally {
        await rm(path, { force: true });
      }
    });

    app.delete('/api/extracts/:id', { schema: REMOVE }, async ({ params }, reply) => {
      if (!(await store.extracts.remove(params.id))) throw notKept('extract');
      return reply.code(204).send(null);
    });
  };
}

/** Kept extracts of kept trips. */
export function extractsOfTrips({ store, service }: TripRoutesOptions): FastifyPluginAsyncTypebox {
  const keepMaps = (
    { id }: StoredTrip,
    revision: number,
    { maps, packed, extracts }: KeepGive & Pick<StoredTrip, 'extracts'>,
    reply: FastifyReply,
  ) => {
    const saved = store.mapTrip(id, revision, { bytes: maps, extracts });
    if (saved.outcome === 'saved') service.loader.remember(saved.trip, packed);
    return sendSaved(reply, saved, revision);
  };
  return async (app) => {
    app.get('/api/trips/:id/extracts', { schema: FOR_TRIP }, async ({ params }) =>
      service.loader.extractsFor(foundOrThrow(store.trip(params.id), 'trip')),
    );

    app.post('/api/trips/:id/extracts', { schema: ADD_TO_TRIP }, async ({ params, body }, reply) => {
      const trip = foundOrThrow(store.trip(params.id), 'trip');
      const extract = foundOrThrow(store.extracts.get(body.extract), 'extract');
      const isThere = trip.extracts.some(({ id }) => id === extract.id);
      if (isThere || trip.revision !== body.revision) {
        return sendSaved(reply, store.nameTrip(trip.id, body.revision, {}), body.revision);
      }
      const file = { path: await store.extracts.fileOf(extract), source: extract.name };
      const { maps, packed } = await service.loader.readMore(trip, [file], goneSignal(reply));
      const extracts = [...trip.extracts, { id: extract.id, name: extract.name }];
      return keepMaps(trip, body.revision, { maps, packed, extracts }, reply);
    });

    app.post('/api/trips/:id/extracts/remove', { schema: TAKE_OFF }, async ({ params, body }, reply) => {
      const trip = foundOrThrow(store.trip(params.id), 'trip');
      const extracts = trip.extracts.filter(({ name }) => name !== body.name);
      if (extracts.length === trip.extracts.length) throw notKept('extract of that trip');
      if (trip.revision !== body.revision)
        return sendSaved(reply, store.nameTrip(trip.id, body.revision, {}), body.revision);
      const give = await service.loader.readWithout(trip, body.name, goneSignal(reply));
      return keepMaps(trip, body.revision, { ...give, extracts }, reply);
    });
  };
}

/** Bytes of a request as far as its sender tells: a little more than the file. */
function sentBytesOf({ headers }: FastifyRequest): number | null {
  const length = Number(headers['content-length']);
  return Number.isSafeInteger(length) && length > 0 ? length : null;
}
