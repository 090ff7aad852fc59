import { Type } from '@fastify/type-provider-typebox';

/** A trip of the store. */
export const TripId = Type.Object({ id: Type.String({ examples: ['demo'] }) });

/** The body of a request that says all by its address. */
export const NoBody = Type.Union([Type.Null(), Type.Object({}, { additionalProperties: false })], {
  examples: [{}],
});
