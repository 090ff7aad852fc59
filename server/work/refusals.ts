import { InputProblem, type ProblemCode } from '../core/input/problem.ts';

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

/** What helps where reading or analysing is too much. */
export const READ_LESS = 'Use a smaller extract: cut it to the area of the route';
/** What helps where planning is: its time goes with the choices there are. */
export const PLAN_LESS = 'Mark supplies to pass by, count only better evidence, or plan a part of the route';

/** A job over its time. */
export const tooSlow = (timeoutMs: number, remedy: string) =>
  refusal('too-slow', `work of more than ${timeoutMs / 1000} s`, 'less', remedy);

/** A job over its worker's memory. */
export const tooLarge = (heapMb: number, remedy: string) =>
  refusal('too-large', `work that needs more than ${heapMb} MB of memory`, 'less', remedy);
