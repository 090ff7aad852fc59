import type { RoutePart, RouteSegment } from '../../input/sources.ts';
import { numberAt } from '../../lists/at.ts';
import type { SpanM } from '../../quantity/span.ts';
import { LineGrower } from './line-grower.ts';

/** A jump between segments over this length is no road line: no passing is sought on it (design rule). */
export const LONG_BRIDGE_M = 1_000;

/** No place of a trip lies farther along (contract): more than twice round the Earth. */
export const LONGEST_ROUTE_M = 100_000_000;

/** The line through some parts as it is measured, and what is found on the way. */
export class Measurement {
  readonly line = new LineGrower();
  /** Every jump between segments, however short. */
  readonly bridges: SpanM[] = [];
  /** Steps between two points that are longer than is asked for. */
  readonly sparseSteps: SpanM[] = [];
  /** Longest step between two points, bridges aside, metres. */
  longestStepM = 0;
  vertices = 0;
  /** It was not followed to its end. */
  isTooLong = false;
  /** How many of the parts have points. */
  parts = 0;
  private readonly sparseStepM: number;

  constructor(parts: readonly RoutePart[], sparseStepM: number) {
    this.sparseStepM = sparseStepM;
    for (const part of parts) {
      const before = this.vertices;
      for (const segment of part.segments) this.follow(segment);
      if (this.vertices > before) this.parts += 1;
    }
  }

  /** The longest sparse step, the first of ties; undefined when there is none. */
  get longestSparse(): SpanM | undefined {
    const [first, ...others] = this.sparseSteps;
    return others.reduce(
      (longest, step) => (lengthM(step) > lengthM(longest ?? step) ? step : longest),
      first,
    );
  }

  private follow(segment: RouteSegment): void {
    for (const [point, lon] of segment.lon.entries()) {
      if (this.line.lengthM > LONGEST_ROUTE_M) {
        this.isTooLong = true;
        return;
      }
      const isJump = point === 0;
      const fromM = this.line.lengthM;
      const unsoughtOverM = isJump ? LONG_BRIDGE_M : Infinity;
      this.line.extend(lon, numberAt(segment.lat, point), unsoughtOverM, segment.ele[point]);
      this.vertices += 1;
      const step: SpanM = { fromM, toM: this.line.lengthM };
      if (lengthM(step) === 0) continue;
      if (isJump) this.bridge(step);
      else this.step(step);
    }
  }

  private bridge(jump: SpanM): void {
    this.bridges.push(jump);
  }

  private step(step: SpanM): void {
    this.longestStepM = Math.max(this.longestStepM, lengthM(step));
    if (lengthM(step) <= this.sparseStepM) return;
    this.sparseSteps.push(step);
  }
}

const lengthM = (span: SpanM): number => span.toM - span.fromM;
