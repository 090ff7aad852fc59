import type { Commodity } from '../../../../contract/common.ts';
import type { Phrase } from '../../../phrases/phrases.ts';
import { COMMODITIES } from '../../../quantity/commodities.ts';
import { SLACK } from '../../../quantity/slack.ts';
import { type PlanEdge, planEdge } from '../../side/plan-edge.ts';
import type { Basis } from '../basis.ts';
import { runOf } from '../run.ts';
import type { Stretch } from '../stretch.ts';
import { turnBackOf } from './turn-back.ts';

/** The last place from which the supply behind can be regained with the reserve; metres along the route. */
export interface TurnBack {
  readonly atM: number;
  readonly commodity: Commodity;
  readonly backTo: PlanEdge;
  readonly backToM: number;
  /** Where the way leads on to. */
  readonly towards: PlanEdge;
  /** No turn-back point of the other commodity was passed before on the same stretch: this is the one to mind. */
  readonly first: boolean;
  readonly text: Phrase;
}

interface Turn {
  readonly commodity: Commodity;
  readonly atM: number;
  readonly stretch: Stretch;
}

/**
 * The last place of each stretch from which the supply behind can be regained with the reserve, by the real levels; a
 * stretch that can be gone back over from its very end has none. In route order.
 */
export function turnBacksOf({ sides }: Basis): TurnBack[] {
  const turns = COMMODITIES.flatMap((commodity) =>
    sides[commodity].stretches.flatMap((stretch): Turn[] => {
      const atM = turnBackOf(runOf(stretch)) ?? stretch.from.atM;
      return atM >= stretch.to.atM - SLACK ? [] : [{ commodity, atM, stretch }];
    }),
  ).sort((a, b) => a.atM - b.atM);
  return turns.map((turn) => turnBack(turn, turns));
}

function turnBack({ commodity, atM, stretch }: Turn, turns: readonly Turn[]): TurnBack {
  // The other commodity already forbids going back from here.
  const isPassed = turns.some(
    (other) => other.commodity !== commodity && other.atM < atM && other.stretch.to.atM > atM,
  );
  const backTo = planEdge(stretch.from);
  return {
    atM,
    commodity,
    backTo,
    backToM: backTo.atM,
    towards: planEdge(stretch.to),
    first: !isPassed,
    text: { phrase: 'back-with-the-reserve', facts: { commodity, atM, backTo } },
  };
}
