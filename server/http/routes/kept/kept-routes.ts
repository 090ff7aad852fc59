import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import { addTrips } from './add-trip.ts';
import { changeTrips } from './change-trips.ts';
import { copyTrips } from './copy-trips.ts';
import { extractRoutes, extractsOfTrips } from './extract-routes.ts';
import { findTrips } from './find-trips.ts';
import type { TripRoutesOptions } from './options.ts';
import { rigRoutes } from './rig-routes.ts';
import { tripFiles } from './trip-files.ts';

/** All that is kept: trips, extracts and rigs. */
export function keptRoutes(options: TripRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    await app.register(findTrips(options));
    await app.register(addTrips(options));
    await app.register(changeTrips(options));
    await app.register(copyTrips(options));
    await app.register(tripFiles(options));
    await app.register(extractRoutes(options));
    await app.register(extractsOfTrips(options));
    await app.register(rigRoutes(options.store));
  };
}
