import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { plain, shortened } from '../../app/text/lines/plain.ts';
import { InputProblem } from '../../core/input/problem.ts';

/** A request that cannot be used at that place. */
export const invalid = (place: string, came: string, expected: string, remedy: string): InputProblem =>
  new InputProblem({ code: 'request-invalid', place, came, expected, remedy });

/** A request of another type than the route takes. */
export function wrongType(request: FastifyRequest, expected: string, remedy: string): InputProblem {
  const came = request.headers['content-type'] ?? 'no content type';
  return invalid('content-type', shortened(plain(came), 60), expected, remedy);
}

/** The name that the client gave a file, safe to show; never used as a path. */
export function sourceOf({ filename, fieldname }: MultipartFile): string {
  const name = plain((filename ?? '').split(/[/\\]/).at(-1) ?? '');
  return name === '' ? fieldname : shortened(name, 120);
}

/** The name that the client gave a field, safe to show. */
export const fieldOf = (name: string): string => shortened(plain(name), 40);
