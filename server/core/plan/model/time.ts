import type { MipSolver } from './mip.ts';

export interface SolveOptions {
  readonly solver: MipSolver;
  /** For all that is asked. */
  readonly seconds: number;
  /** Seconds that have passed since some moment. */
  readonly clock: () => number;
}

/** The time there is, from now on. */
export interface Timer {
  /** Seconds that are left; negative where it is over. */
  readonly leftS: () => number;
  /** The options with what is left, nothing where it is over. */
  readonly rest: () => SolveOptions;
}

export function timerOf(options: SolveOptions): Timer {
  const { seconds, clock } = options;
  const startS = clock();
  const leftS = () => seconds - (clock() - startS);
  return { leftS, rest: () => ({ ...options, seconds: Math.max(0, leftS()) }) };
}
