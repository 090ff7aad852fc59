import type { TSchema } from '@fastify/type-provider-typebox';
import type { FastifySchemaCompiler } from 'fastify';
import { misfitOf } from '../../app/input/check-shape.ts';
import type { ShapeFinding } from '../../app/input/explain-shape.ts';
import type { FileKind } from '../../contract/file-kind.ts';
import { InputProblem, type ProblemCode, type ProblemParts } from '../../core/input/problem.ts';
import { fieldOf } from './form.ts';
import { isStreamed } from './streamed.ts';

const FILE_CODES: Record<FileKind, ProblemCode> = { rig: 'rig-invalid', trip: 'trip-invalid' };
/** A key in a place is cut to this many characters: a client may send very long ones. */
const PLACE_CHARACTERS = 41;

/**
 * The server's validator: holds each part of a request (body, params, query) against its route's schema, so that what
 * comes to a handler is what its type says. A misfit is the problem that the client gets.
 */
export const holdRequest: FastifySchemaCompiler<TSchema> = ({ schema, httpPart }) => {
  if (isStreamed(schema)) return (value) => ({ value });
  const isBody = httpPart === undefined || httpPart === 'body';
  return (value) => {
    const finding = misfitOf(schema, value);
    if (finding === null) return { value };
    const place = isBody ? bodyPlace(finding.path) : fieldOf(finding.path.slice(1));
    return { error: new InputProblem(problemIn(finding, place)) };
  };
};

const bodyPlace = (path: string) => (path === '' ? 'the request' : path.slice(0, PLACE_CHARACTERS));

/** A misfit in a rig or trip is told as of a file of its own; one outside of them is the request's. */
function problemIn({ file, path, came, expected, remedy }: ShapeFinding, place: string): ProblemParts {
  if (file === null) return { code: 'request-invalid', place, came, expected, remedy };
  const last = file.at.at(-1);
  // One of several is named by its number from 1.
  const source = typeof last === 'number' ? `${file.kind} ${last + 1}` : file.kind;
  const code = FILE_CODES[file.kind];
  return { code, source, place: path === '' ? null : path, came, expected, remedy };
}
