import { expect } from 'vitest';
import { learnLog } from '../../../server/app/learn-log.ts';
import type { FuelLog, WaterLog } from '../../../server/contract/answers/log.ts';
import type { Surface } from '../../../server/contract/surface.ts';
import type { Problem } from '../../../server/core/input/problem.ts';

export const csvOf = (...lines: readonly string[]) => `${lines.join('\n')}\n`;

const learn = (text: string, surface: Surface | null, people: number | null) =>
  learnLog(text, 'log.csv', { surface, people });

/** What a log of fill-ups teaches; fails the test when it is refused. */
export function fuelLog(text: string, surface: Surface | null = null): FuelLog {
  const outcome = learn(text, surface, null);
  expect(outcome).toMatchObject({ ok: true, value: { kind: 'fuel' } });
  return (outcome as { value: FuelLog }).value;
}

/** What a water log teaches; fails the test when it is refused. */
export function waterLog(text: string, people: number | null = null): WaterLog {
  const outcome = learn(text, null, people);
  expect(outcome).toMatchObject({ ok: true, value: { kind: 'water' } });
  return (outcome as { value: WaterLog }).value;
}

/** Why a log is refused; fails the test when it is not. */
export function refusal(text: string, surface: Surface | null = null, people: number | null = null): Problem {
  const outcome = learn(text, surface, people);
  expect(outcome).toMatchObject({ ok: false });
  return (outcome as { problem: Problem }).problem;
}

/** A quantile by counting, not by index: the value v for which (n - 1) p of the values' steps lie below it. */
export function independentQuantile(values: readonly number[], p: number): number {
  const sorted = Float64Array.from(values).sort();
  const knots = Array.from(sorted, (value, index) => ({ share: index / (sorted.length - 1), value }));
  const after = knots.findIndex((knot) => knot.share >= p - 1e-12);
  const high = knots[after]!;
  const low = knots[Math.max(0, after - 1)]!;
  if (high.share === low.share || Math.abs(high.share - p) < 1e-12) return high.value;
  const along = (p - low.share) / (high.share - low.share);
  return low.value * (1 - along) + high.value * along;
}
