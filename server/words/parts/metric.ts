import { UNIT_WORDS } from '../de/units/unit-words.ts';
import { type Language, language } from './language.ts';
import type { Figure, Parts, Unit } from './part.ts';
import { digits, isBare, type Setting, setParts } from './setting.ts';

interface Manner {
  /** Before decimals. */
  readonly decimalSign: string;
  /** Units that are words of the language, beside one and beside another figure. */
  readonly units: Partial<Record<Unit, readonly [one: string, other: string]>>;
}

/** How each language writes figures. */
const MANNERS: Readonly<Record<Language, Manner>> = {
  en: { decimalSign: '.', units: {} },
  de: { decimalSign: ',', units: UNIT_WORDS },
};

/** A number as the language writes it, with its sign before decimals. */
export const numberText = (number: string | number): string =>
  String(number).replace('.', MANNERS[language()].decimalSign);

const unitBeside = (number: string, unit: Unit): string =>
  MANNERS[language()].units[unit]?.[number === '1' ? 0 : 1] ?? unit;

/** A figure of a sentence in its metric unit. */
export function metricFigure(part: Figure): string {
  const number = numberText(digits(part, part.figure));
  return isBare(part) ? number : `${number} ${unitBeside(number, part.unit)}`;
}

/** The setting of texts in JSON and of the command line. */
const METRIC: Setting = {
  figure: metricFigure,
  place: (part) => `km ${numberText(digits(part, part.place))}`,
};

/** Parts as one line of text in metric units: what `text` in JSON says, and the command line prints. */
export const metricText = (all: Parts): string => setParts(all, METRIC);

/** Whether some reader has it otherwise: in other units, or without tags. */
export const isReadersOwn = (all: Parts): boolean =>
  all.some(
    (part) =>
      'place' in part ||
      ('figure' in part && !SAME_EVERYWHERE.includes(part.unit)) ||
      ('text' in part && part.exact === true),
  );

/** Units that all readers have alike. */
const SAME_EVERYWHERE: readonly Unit[] = ['count', '%', 'days', 'h', 'min'];
