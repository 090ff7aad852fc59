import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import { ExtractKeeper } from '../../service/extract-keeper.ts';
import { addTrips } from './add-trip.ts';
import { changeTrips } from './change-trips.ts';
import { copyTrips } from './copy-trips.ts';
import { extractRoutes, extractsOfTrips } from './extract-routes.ts';
import { findTrips } from './find-trips.ts';
import type { ExtractRoutesOptions } from './options.ts';
import { overpassRoutes } from './overpass-routes.ts';
import { readingRoutes } from './reading-routes.ts';
import { rigRoutes } from './rig-routes.ts';
import { tripFiles } from './trip-files.ts';

type KeptRoutesOptions = Omit<ExtractRoutesOptions, 'keeper'>;

/** All that is kept: trips, extracts and rigs. */
export function keptRoutes({ interpreter, ...options }: KeptRoutesOptions): FastifyPluginAsyncTypebox {
  const { store, service } = options;
  const forExtracts = { ...options, interpreter, keeper: new ExtractKeeper(store, service.loader) };
  return async (app) => {
    // Whether what was written lasts, for whoever wrote it.
    app.addHook('onSend', async (_request, reply) => void reply.header('drystage-keeps', store.state.keeps));
    await app.register(findTrips(options));
    await app.register(addTrips(options));
    await app.register(changeTrips(options));
    await app.register(copyTrips(options));
    await app.register(tripFiles(options));
    await app.register(extractRoutes(forExtracts));
    await app.register(readingRoutes(forExtracts));
    await app.register(overpassRoutes(forExtracts));
    await app.register(extractsOfTrips(options));
    await app.register(rigRoutes(store));
  };
}
