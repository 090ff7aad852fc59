import type { RoutePart, RouteSegment } from '../input/sources.ts';
import { numberAt } from '../lists/at.ts';
import type { SpanM } from '../quantity/span.ts';
import { LineGrower } from './line-grower.ts';
import type { SketchySpan } from './route-line.ts';

/** A jump between segments over this length is no road line: no passing is sought on it (design rule). */
export const LONG_BRIDGE_M = 1_000;

/** The line through some parts as it is measured, and what is found on the way. */
export class Measurement {
  readonly line = new LineGrower();
  /** Every jump between segments, however short. */
  readonly bridges: SpanM[] = [];
  /** Steps between two points that are longer than is asked for. */
  readonly sparseSteps: SpanM[] = [];
  /** Bridges over 1 km and sparse steps, in route order. */
  readonly sketchy: SketchySpan[] = [];
  /** Longest step between two points, bridges aside, metres. */
  longestStepM = 0;
  vertices = 0;
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
    if (lengthM(jump) > LONG_BRIDGE_M) this.addSketchy({ kind: 'bridge', ...jump });
  }

  private step(step: SpanM): void {
    this.longestStepM = Math.max(this.longestStepM, lengthM(step));
    if (lengthM(step) <= this.sparseStepM) return;
    this.sparseSteps.push(step);
    this.addSketchy({ kind: 'sparse', ...step });
  }

  /** Joins a span to the one before when it is of the same kind and begins where that ends. */
  private addSketchy(span: SketchySpan): void {
    const last = this.sketchy.at(-1);
    if (last?.kind === span.kind && last.toM === span.fromM) last.toM = span.toM;
    else this.sketchy.push(span);
  }
}

const lengthM = (span: SpanM): number => span.toM - span.fromM;
