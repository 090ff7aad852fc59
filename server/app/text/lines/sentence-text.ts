import type { Sentence, SentencePart } from '../../../contract/analysis.ts';
import { PRINTED } from '../../../words/printed.ts';
import { figure } from './figures.ts';
import { plain } from './plain.ts';

/** A sentence of the answer as text in metric units. */
export function sentenceText(sentence: Sentence): string {
  return plain(sentence.map(partText).join(''));
}

function partText(part: SentencePart): string {
  if (typeof part === 'string') return part;
  if ('strong' in part) return part.strong;
  const { quantity, unit, as } = part;
  if (unit === 'count') return String(quantity);
  if (as === 'at') return `${unit} ${figure(quantity)}`;
  if (unit === 'days') return PRINTED.lines.days(shortFigure(quantity));
  return `${shortFigure(quantity)} ${unit}`;
}

/** Whole numbers without a decimal. */
const shortFigure = (value: number) => (Number.isInteger(value) ? String(value) : figure(value));
