import { numberAt } from '../../lists/at.ts';
import { chordToVertex2, type RouteIndex, type StepRun } from '../route-index.ts';
import type { PassingFilter } from './passing-filter.ts';
import { overGroundM, type Viewpoint } from './viewpoint.ts';

/** What is looked at, and from where. */
export interface Look {
  readonly index: RouteIndex;
  /** 1 for steps on which no passing is sought. */
  readonly unsought: Uint8Array;
  readonly from: Viewpoint;
}

const AT_START = 0;
const DOWN = 1;
const UP = 2;

/** Follows the distance from a viewpoint step by step (squared chords) and tells a filter where it turns. */
class TurnTeller {
  private direction: typeof AT_START | typeof DOWN | typeof UP = AT_START;
  private readonly from: Viewpoint;
  private readonly filter: PassingFilter;

  constructor(from: Viewpoint, filter: PassingFilter) {
    this.from = from;
    this.filter = filter;
  }

  /** A step of a length; by how much the distance drops over it. The distance falls along it, then it rises. */
  step(step: number, length2: number, here2: number, drop2: number): void {
    if (length2 <= 0) return;
    if (drop2 <= -length2) {
      if (this.direction !== UP) this.filter.low(step, 0, overGroundM(this.from, here2));
      this.direction = UP;
      return;
    }
    if (this.direction !== DOWN) this.filter.high(overGroundM(this.from, here2));
    this.direction = DOWN;
    if (drop2 >= length2) return;
    const share = (drop2 + length2) / (2 * length2);
    this.filter.low(step, share, overGroundM(this.from, here2 - share * share * length2));
    this.direction = UP;
  }

  /** The line ends with a step, or goes on where nothing is sought. */
  end(lastStep: number, here2: number): void {
    if (this.direction === DOWN) this.filter.low(lastStep, 1, overGroundM(this.from, here2));
    else if (this.direction === UP) this.filter.high(overGroundM(this.from, here2));
    this.direction = AT_START;
  }
}

/**
 * Tells the filter every turning point of the distance from a viewpoint to the line over a run of steps. Along one
 * step the distance falls and then rises, so highs lie on vertices only.
 * Steps marked `unsought` are passed over: the ends of what adjoins them are lows or highs like ends of the line.
 */
export function tellTurns({ index, unsought, from }: Look, run: StepRun, filter: PassingFilter): void {
  const { xyz, chord2 } = index;
  const teller = new TurnTeller(from, filter);
  let here2 = chordToVertex2(xyz, run.firstStep, from);
  for (let step = run.firstStep; step < run.endStep; step += 1) {
    const next2 = chordToVertex2(xyz, step + 1, from);
    if (unsought[step] === 1) teller.end(step - 1, here2);
    else teller.step(step, numberAt(chord2, step), here2, here2 - next2);
    here2 = next2;
  }
  teller.end(run.endStep - 1, here2);
}
