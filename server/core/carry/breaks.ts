import type { PlanBreak } from '../../contract/plan.ts';
import { reckon } from '../gaps/reckon.ts';
import { tanksL } from './leg.ts';
import { legsOf } from './legs.ts';
import { type CarryProblem, type CarrySide, COMMODITIES } from './problem.ts';
import { edgeOf } from './show.ts';

const litres = (value: number): string => `${Math.ceil(value * 10) / 10} l`;

/** The stretch of a side that no chain of legs gets over, with as many cans as there may be; null where one does. */
export function brokenStretch(side: CarrySide): { from: number; to: number; missingL: number } | null {
  const { course, edges, canL, mostCans } = side;
  const last = edges.length - 1;
  const reached = new Set([0]);
  for (const leg of legsOf(side, [])) if (reached.has(leg.from)) reached.add(leg.to);
  if (reached.has(last)) return null;
  let best: { from: number; to: number; missingL: number } | null = null;
  for (const from of reached) {
    const cans = from === 0 && !side.cansAtStart ? 0 : mostCans;
    for (let to = from + 1; to <= last; to += 1) {
      if (reached.has(to)) continue;
      const { marginL, grades } = reckon(course, edges[from]!, edges[to]!, tanksL(side, from) + cans * canL);
      const missingL = -Math.min(marginL, grades?.drinking.marginL ?? marginL);
      if (best === null || missingL < best.missingL) best = { from, to, missingL };
    }
  }
  return best;
}

/** Why there is no plan: the stretch of each commodity, or, where each alone could be done, what does not fit together. */
export function breaksOf(problem: CarryProblem, worksWithoutMasses: () => boolean): PlanBreak[] {
  const breaks: PlanBreak[] = [];
  for (const commodity of COMMODITIES) {
    const side = problem.sides[commodity];
    const broken = brokenStretch(side);
    if (broken === null) continue;
    const from = edgeOf(side.edges[broken.from]!);
    const to = edgeOf(side.edges[broken.to]!);
    const aboard = side.mostCans === 1 ? '1 can' : `${side.mostCans} cans`;
    const text = `From ${placeText(from)} to ${placeText(to)} ${litres(broken.missingL)} of ${commodity} are missing with full tanks and ${broken.from === 0 && !side.cansAtStart ? 'no can' : aboard}.`;
    breaks.push({ cause: commodity, from, to, missingL: broken.missingL, text });
  }
  if (breaks.length > 0) return breaks;
  const massOnly = problem.room !== null && worksWithoutMasses();
  return [
    {
      cause: massOnly ? 'mass' : 'together',
      from: null,
      to: null,
      missingL: null,
      text: massOnly
        ? 'With the cans that it takes the vehicle is over a permitted mass.'
        : 'Fuel alone and water alone could be done; the detours to both together use up more than there is.',
    },
  ];
}

export const placeText = ({
  kind,
  name,
  atKm,
}: {
  kind: string;
  name: string | null;
  atKm: number;
}): string => `${name ?? (kind === 'passing' ? 'the supply' : `the ${kind}`)} (km ${Math.round(atKm)})`;
