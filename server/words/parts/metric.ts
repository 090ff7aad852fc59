import type { Parts, Unit } from './part.ts';
import { digits, isBare, type Setting, setParts } from './setting.ts';

/** The setting of texts in JSON and of the command line. */
export const METRIC: Setting = {
  figure: (part) => {
    const number = digits(part, part.figure);
    return isBare(part) ? number : `${number} ${part.unit}`;
  },
  place: (part) => `km ${digits(part, part.place)}`,
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
