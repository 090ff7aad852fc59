import type { LogFences, LogRates } from '../../contract/answers/log.ts';
import type { Phrase } from '../phrases/phrases.ts';

/**
 * The p-quantile (p from 0 to 1) of values that are not empty: linear between the order statistics, at position
 * (n - 1) p from 0. Definition 7 of R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American
 * Statistician 50 (1996) 361-365 (from memory).
 */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const position = (sorted.length - 1) * p;
  const below = Math.floor(position);
  const low = sorted[below];
  if (low === undefined) throw new Error('no quantile of nothing');
  const high = sorted[below + 1] ?? low;
  return low + (position - below) * (high - low);
}

/** 10th, 50th and 90th percentile, each value counting once. */
export const ratesOf = (values: readonly number[]): LogRates => ({
  low: quantile(values, 0.1),
  typical: quantile(values, 0.5),
  high: quantile(values, 0.9),
});

/** Beyond the quartiles by this many times their distance a value is an outlier (Tukey's rule, from memory). */
const FENCE = 1.5;

/** Tukey's fences: values outside are outliers. */
export function fencesOf(values: readonly number[]): LogFences {
  const lower = quantile(values, 0.25);
  const upper = quantile(values, 0.75);
  const reach = FENCE * (upper - lower);
  return { below: lower - reach, above: upper + reach };
}

export const isOutlier = (value: number, fences: LogFences): boolean =>
  value < fences.below || value > fences.above;

/** Fewer than this many give no percentiles worth the name (ours). */
export const LEAST_COUNT = 5;

/** What is meant by the three rates and by outliers. */
export const percentileMethod = (each: 'interval' | 'line'): Phrase[] => [
  { phrase: 'log-percentiles', facts: { each } },
  { phrase: 'log-fences', facts: { fence: FENCE } },
];
