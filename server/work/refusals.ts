import { InputProblem } from '../core/input/problem.ts';

/** No free place in the queue. */
export const busy = (waiting: number) =>
  new InputProblem({
    code: 'too-many-requests',
    came: `a request while ${waiting} others wait`,
    expected: 'a free place in the queue',
    remedy: 'Try again in a few seconds',
  });

/** What helps where reading or analysing is too much. */
export const READ_LESS = 'Use a smaller extract: cut it to the area of the route';
/** What helps where planning is: its time goes with the choices there are. */
export const PLAN_LESS = 'Mark supplies to pass by, count only better evidence, or plan a part of the route';

/** The thread that was at it died. */
export const workerDied = () =>
  new InputProblem({
    code: 'internal',
    came: 'work whose thread ended in the middle of it',
    expected: 'an answer',
    remedy:
      'Try again: another thread has taken its place. If it comes again, report it with the files that it came with',
  });

/** A job over its time. */
export const tooSlow = (timeoutMs: number, remedy: string) =>
  new InputProblem({
    code: 'too-slow',
    came: `work of more than ${timeoutMs / 1000} s`,
    expected: 'less',
    remedy,
  });

/** A job over its worker's memory. */
export const tooLarge = (heapMb: number, remedy: string) =>
  new InputProblem({
    code: 'too-large',
    came: `work that needs more than ${heapMb} MB of memory`,
    expected: 'less',
    remedy,
  });
