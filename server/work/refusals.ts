import { InputProblem, type ProblemCode } from '../core/problem.ts';

const refusal = (code: ProblemCode, came: string, expected: string, remedy: string) =>
  new InputProblem({ code, source: null, place: null, came, expected, remedy });

/** No free place in the queue. */
export const busy = (waiting: number) =>
  refusal(
    'too-many-requests',
    `a request while ${waiting} others wait`,
    'a free place in the queue',
    'Try again in a few seconds',
  );

/** A job over its time. */
export const tooSlow = (timeoutMs: number) =>
  refusal(
    'too-slow',
    `work of more than ${timeoutMs / 1000} s`,
    'less',
    'Use a smaller extract: cut it to the area of the route',
  );

/** A job over its worker's memory. */
export const tooLarge = (heapMb: number) =>
  refusal(
    'too-large',
    `files that need more than ${heapMb} MB of memory`,
    'less',
    'Use a smaller extract: cut it to the area of the route',
  );
