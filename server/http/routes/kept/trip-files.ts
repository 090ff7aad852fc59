import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { KeptTripReply } from '../../../contract/kept.ts';
import type { StoredTrip } from '../../../store/port/port.ts';
import { tripFileName } from '../../../store/trip-file/write-trip-file.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { goneSignal, sendBytes } from '../../reply/reply.ts';
import { PROBLEMS, tripReply } from '../../reply/trip-reply.ts';
import { streamed } from '../../request/streamed.ts';
import { takeFile } from '../../request/take-file.ts';
import { TripId } from '../../request/trip-id.ts';
import { hashOf } from '../../service/demo-trip.ts';
import type { TripRoutesOptions } from './options.ts';

const EXPORT = {
  summary: 'A kept trip as one file, to keep elsewhere or give away (server/store/trip-file/TRIP-FILE.md)',
  params: TripId,
  response: { 200: Type.Object({ drystage: Type.Literal('trip'), version: Type.Integer() }), ...PROBLEMS },
};
const IMPORT = {
  summary: 'Keep the trip of a file',
  consumes: ['multipart/form-data'],
  body: streamed(Type.Object({ trip: Type.String({ format: 'binary' }) })),
  response: { 201: KeptTripReply, ...PROBLEMS },
};

/** A trip as one file. */
export function tripFiles(options: TripRoutesOptions): FastifyPluginAsyncTypebox {
  const { store, service, limits } = options;
  return async (app) => {
    app.get('/api/trips/:id/export', { schema: EXPORT }, async ({ params }, reply) => {
      const trip = foundOrThrow(store.trip(params.id), 'trip');
      const bytes = await service.loader.write(trip, goneSignal(reply));
      // The name in UTF-8 (RFC 6266, 4.3).
      const name = encodeURIComponent(tripFileName(trip.name)).replace(/['()*]/g, escapeMore);
      return sendBytes(reply.header('content-disposition', `attachment; filename*=UTF-8''${name}`), bytes);
    });

    app.post('/api/trips/import', { schema: IMPORT }, async (request, reply) => {
      const path = join(tmpdir(), `drystage-${process.pid}-import-${randomUUID()}`);
      try {
        const { file } = await takeFile(request, { field: 'trip', path, limits });
        const added = await keepFile(options, file, goneSignal(reply));
        return reply.code(201).send(tripReply(added));
      } finally {
        await rm(path, { force: true });
      }
    });
  };
}

/** What encodeURIComponent leaves as it is and a header's value does not (RFC 8187, 3.2.1). */
const escapeMore = (character: string): string => `%${character.charCodeAt(0).toString(16).toUpperCase()}`;

async function keepFile(
  { store, service }: TripRoutesOptions,
  file: { path: string; source: string },
  signal: AbortSignal,
): Promise<StoredTrip> {
  const { route, extracts, ...trip } = await service.loader.readFile(file, signal);
  return store.addTrip({
    ...trip,
    route: { ...route, hash: hashOf(route.bytes) },
    extracts: extracts.map((name) => ({ id: null, name })),
    beginning: `Opened from ${file.source}`,
  });
}
