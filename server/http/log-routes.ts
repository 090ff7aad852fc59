import type { MultipartFile } from '@fastify/multipart';
import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import type { FastifyRequest } from 'fastify';
import { readLearnOptions } from '../app/learn-options.ts';
import { plain, shortened } from '../app/text/plain.ts';
import { LogResult } from '../contract/log.ts';
import { InputProblem } from '../core/input/problem.ts';
import { MAX_LOG_BYTES } from '../io/log-file.ts';
import type { AnalysisService } from './analysis-service.ts';
import { ProblemReply } from './problem-reply.ts';
import { goneSignal, sendBytes } from './reply.ts';
import { valueOrThrow } from './value-or-throw.ts';

const LogQuery = Type.Object({
  surface: Type.Optional(Type.String({ description: 'Fuel: only what was driven on this surface' })),
  people: Type.Optional(Type.String({ description: 'Water: the crew to plan for' })),
});

const invalid = (place: string, came: string, expected: string, remedy: string) =>
  new InputProblem({ code: 'request-invalid', source: null, place, came, expected, remedy });

const tooLarge = (source: string) =>
  new InputProblem({
    code: 'too-large',
    source,
    place: null,
    came: `more than ${MAX_LOG_BYTES} bytes`,
    expected: `at most ${MAX_LOG_BYTES} bytes`,
    remedy: 'Send the log alone, cut to the time that matters',
  });

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
          body: Type.Object({ log: Type.String({ format: 'binary' }) }),
          response: { 200: LogResult, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async (request, reply) => {
        const asked = valueOrThrow(readLearnOptions(queryOf(request.query), 'request-invalid', ''));
        const log = await takeLog(request);
        return sendBytes(reply, await service.learn({ ...asked, ...log }, goneSignal(reply)));
      },
    );
  };
}

/** The query's options; a name that is not known or comes twice is refused. */
function queryOf(query: unknown): { surface?: string; people?: string } {
  const asked: { surface?: string; people?: string } = {};
  for (const [name, value] of Object.entries((query ?? {}) as Record<string, unknown>)) {
    const shown = shortened(plain(name), 40);
    if (name !== 'surface' && name !== 'people') {
      throw invalid(shown, 'an unknown option', 'surface or people', 'Leave it out or correct its name');
    }
    if (typeof value !== 'string') throw invalid(shown, 'several of them', 'one', `Send one ${name}`);
    asked[name] = value;
  }
  return asked;
}

async function takeLog(request: FastifyRequest): Promise<{ bytes: Uint8Array; source: string }> {
  if (Buffer.isBuffer(request.body)) {
    if (request.body.length > MAX_LOG_BYTES) throw tooLarge('log');
    return { bytes: request.body, source: 'log' };
  }
  if (!request.isMultipart()) {
    const came = request.headers['content-type'] ?? 'no content type';
    throw invalid(
      'content-type',
      shortened(plain(came), 60),
      'text/csv, or multipart/form-data with the file "log"',
      'Send the log as one of the two',
    );
  }
  let log: { bytes: Uint8Array; source: string } | null = null;
  for await (const part of request.parts({ limits: { fileSize: MAX_LOG_BYTES, files: 2, fields: 2 } })) {
    if (part.type !== 'file' || part.fieldname !== 'log' || log !== null) {
      const came = log !== null && part.fieldname === 'log' ? 'a second log' : 'a part that is not the log';
      throw invalid(shortened(plain(part.fieldname), 40), came, 'one file, "log"', 'Send the log alone');
    }
    const source = sourceOf(part);
    const bytes = await part.toBuffer().catch(() => null);
    if (bytes === null || part.file.truncated) throw tooLarge(source);
    log = { bytes, source };
  }
  if (log === null) throw invalid('log', 'no log', 'one file, "log"', 'Send the log');
  return log;
}

/** The name that the client gave the file, safe to show. */
function sourceOf(part: MultipartFile): string {
  const name = plain((part.filename ?? '').split(/[/\\]/).at(-1) ?? '');
  return name === '' ? 'log' : shortened(name, 120);
}
