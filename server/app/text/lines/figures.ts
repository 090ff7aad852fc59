import type { Evidence, Verdict } from '../../../contract/common.ts';

export const VERDICT_WORDS: Record<Verdict, string> = {
  enough: 'enough',
  'into-reserve': 'into reserve',
  short: 'short',
  unknown: 'unknown',
};

export const EVIDENCE_WORDS: Record<Evidence, string> = {
  confirmed: 'confirmed',
  stated: 'stated',
  implied: 'implied',
  doubtful: 'doubtful',
};

/** One decimal; a figure that is not zero but would print as zero keeps two more, so that its sign has a reason. */
export function figure(value: number): string {
  const text = value.toFixed(1);
  if (Number(text) !== 0) return text;
  const finer = value.toFixed(3);
  return Number(finer) === 0 ? '0.0' : finer;
}

export const km = (value: number): string => `${figure(value)} km`;
export const litres = (value: number): string => `${figure(value)} l`;
