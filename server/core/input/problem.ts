/** Stable codes of all the refusals; the document `tests`-checked against this list is server/http/PROBLEMS.md. */
export const PROBLEM_CODES = [
  'file-missing',
  'file-unreadable',
  'empty-file',
  'unknown-format',
  'html-page',
  'not-xml',
  'xml-broken',
  'xml-entity',
  'not-gpx',
  'gpx-no-points',
  'gpx-one-point',
  'gpx-too-long',
  'coordinate-out-of-range',
  'part-unknown',
  'pbf-broken',
  'pbf-truncated',
  'pbf-oversized',
  'pbf-compression',
  'pbf-feature',
  'osm-broken',
  'json-broken',
  'json-shape',
  'gzip-broken',
  'bzip2-broken',
  'expands-too-far',
  'yaml-broken',
  'rig-invalid',
  'trip-invalid',
  'log-invalid',
  'notes-invalid',
  'command-invalid',
  'request-invalid',
  'too-large',
  'too-slow',
  'too-many-requests',
  'not-found',
  'not-signed-in',
  'not-from-here',
  'changed-elsewhere',
  'name-taken',
  'trip-file-invalid',
  'trip-file-too-new',
  'store-full',
  'store-unusable',
  'store-too-new',
  'called-off',
  'overpass-refused',
  'overpass-busy',
  'port-taken',
  'internal',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** Why an input cannot be used: what came, what was expected, what to do. One sentence each, no full stop. */
export interface Problem {
  code: ProblemCode;
  /** The file or field as the user named it. */
  source: string | null;
  /** Where in it: "line 12, column 5", "byte 4096", "/fuel/tanks/0/litres". */
  place: string | null;
  came: string;
  expected: string;
  remedy: string;
  /** True for an unusual figure at `place` that may be meant so: it is taken once `sure` of its file lists it. */
  vouchable?: boolean;
}

/** A problem's parts: source and place may be left out where there is none. */
export type ProblemParts = Omit<Problem, 'source' | 'place'> & Partial<Pick<Problem, 'source' | 'place'>>;

export const problemOf = (parts: ProblemParts): Problem => ({ source: null, place: null, ...parts });

/** Carries a problem up through a reader; caught where the reader's outcome is made. */
export class InputProblem extends Error {
  readonly problem: Problem;
  constructor(parts: ProblemParts) {
    const problem = problemOf(parts);
    super(problemLine(problem));
    this.name = 'InputProblem';
    this.problem = problem;
  }
}

/** The problem as one line: file, place, what came, what was expected, remedy. */
export function problemLine(problem: Problem): string {
  const where = [problem.source, problem.place].filter((part) => part !== null).join(', ');
  const line = `${where === '' ? '' : `${where}: `}${problem.came}; expected ${problem.expected}. ${problem.remedy}.`;
  return line.replace(/\s+/g, ' ');
}

/** An expected failure is a value. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; problem: Problem };

/** The outcome that is a problem. */
export const refused = (parts: ProblemParts): Outcome<never> => ({ ok: false, problem: problemOf(parts) });
