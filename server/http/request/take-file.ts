import { createWriteStream } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import type { NamedFile } from '../../app/ports.ts';
import { asDiskProblem } from '../../store/extracts/disk-problem.ts';
import type { Limits } from '../service/limits.ts';
import { fieldOf, invalid, sourceOf, wrongType } from './form.ts';
import { asProblem } from './upload.ts';
import { tooLarge } from './upload-parts.ts';

interface FileAsk {
  /** The form's field that holds the file. */
  field: string;
  /** Where the file goes; its folder is made. */
  path: string;
  limits: Limits;
  /** Ends the taking. */
  signal?: AbortSignal;
  /** Told of each piece that came, and of how the file is called. */
  onBytes?: (bytes: number) => void;
  onName?: (name: string) => void;
}

/** A file that came by a form, and the text "name" that came with it. */
export interface SentFile {
  file: NamedFile;
  name: string | null;
}

/** Takes a form's one file to disk as it comes in. Throws InputProblem; leaves nothing behind then. */
export async function takeFile(request: FastifyRequest, ask: FileAsk): Promise<SentFile> {
  const { field, path, limits } = ask;
  const expected = `one file, "${field}"`;
  if (!request.isMultipart()) throw wrongType(request, 'multipart/form-data', `Send ${expected}`);
  await mkdir(dirname(path), { recursive: true });
  const sent: { file: NamedFile | null; name: string | null } = { file: null, name: null };
  try {
    const parts = request.parts({ limits: { fileSize: limits.fileBytes, files: 2, fields: 2 } });
    for await (const part of parts) {
      if (part.type === 'field' && part.fieldname === 'name') sent.name = String(part.value);
      else if (part.type === 'file' && part.fieldname === field && sent.file === null) {
        sent.file = await toDisk(part, ask);
      } else {
        throw invalid(fieldOf(part.fieldname), 'a part too many', expected, 'Send the file alone');
      }
    }
    if (sent.file === null) throw invalid(field, 'no file', expected, 'Send the file');
    return { file: sent.file, name: sent.name };
  } catch (error) {
    await rm(path, { force: true });
    throw asDiskProblem(asProblem(error));
  }
}

async function toDisk(
  part: MultipartFile,
  { path, limits, signal, onBytes, onName }: FileAsk,
): Promise<NamedFile> {
  const source = sourceOf(part);
  onName?.(source);
  async function* counted(pieces: AsyncIterable<Buffer>) {
    for await (const piece of pieces) {
      onBytes?.(piece.length);
      yield piece;
    }
  }
  await pipeline(part.file, counted, createWriteStream(path), { ...(signal && { signal }) });
  if (part.file.truncated) throw tooLarge(source, limits.fileBytes);
  return { path, source };
}
