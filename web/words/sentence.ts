import type { Sentence, SentencePart } from '../../server/contract/analysis.ts';
import {
  formatAtKm,
  formatDays,
  formatFigure,
  formatKm,
  formatLitres,
  type UnitSystem,
} from '../units/units.ts';

/** A part of a sentence as text, its quantity in the reader's units. */
export function partText(part: SentencePart, units: UnitSystem): string {
  if (typeof part === 'string') return part;
  if ('strong' in part) return part.strong;
  switch (part.unit) {
    case 'km':
      return part.as === 'at' ? formatAtKm(part.quantity, units) : formatKm(part.quantity, units);
    case 'l':
      return formatLitres(part.quantity, units);
    case 'days':
      return formatDays(part.quantity);
    case 'count':
      return formatFigure(part.quantity, 0);
  }
}

/** A whole sentence as text, for the live region and files. */
export const sentenceText = (sentence: Sentence, units: UnitSystem): string =>
  sentence.map((part) => partText(part, units)).join('');
