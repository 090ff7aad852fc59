import type { TurnBack } from '../../../contract/whatif.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { SLACK } from '../../quantity/slack.ts';
import { runOf, turnBackOf } from '../drive/run.ts';
import { edgeOf, placeText } from '../question/told-edge.ts';
import type { Basis } from './basis.ts';

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
