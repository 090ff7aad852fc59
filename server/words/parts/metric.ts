import type { Figure, Part, Parts, Place, Unit } from './part.ts';

/** A number with at most (`fixed`: exactly) so many decimals; all it has where nothing is said. */
function digits({ decimals, fixed }: Pick<Figure, 'decimals' | 'fixed'>, value: number): string {
  if (decimals === undefined) return String(value);
  if (fixed === true) return value.toFixed(decimals);
  const scale = 10 ** decimals;
  return String(Math.round(value * scale) / scale);
}

function figureText(part: Figure): string {
  const number = digits(part, part.figure);
  if (part.bare === true || part.unit === 'count') return number;
  return `${number} ${part.unit}`;
}

const placeText = (part: Place): string => `km ${digits(part, part.place)}`;

function partText(part: Part): string {
  if ('figure' in part) return figureText(part);
  if ('place' in part) return placeText(part);
  return part.text;
}

/** Parts as one line of text in metric units: what `text` in JSON says, and the command line prints. */
export const metricText = (all: Parts): string => all.map(partText).join('');

/** Whether a reader's units would change anything in it. */
export const hasFigures = (all: Parts): boolean =>
  all.some((part) => 'place' in part || ('figure' in part && !SAME_EVERYWHERE.includes(part.unit)));

/** Units that all readers have alike. */
const SAME_EVERYWHERE: readonly Unit[] = ['count', '%', 'days', 'h', 'min'];
