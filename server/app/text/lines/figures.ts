import { PRINTED } from '../../../words/printed.ts';

const WORDS = PRINTED.lines;

export const VERDICT_WORDS = WORDS.verdicts;
export const EVIDENCE_WORDS = WORDS.evidence;

/** One decimal; a figure that is not zero but would print as zero keeps two more, so that its sign has a reason. */
export function figure(value: number): string {
  const text = value.toFixed(1);
  if (Number(text) !== 0) return text;
  const finer = value.toFixed(3);
  return Number(finer) === 0 ? '0.0' : finer;
}

export const km = (value: number): string => WORDS.km(figure(value));
export const litres = (value: number): string => WORDS.litres(figure(value));
