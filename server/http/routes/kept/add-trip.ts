import { readFile } from 'node:fs/promises';
import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { KeptTripReply } from '../../../contract/kept.ts';
import type { StoredTrip } from '../../../store/port/port.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { goneSignal } from '../../reply/reply.ts';
import { PROBLEMS, tripReply } from '../../reply/trip-reply.ts';
import { streamed } from '../../request/streamed.ts';
import { takeUpload, type Upload } from '../../request/upload.ts';
import { hashOf } from '../../service/demo-trip.ts';
import type { TripRoutesOptions } from './options.ts';

const binary = Type.String({ format: 'binary' });
const TripForm = Type.Object({
  route: binary,
  extract: Type.Optional(Type.Array(binary)),
  kept: Type.Optional(Type.Array(Type.String(), { description: 'Ids of kept extracts' })),
  rig: Type.String({ description: 'The rig as YAML or JSON: text or a file' }),
  trip: Type.Optional(Type.String({ description: 'The trip as YAML or JSON: text or a file' })),
  name: Type.Optional(Type.String({ description: "The trip's name; the route's file name when left out" })),
});

const ADD = {
  summary: 'Read a route with extracts, sent or kept, and keep them as a trip',
  consumes: ['multipart/form-data'],
  body: streamed(TripForm),
  response: { 201: KeptTripReply, ...PROBLEMS },
};

/** New trips from files. */
export function addTrips(options: TripRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post('/api/trips', { schema: ADD }, async (request, reply) => {
      const upload = await takeUpload(request, options.limits, 'trip');
      try {
        const added = await addTrip(options, upload, goneSignal(reply));
        return reply.code(201).send(tripReply(added));
      } finally {
        await upload.discard();
      }
    });
  };
}

async function addTrip(
  { store, service }: TripRoutesOptions,
  upload: Upload,
  signal: AbortSignal,
): Promise<StoredTrip> {
  const { route } = upload;
  const kept = upload.kept.map((id) => foundOrThrow(store.extracts.get(id), 'extract'));
  const files = kept.map(async (extract) => ({
    path: await store.extracts.fileOf(extract),
    source: extract.name,
  }));
  const extracts = [...(await Promise.all(files)), ...upload.extracts];
  const plan = await service.readPlan(upload, signal);
  const bytes = new Uint8Array(await readFile(route.path));
  const give = await service.loader.readToKeep({ route, maps: null, extracts, notice: null }, signal);
  const added = store.addTrip({
    ...{ ...plan, maps: give.maps, notice: null },
    name: nameOf(upload),
    route: { fileName: route.source, hash: hashOf(bytes), bytes },
    extracts: [
      ...kept.map(({ id, name }) => ({ id, name })),
      ...upload.extracts.map(({ source }) => ({ id: null, name: source })),
    ],
    beginning: `Read from ${route.source}`,
  });
  service.loader.remember(added, give.packed);
  return added;
}

/** Characters of a trip's name, see the contract. */
const NAME_CHARACTERS = 120;

function nameOf({ name, route }: Pick<Upload, 'name' | 'route'>): string {
  const wanted = name?.trim() ?? '';
  return (wanted === '' ? route.source.replace(/\.gpx$/i, '') : wanted).slice(0, NAME_CHARACTERS);
}
