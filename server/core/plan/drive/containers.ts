import type { Level } from '../../quantity/level.ts';
import { heldAfter, type PourFacts, pourAfterL } from '../question/pour.ts';

/** What is in the fixed tanks together and in each can, litres that can be used; metres along the route. */
export interface ContainerLevel {
  atM: number;
  tankL: number;
  cansL: number[];
}

/**
 * The levels of all containers along a leg, from all that is aboard: tanks fall, and each can is poured when they have
 * room for it. Gives a point wherever a line bends, and for each pour the place and the levels before and after it.
 */
export function containersAlong(
  points: readonly Level[],
  facts: PourFacts,
): { levels: ContainerLevel[]; poursM: number[] } {
  const departL = points[0]!.litres;
  const pours = pourAfterL(facts);
  const levels: ContainerLevel[] = [];
  const poursM: number[] = [];
  let next = 0;
  points.forEach((point, index) => {
    const usedL = departL - point.litres;
    const previous = points[index - 1] ?? point;
    for (; next < pours.length && pours[next]! <= usedL; next += 1) {
      const afterL = pours[next]!;
      const usedBefore = departL - previous.litres;
      const share = usedL === usedBefore ? 1 : (afterL - usedBefore) / (usedL - usedBefore);
      const atM = previous.atM + Math.min(1, Math.max(0, share)) * (point.atM - previous.atM);
      const cans = heldAfter({ ...facts }, afterL);
      const before = levelBefore(facts, afterL, next);
      if (!(afterL === 0 && next === 0)) levels.push({ atM, ...before });
      levels.push({ atM, ...cans });
      poursM.push(atM);
    }
    levels.push({ atM: point.atM, ...heldAfter(facts, usedL) });
  });
  return { levels, poursM };
}

/** As after so many litres, with the cans from `next` on still full. */
function levelBefore(facts: PourFacts, usedL: number, next: number): { tankL: number; cansL: number[] } {
  const earlier = heldAfter({ ...facts, cans: next }, usedL);
  return {
    tankL: earlier.tankL,
    cansL: [...earlier.cansL, ...Array<number>(facts.cans - next).fill(facts.canL)],
  };
}
