import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyRequest } from 'fastify';
import { MAX_YAML_BYTES } from '../../io/yaml-text.ts';
import type { Limits } from '../service/limits.ts';
import { invalid, wrongType } from './form.ts';
import { FIELDS, tooLarge, type UploadKind, UploadParts, type UploadValues } from './upload-parts.ts';

/** What an analysis request sent; its files lie in a folder of their own until `discard`. */
export interface Upload extends UploadValues {
  discard: () => Promise<void>;
}

/** Takes a multipart request to disk, part by part as it comes in. Throws InputProblem; leaves nothing behind then. */
export async function takeUpload(
  request: FastifyRequest,
  limits: Limits,
  kind: UploadKind = 'analysis',
): Promise<Upload> {
  if (!request.isMultipart()) throw wrongType(request, 'multipart/form-data', `Send ${FIELDS[kind]}`);
  const length = Number(request.headers['content-length'] ?? 0);
  if (length > limits.requestBytes) throw tooLarge('the request', limits.requestBytes);
  const folder = await mkdtemp(join(tmpdir(), `drystage-${process.pid}-`));
  const discard = () => rm(folder, { recursive: true, force: true });
  try {
    return { ...(await takeParts(request, new UploadParts(folder, limits, kind), limits)), discard };
  } catch (error) {
    await discard();
    throw asProblem(error);
  }
}

/** A form's parts with an end that came too early told as what it is. */
export const asProblem = (error: unknown): unknown =>
  isCutShort(error)
    ? invalid('the form', 'a form that ends too early', 'a whole multipart form', 'Send it again')
    : error;

async function takeParts(
  request: FastifyRequest,
  gathering: UploadParts,
  limits: Limits,
): Promise<UploadValues> {
  const parts = request.parts({
    limits: {
      fileSize: limits.fileBytes,
      files: limits.extracts + 3,
      fields: 8 + limits.extracts,
      fieldSize: MAX_YAML_BYTES,
    },
  });
  for await (const part of parts) await gathering.take(part);
  return gathering.whole();
}

/** The form's parser and streams have no code for a body that ends inside a part. */
function isCutShort(error: unknown): boolean {
  return error instanceof Error && /unexpected end of|premature close|multipart: /i.test(error.message);
}
