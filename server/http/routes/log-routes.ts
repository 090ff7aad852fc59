import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { readLearnOptions } from '../../app/input/learn-options.ts';
import { LogResult } from '../../contract/answers/log.ts';
import { MAX_LOG_BYTES } from '../../io/log-file.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { streamed } from '../request/streamed.ts';
import { takeLog } from '../request/take-log.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

const once = (name: string, description: string) =>
  Type.Optional(Type.String({ description, 'x-words': { expected: 'one', remedy: `Send one ${name}` } }));

const LogQuery = Type.Object(
  {
    surface: once('surface', 'Fuel: only what was driven on this surface'),
    people: once('people', 'Water: the crew to plan for'),
  },
  {
    additionalProperties: false,
    'x-words': { expected: 'surface or people', remedy: 'Leave it out or correct its name' },
  },
);
const LogForm = Type.Object({ log: Type.String({ format: 'binary' }) });

/** What a log of fill-ups or of water teaches. */
export function logRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    // Of this address alone, and with room above the limit: the refusal is then ours.
    const options = { parseAs: 'buffer' as const, bodyLimit: 2 * MAX_LOG_BYTES };
    app.addContentTypeParser('text/csv', options, (_request, body, done) => done(null, body));

    app.post(
      '/api/logs',
      {
        schema: {
          summary: 'Learn fuel or water use from a log: CSV as the body, or as the file "log" of a form',
          consumes: ['text/csv', 'multipart/form-data'],
          querystring: LogQuery,
          body: streamed(LogForm),
          response: { 200: LogResult, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async (request, reply) => {
        const options = valueOrThrow(readLearnOptions(request.query, 'request-invalid', ''));
        const log = await takeLog(request);
        return sendBytes(reply, await service.learn({ ...options, ...log }, goneSignal(reply)));
      },
    );
  };
}
