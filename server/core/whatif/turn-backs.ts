import type { TurnBack } from '../../contract/whatif.ts';
import { placeText } from '../carry/breaks.ts';
import { COMMODITIES } from '../carry/problem.ts';
import { edgeOf } from '../carry/show.ts';
import { SLACK } from '../gaps/need.ts';
import type { Basis } from './basis.ts';
import { runOf, turnBackOf } from './run.ts';

/**
 * The last place of each stretch from which the supply behind can be regained with the reserve, by the real levels; a
 * stretch that can be gone back over from its very end has none. In route order.
 */
export function turnBacksOf(basis: Basis): TurnBack[] {
  const found = COMMODITIES.flatMap((commodity) =>
    basis.sides[commodity].stretches.flatMap((stretch) => {
      const run = runOf(stretch);
      const atM = turnBackOf(run) ?? stretch.from.atM;
      return atM >= stretch.to.atM - SLACK ? [] : [{ commodity, atM, stretch }];
    }),
  ).sort((a, b) => a.atM - b.atM);
  return found.map(({ commodity, atM, stretch }) => {
    // The other commodity already forbids going back from here.
    const passed = found.some(
      (other) => other.commodity !== commodity && other.atM < atM && other.stretch.to.atM > atM,
    );
    const backTo = edgeOf(stretch.from);
    const atKm = atM / 1000;
    const text = `Before km ${atKm.toFixed(1)} you can still go back to ${placeText(backTo)} with the reserve of ${commodity}.`;
    return {
      atKm,
      commodity,
      backTo,
      backToKm: backTo.atKm,
      towards: edgeOf(stretch.to),
      first: !passed,
      text,
    };
  });
}
