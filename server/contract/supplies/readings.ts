import { type Static, Type } from 'typebox';

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);

/** An extract on its way to be kept, and how that goes on. */
export const ExtractReading = Type.Object({
  /** For DELETE /api/extracts/readings/{id}, which calls it off. */
  id: Type.String(),
  name: Type.String(),
  startedAt: Type.String(),
  /** asking: of an Overpass server; coming: its file is sent; reading: what it holds; keeping: what was found is written down. */
  stage: Type.Union([
    Type.Literal('asking'),
    Type.Literal('coming'),
    Type.Literal('reading'),
    Type.Literal('keeping'),
  ]),
  /** Of the file, in the stages coming and reading. */
  doneBytes: Type.Integer(),
  totalBytes: nullable(Type.Integer()),
  /** Supplies, roads and places that are written down, and in all where that is known. */
  objects: Type.Integer(),
  totalObjects: nullable(Type.Integer()),
  /** Of the stage: bytes, objects or queries a second, and how long it lasts at that rate. Null while that is not known. */
  perSecond: nullable(Type.Number()),
  leftSeconds: nullable(Type.Number()),
  /** Of an Overpass server: queries that are answered, and in all. */
  asking: nullable(
    Type.Object({
      done: Type.Integer(),
      requests: Type.Integer(),
      /** Nothing is asked until then, since the server is busy or its answer broke off. */
      waiting: nullable(
        Type.Object({
          until: Type.String(),
          why: Type.Union([Type.Literal('busy'), Type.Literal('broken')]),
          detail: Type.String(),
        }),
      ),
    }),
  ),
});
export type ExtractReading = Static<typeof ExtractReading>;

/** An event of GET /api/extracts/readings (server-sent events, named "readings"): all that are on their way. */
export const ExtractReadings = Type.Object({ reading: Type.Array(ExtractReading) });
export type ExtractReadings = Static<typeof ExtractReadings>;
