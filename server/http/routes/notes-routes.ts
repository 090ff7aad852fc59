import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { notesFile } from '../../app/notes/notes-file.ts';
import { NotesFormat } from '../../contract/answers/field-notes.ts';
import { TripFile } from '../../contract/trip.ts';
import { mergeNotes } from '../../core/notes/merge-notes.ts';
import { MAX_NOTES_BYTES, readNotes } from '../../io/notes/read-notes.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';

const PROBLEMS = { '4xx': ProblemReply, '5xx': ProblemReply };

const TYPES: Record<NotesFormat, string> = {
  gpx: 'application/gpx+xml; charset=utf-8',
  geojson: 'application/geo+json; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
};

const words = (expected: string, remedy: string) => ({
  additionalProperties: false,
  'x-words': { expected, remedy },
});

const CONFIRMED: TripFile = {
  confirmations: [{ id: 'node/19', on: '2027-03-01', works: true, by: 'Ann', words: 'diesel till six' }],
};

const ExportBody = Type.Object(
  { trip: TripFile, format: NotesFormat },
  {
    ...words('{ "trip": …, "format": "gpx", "geojson" or "csv" }', 'Send the trip and the format as JSON'),
    examples: [{ trip: CONFIRMED, format: 'gpx' }],
  },
);

const ImportBody = Type.Object(
  {
    trip: TripFile,
    /** The whole text of the file. */
    text: Type.String({ maxLength: MAX_NOTES_BYTES }),
    source: Type.Optional(Type.String({ maxLength: 200 })),
  },
  {
    ...words(
      '{ "trip": …, "text": …, "source": … }',
      'Send the trip, and the text of the file with its name',
    ),
    examples: [
      {
        trip: CONFIRMED,
        text: 'noteOf,id,on,works,by\r\nconfirmations,node/7,2027-03-02,true,Bert\r\n',
        source: 'notes.csv',
      },
    ],
  },
);

/** What goes out of a trip and into another: notes as files. */
export function notesRoutes(today: () => string): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/notes/export',
      {
        schema: {
          summary: 'The notes of a trip as a file: GPX, GeoJSON or CSV',
          body: ExportBody,
          response: { 200: Type.String(), ...PROBLEMS },
        },
      },
      async ({ body: { trip, format } }, reply) =>
        reply
          .type(TYPES[format])
          .serializer((text: string) => text)
          .send(notesFile(trip, format)),
    );

    app.post(
      '/api/notes/import',
      {
        bodyLimit: 2 * MAX_NOTES_BYTES,
        schema: {
          summary:
            'A trip with the notes of a file: GPX (waypoints of other programs too), GeoJSON or CSV, by its content',
          body: ImportBody,
          response: {
            200: Type.Object({
              trip: TripFile,
              /** Notes that were new to it, that stand in place of others, and objects of the file that are none. */
              added: Type.Integer(),
              replaced: Type.Integer(),
              others: Type.Integer(),
            }),
            ...PROBLEMS,
          },
        },
      },
      async ({ body: { trip, text, source = 'notes' } }) => {
        const { notes, others } = valueOrThrow(readNotes(Buffer.from(text), source, today()));
        return { ...mergeNotes(trip, notes), others };
      },
    );
  };
}
