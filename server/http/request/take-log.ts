import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { InputProblem } from '../../core/input/problem.ts';
import { MAX_LOG_BYTES } from '../../io/log-file.ts';
import { fieldOf, invalid, sourceOf, wrongType } from './form.ts';

/** A log's bytes and what the client called it. */
export interface SentLog {
  bytes: Uint8Array;
  source: string;
}

const ONE_FILE = 'one file, "log"';

const tooLarge = (source: string) =>
  new InputProblem({
    code: 'too-large',
    source,
    came: `more than ${MAX_LOG_BYTES} bytes`,
    expected: `at most ${MAX_LOG_BYTES} bytes`,
    remedy: 'Send the log alone, cut to the time that matters',
  });

/** Takes a log that is the body or the one file of a form. Throws InputProblem. */
export async function takeLog(request: FastifyRequest): Promise<SentLog> {
  if (Buffer.isBuffer(request.body)) {
    if (request.body.length > MAX_LOG_BYTES) throw tooLarge('log');
    return { bytes: request.body, source: 'log' };
  }
  if (!request.isMultipart()) {
    const expected = 'text/csv, or multipart/form-data with the file "log"';
    throw wrongType(request, expected, 'Send the log as one of the two');
  }
  return takeFile(request);
}

async function takeFile(request: FastifyRequest): Promise<SentLog> {
  let log: SentLog | null = null;
  for await (const part of request.parts({ limits: { fileSize: MAX_LOG_BYTES, files: 2, fields: 2 } })) {
    if (part.type !== 'file' || part.fieldname !== 'log' || log !== null) {
      const came = log !== null && part.fieldname === 'log' ? 'a second log' : 'a part that is not the log';
      throw invalid(fieldOf(part.fieldname), came, ONE_FILE, 'Send the log alone');
    }
    log = await readPart(part);
  }
  if (log === null) throw invalid('log', 'no log', ONE_FILE, 'Send the log');
  return log;
}

async function readPart(part: MultipartFile): Promise<SentLog> {
  const source = sourceOf(part);
  const bytes = await part.toBuffer().catch(() => null);
  if (bytes === null || part.file.truncated) throw tooLarge(source);
  return { bytes, source };
}
