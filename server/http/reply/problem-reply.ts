import type { FastifyReply } from 'fastify';
import { type Static, Type } from 'typebox';
import type { Problem, ProblemCode } from '../../core/input/problem.ts';
import { plain } from '../../core/input/unseen.ts';

/** A problem as RFC 9457 has it, with what it concerns beside it. */
export const ProblemReply = Type.Object(
  {
    /** Names the kind of problem; `urn:drystage:problem:` and the code. */
    type: Type.String(),
    title: Type.String(),
    status: Type.Integer(),
    detail: Type.String(),
    code: Type.String(),
    source: Type.Union([Type.String(), Type.Null()]),
    place: Type.Union([Type.String(), Type.Null()]),
    remedy: Type.String(),
    /** True for an unusual figure that is taken once `place` stands in the list `sure` of the rig or trip. */
    vouchable: Type.Boolean(),
  },
  { $id: 'Problem' },
);
export type ProblemReply = Static<typeof ProblemReply>;

/** Status and title of every code; server/http/PROBLEMS.md lists the same. */
export const PROBLEM_KINDS: Record<ProblemCode, { status: number; title: string }> = {
  'file-missing': { status: 422, title: 'File not there' },
  'file-unreadable': { status: 422, title: 'File cannot be read' },
  'empty-file': { status: 422, title: 'Empty file' },
  'unknown-format': { status: 422, title: 'Format not known' },
  'html-page': { status: 422, title: 'A web page instead of data' },
  'not-xml': { status: 422, title: 'Not XML' },
  'xml-broken': { status: 422, title: 'Broken XML' },
  'xml-entity': { status: 422, title: 'XML with a document type or entities' },
  'not-gpx': { status: 422, title: 'Not GPX' },
  'gpx-no-points': { status: 422, title: 'No points in the route' },
  'gpx-one-point': { status: 422, title: 'Only one point in the route' },
  'gpx-too-long': { status: 422, title: 'Too long a route' },
  'coordinate-out-of-range': { status: 422, title: 'Coordinate out of range' },
  'part-unknown': { status: 422, title: 'No such part of the route' },
  'pbf-broken': { status: 422, title: 'Broken pbf' },
  'pbf-truncated': { status: 422, title: 'Truncated pbf' },
  'pbf-oversized': { status: 422, title: 'Oversized pbf block' },
  'pbf-compression': { status: 422, title: 'Compression not supported' },
  'pbf-feature': { status: 422, title: 'Pbf feature not supported' },
  'osm-broken': { status: 422, title: 'Broken OpenStreetMap data' },
  'json-broken': { status: 422, title: 'Broken JSON' },
  'json-shape': { status: 422, title: 'JSON of another kind' },
  'gzip-broken': { status: 422, title: 'Broken gzip' },
  'bzip2-broken': { status: 422, title: 'Broken bzip2' },
  'expands-too-far': { status: 422, title: 'Expands too far' },
  'yaml-broken': { status: 422, title: 'Broken YAML' },
  'rig-invalid': { status: 422, title: 'Rig not usable' },
  'trip-invalid': { status: 422, title: 'Trip not usable' },
  'log-invalid': { status: 422, title: 'Log not usable' },
  'notes-invalid': { status: 422, title: 'Notes not usable' },
  'command-invalid': { status: 400, title: 'Command not understood' },
  'request-invalid': { status: 400, title: 'Request not understood' },
  'too-large': { status: 413, title: 'Too large' },
  'too-slow': { status: 503, title: 'Took too long' },
  'too-many-requests': { status: 429, title: 'Too many requests' },
  'not-found': { status: 404, title: 'Not found' },
  'not-signed-in': { status: 401, title: 'Not signed in' },
  'not-from-here': { status: 403, title: 'Not from here' },
  'changed-elsewhere': { status: 409, title: 'Changed elsewhere' },
  'name-taken': { status: 409, title: 'Name taken' },
  'trip-file-invalid': { status: 422, title: 'Trip file not usable' },
  'trip-file-too-new': { status: 422, title: 'Trip file of a newer program' },
  'store-full': { status: 507, title: 'Disk full' },
  'store-unusable': { status: 503, title: 'Data folder not usable' },
  'store-too-new': { status: 503, title: 'Data folder of a newer program' },
  'called-off': { status: 409, title: 'Called off' },
  'overpass-refused': { status: 502, title: 'Overpass refuses' },
  'overpass-busy': { status: 503, title: 'Overpass is busy' },
  'port-taken': { status: 500, title: 'Port taken' },
  internal: { status: 500, title: 'Fault of the program' },
};

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** The body that tells of a problem; names and texts of files in it are made safe to be shown anywhere. */
function problemBody(told: Problem): ProblemReply {
  const problem = {
    ...told,
    came: plain(told.came),
    source: told.source === null ? null : plain(told.source),
    place: told.place === null ? null : plain(told.place),
    remedy: plain(told.remedy),
  };
  const { status, title } = PROBLEM_KINDS[problem.code];
  const where = [problem.source, problem.place].filter((part) => part !== null).join(', ');
  const what = `${problem.came}; expected ${problem.expected}`;
  return {
    type: `urn:drystage:problem:${problem.code}`,
    title,
    status,
    detail: where === '' ? sentence(what) : `${where}: ${what}.`,
    code: problem.code,
    source: problem.source,
    place: problem.place,
    remedy: sentence(problem.remedy),
    vouchable: problem.vouchable ?? false,
  };
}

/** Sends a problem as application/problem+json with its status; `more` goes beside it (RFC 9457, 3.2). */
export function sendProblem(reply: FastifyReply, problem: Problem, more: object = {}): FastifyReply {
  const body = { ...problemBody(problem), ...more };
  // As bytes: to text the framework would add a charset, which the media type does not have.
  return reply
    .code(body.status)
    .header('content-type', 'application/problem+json')
    .send(Buffer.from(JSON.stringify(body)));
}
