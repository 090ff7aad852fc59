import type { Sentence, SentencePart } from '../../../contract/analysis.ts';
import { numberText } from '../../../words/parts/metric.ts';
import { readerText } from '../../../words/parts/reader-figures.ts';
import { printed } from '../../../words/printed.ts';
import { figure, place } from './figures.ts';
import { plain } from './plain.ts';

/** A sentence of the answer as text in the reader's units. */
export function sentenceText(sentence: Sentence): string {
  return plain(sentence.map(partText).join(''));
}

function partText(part: SentencePart): string {
  if (typeof part === 'string') return part;
  if ('strong' in part) return part.strong;
  const { quantity, unit, as } = part;
  if (unit === 'count') return String(quantity);
  if (as === 'at') return place(quantity);
  if (unit === 'days') return printed().lines.days(shortFigure(quantity));
  return readerText([{ figure: quantity, unit, ...(Number.isInteger(quantity) ? {} : ONE_DECIMAL) }]);
}

const ONE_DECIMAL = { decimals: 1, fixed: true } as const;

/** Whole numbers without a decimal. */
const shortFigure = (value: number) => (Number.isInteger(value) ? numberText(value) : figure(value));
