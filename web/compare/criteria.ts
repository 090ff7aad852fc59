import type { ComparedCommodity, ComparedRig } from '../../server/contract/answers/compare.ts';
import type { Verdict } from '../../server/contract/common.ts';
import { t } from '../language/t.ts';
import {
  formatAtKm,
  formatDays,
  formatFigure,
  formatLitres,
  formatMass,
  type UnitSystem,
} from '../units/units.ts';
import { severityOf } from '../words/words.ts';

/** One rig's cell of a criterion: what it says, and how good that is; null where it is not told. */
export interface Cell {
  text: string;
  /** The state or place that the figure is of. */
  second?: string;
  verdict?: Verdict;
  /** The higher the better. */
  score: number | null;
}

export interface Criterion {
  name: string;
  cell: (rig: ComparedRig, units: UnitSystem) => Cell;
}

const NOT_TOLD: Cell = { text: t('not told'), score: null };

function worstGap(of: ComparedCommodity, units: UnitSystem): Cell {
  const { worst } = of;
  const margin =
    worst.marginL < 0
      ? t`${formatLitres(-worst.marginL, units)} too little`
      : t`${formatLitres(worst.marginL, units)} above the reserve`;
  return {
    text: margin,
    second: t`${formatAtKm(worst.from.atKm, units)} to ${formatAtKm(worst.to.atKm, units)}`,
    verdict: worst.verdict,
    // A verdict counts before litres: two rigs short of water differ less than one that is and one that is not.
    score: -severityOf(worst.verdict) * 1e6 + worst.marginL,
  };
}

function cans(of: ComparedCommodity, units: UnitSystem): Cell {
  if (of.extraCans === 0) return { text: t('none'), score: 0 };
  return {
    text: t`${of.extraCans} of ${formatLitres(of.canL, units)}`,
    second: of.cansMissing === 0 ? t('all owned') : t`${of.cansMissing} to buy`,
    score: -of.extraL,
  };
}

function axle(rig: ComparedRig, which: 'front' | 'rear', units: UnitSystem): Cell {
  const load = rig.mass?.[which] ?? null;
  if (load === null) return NOT_TOLD;
  const { kg, leftKg } = load;
  const second =
    leftKg === null
      ? t('limit not told')
      : leftKg < 0
        ? t`${formatMass(-leftKg, units)} over its limit`
        : t`${formatMass(leftKg, units)} below its limit`;
  return { text: formatMass(kg, units), second, score: leftKg };
}

/** What rigs are held against each other by, in the order in which it matters. */
export const CRITERIA: readonly Criterion[] = [
  { name: t('Fuel, worst stretch'), cell: ({ fuel }, units) => worstGap(fuel, units) },
  { name: t('Water, worst stretch'), cell: ({ water }, units) => worstGap(water, units) },
  { name: t('Extra fuel cans'), cell: ({ fuel }, units) => cans(fuel, units) },
  { name: t('Extra water cans'), cell: ({ water }, units) => cans(water, units) },
  {
    name: t('Tanks hold'),
    cell: ({ fuel, water }, units) => ({
      text: t`${formatLitres(fuel.capacityL, units)} fuel`,
      second: t`${formatLitres(water.capacityL, units)} water`,
      score: null,
    }),
  },
  {
    name: t('Days, slow pace'),
    cell: ({ days }) => ({ text: formatDays(days.slow), score: -days.slow }),
  },
  {
    name: t('Payload left'),
    cell: ({ mass }, units) => {
      const left = mass?.payloadLeftKg ?? null;
      if (left === null) return NOT_TOLD;
      return left.value < 0
        ? { text: t`${formatMass(-left.value, units)} too heavy`, score: left.value }
        : { text: formatMass(left.value, units), score: left.value };
    },
  },
  { name: t('Front axle'), cell: (rig, units) => axle(rig, 'front', units) },
  { name: t('Rear axle'), cell: (rig, units) => axle(rig, 'rear', units) },
  {
    name: t('Right less left'),
    cell: ({ mass }, units) => {
      const side = mass?.sideKg ?? null;
      return side === null ? NOT_TOLD : { text: formatMass(side.value, units), score: -Math.abs(side.value) };
    },
  },
  {
    name: t('Stability factor'),
    cell: ({ mass }) => {
      const factor = mass?.stabilityFactor ?? null;
      return factor === null
        ? NOT_TOLD
        : { text: formatFigure(factor.value, 2), second: t('track / 2 h, the least'), score: factor.value };
    },
  },
];

/** Which cells are the best of their row: none where all are alike or only one tells. */
export function bestOf(cells: readonly Cell[]): boolean[] {
  const told = cells.flatMap(({ score }) => (score === null ? [] : [score]));
  const best = Math.max(...told);
  const differs = told.some((score) => score < best);
  return cells.map(({ score }) => differs && score === best);
}
