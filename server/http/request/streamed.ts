import { type TSchema, type TUnsafe, Type } from '@fastify/type-provider-typebox';

/**
 * A body that its route takes from the wire by itself, such as a form of files: the schema documents it, nothing holds it
 * against that, and so its type is unknown.
 */
export const streamed = (schema: TSchema): TUnsafe<unknown> =>
  Type.Unsafe<unknown>({ ...schema, 'x-streamed': true });

export const isStreamed = (schema: TSchema): boolean => 'x-streamed' in schema;
