import type { Edge, Passing } from '../../../server/contract/analysis.ts';
import type { Commodity, Verdict } from '../../../server/contract/common.ts';
import type { PlanLevel } from '../../../server/contract/plan.ts';
import { t } from '../../language/t.ts';
import { type LevelAt, levelAt } from '../../levels/levels.ts';
import { cansFull, type StripAnalysis, type StripReport } from '../../levels/plan-report.ts';
import { formatAtKm, formatLitres, type UnitSystem } from '../../units/units.ts';
import { countCans } from '../../words/plan-words.ts';
import { commodityWords, VERDICT_WORDS, worstOf } from '../../words/words.ts';

/** For a strip that is too narrow for more. */
export const SHORT_VERDICT_WORDS: Record<Verdict, string> = {
  ...VERDICT_WORDS,
  'into-reserve': t('reserve'),
};

/** What a place that ends a gap is called: its name, else what it is. */
export function edgeWords(edge: Edge, passings: readonly Passing[], commodity: Commodity): string {
  if (edge.name !== null && edge.name.trim() !== '') return edge.name;
  if (edge.kind !== 'passing') return edge.kind;
  const known = passings.find((passing) => passing.id === edge.id && passing.commodity === commodity);
  return known?.name ?? known?.kind ?? edge.id ?? t('unnamed');
}

const STATE_WORDS: Record<LevelAt['state'], string> = {
  left: '',
  reserve: t('into the reserve'),
  dry: t('dry'),
};

/** "48 l", and in words what the colour says: "into the reserve", "no map data"; `narrow` for the shortest words. */
export function levelWords(
  level: LevelAt,
  units: UnitSystem,
  narrow = false,
): { litres: string; notes: string[] } {
  const state = narrow && level.state === 'reserve' ? 'reserve' : STATE_WORDS[level.state];
  const uncovered = narrow ? t('no data') : t('no map data');
  const notes = [state, ...aboardNotes(level.aboard, units), level.covered ? '' : uncovered].filter(
    (note) => note !== '',
  );
  return { litres: formatLitres(level.litres, units), notes };
}

/** Where it is and what it is good for: "tanks 107 l", "4 cans full", "drinkable 90 l". */
function aboardNotes(aboard: PlanLevel | null, units: UnitSystem): string[] {
  if (aboard === null) return [];
  const { tankL, drinkableL, washingL } = aboard;
  const cans = cansFull(aboard);
  const inCans = cans === 0 ? [] : [t`tanks ${formatLitres(tankL, units)}`, t`${countCans(cans)} full`];
  if (drinkableL === undefined || washingL === undefined || !(washingL > 0)) return inCans;
  return [
    ...inCans,
    t`drinkable ${formatLitres(drinkableL, units)}`,
    t`washing ${formatLitres(washingL, units)}`,
  ];
}

/** One place of the route for a listener: "km 412: diesel 48 l left, drinking water 20 l left, into the reserve". */
export function placeInWords(analysis: StripAnalysis, atKm: number, units: UnitSystem): string {
  const parts = (['fuel', 'water'] as const).flatMap((commodity) => {
    const level = levelAt(analysis[commodity], atKm);
    if (level === null) return [];
    const { litres, notes } = levelWords(level, units);
    return [
      `${commodityWords(commodity, analysis.rig.fuel.kind)} ${[t`${litres} left`, ...notes].join(', ')}`,
    ];
  });
  const plan = analysis.fuel.plan === undefined ? '' : t(', by the plan');
  return `${formatAtKm(atKm, units)}${plan}: ${parts.join('; ')}`;
}

/** The gap that asks for most attention: by verdict, then by margin. -1 without gaps. */
export function worstGapIndex({ gaps }: StripReport): number {
  const worst = worstOf(gaps);
  return worst === undefined ? -1 : gaps.indexOf(worst);
}
