import { at } from '../../lists/at.ts';
import type { Level } from '../../quantity/level.ts';
import { aboardAfter, type PourFacts, pourAfterL } from '../legs/pour.ts';

/** What is in the fixed tanks together and in each can, litres that can be used; metres along the route. */
export interface ContainerLevel {
  readonly atM: number;
  readonly tankL: number;
  readonly cansL: readonly number[];
}

/** What is in all containers of a commodity. */
export const allLitres = ({ tankL, cansL }: Pick<ContainerLevel, 'tankL' | 'cansL'>): number =>
  cansL.reduce((sum, litres) => sum + litres, tankL);

/**
 * The levels of all containers along a leg, from all that is aboard: tanks fall, and each can is poured when they have
 * room for it. Gives a point wherever a line bends, and for each pour the place and the levels before and after it.
 */
export function containersAlong(
  points: readonly Level[],
  facts: PourFacts,
): { levels: ContainerLevel[]; poursM: number[] } {
  const departL = at(points, 0).litres;
  const pours = pourAfterL(facts).map((afterL, can) => ({ afterL, can }));
  const levels: ContainerLevel[] = [];
  const poursM: number[] = [];
  for (const [index, point] of points.entries()) {
    const usedL = departL - point.litres;
    const previous = points[index - 1] ?? point;
    const due = pours.filter(({ afterL, can }) => can >= poursM.length && afterL <= usedL);
    for (const { afterL, can } of due) {
      const atM = placeOfPour({ previous, point, departL }, afterL);
      if (!(afterL === 0 && can === 0)) levels.push({ atM, ...aboardBefore(facts, afterL, can) });
      levels.push({ atM, ...aboardAfter(facts, afterL) });
      poursM.push(atM);
    }
    levels.push({ atM: point.atM, ...aboardAfter(facts, usedL) });
  }
  return { levels, poursM };
}

interface Piece {
  readonly previous: Level;
  readonly point: Level;
  readonly departL: number;
}

/** Where between two points so many litres have been used. */
function placeOfPour({ previous, point, departL }: Piece, afterL: number): number {
  const usedL = departL - point.litres;
  const usedBeforeL = departL - previous.litres;
  const share = usedL === usedBeforeL ? 1 : (afterL - usedBeforeL) / (usedL - usedBeforeL);
  return previous.atM + Math.min(1, Math.max(0, share)) * (point.atM - previous.atM);
}

/** As after so many litres, with the cans from one on still full. */
function aboardBefore(facts: PourFacts, usedL: number, can: number): { tankL: number; cansL: number[] } {
  const earlier = aboardAfter({ ...facts, cans: can }, usedL);
  const full = Array<number>(facts.cans - can).fill(facts.canL);
  return { tankL: earlier.tankL, cansL: [...earlier.cansL, ...full] };
}

/** A level between two, at a share of the way. */
export const levelBetween = (
  before: ContainerLevel,
  after: ContainerLevel,
  share: number,
): ContainerLevel => ({
  atM: before.atM + share * (after.atM - before.atM),
  tankL: before.tankL + share * (after.tankL - before.tankL),
  cansL: before.cansL.map((litres, can) => litres + share * ((after.cansL[can] ?? litres) - litres)),
});
