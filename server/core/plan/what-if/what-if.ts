import type { Caution } from '../../../contract/common.ts';
import type { WhatIf, WhatIfAsk } from '../../../contract/whatif.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { isBound } from '../question/problem.ts';
import type { Basis } from './basis.ts';
import { callFirst } from './call-first.ts';
import { containerLostRows, pumpFailsRows, turnRoundRows, waitRows } from './mishap-rows.ts';
import { rateRows } from './rate-rows.ts';
import { stopFailsRows } from './stop-fails.ts';
import { treatmentFailsRows } from './treatment-fails.ts';
import { turnBacksOf } from './turn-backs.ts';

/** What is taken where nothing is asked for (ours). */
export const WHAT_IF_DEFAULTS = { waitDays: 2, hotterByC: 5 } as const;

/**
 * What happens when something goes wrong, one thing at a time, where it does most harm: stops that fail, containers and
 * pumps, waiting, other rates, the treatment line, turning round. Nobody's odds are invented: only what follows is told.
 */
export function whatIf(reckoned: Reckoned, basis: Basis, ask: WhatIfAsk = {}): WhatIf {
  const facts = {
    basis,
    rig: reckoned.analysis.rig,
    waitDays: ask.waitDays ?? WHAT_IF_DEFAULTS.waitDays,
    turnRoundAtKm: ask.turnRoundAtKm ?? null,
  };
  const stops = stopFailsRows(basis);
  const turning = turnRoundRows(facts);
  const offRoute: Caution[] =
    facts.turnRoundAtKm !== null && turning.length === 0
      ? [
          {
            code: 'turn-round-off-route',
            text: `Turning round at km ${facts.turnRoundAtKm} is not on the route, or the way back from there cannot be driven.`,
          },
        ]
      : [];
  const standing: Caution[] =
    standingLPerDay(basis.sides.fuel.side.course) === 0
      ? [
          {
            code: 'standing-fuel-not-told',
            text: 'What fuel goes while the vehicle stands (idling, air conditioning, heater) was not told: waiting is reckoned for water only.',
          },
        ]
      : [];
  const pastEnd: Caution[] =
    basis.sides.fuel.side.course.onward === null
      ? [
          {
            code: 'past-end-not-told',
            text: 'How far the next supply is past the end was not told: on the last stretch what is left, and the least to have aboard of the gauge table, reach to the end of the route and no farther.',
          },
        ]
      : [];
  const bound: Caution[] = COMMODITIES.some((commodity) =>
    basis.sides[commodity].stretches.some(({ to }) => isBound(to)),
  )
    ? [
        {
          code: 'mishap-before-bound-stop',
          text: 'A stop that does not give all that is wanted is left with less after a mishap on the way to it: the rows of mishaps reach only to the stop itself.',
        },
      ]
    : [];
  const rates = rateRows(reckoned, basis, ask.hotterByC ?? WHAT_IF_DEFAULTS.hotterByC);
  return {
    basis: basis.kind,
    rows: [
      ...stops,
      ...containerLostRows(facts),
      ...pumpFailsRows(facts),
      ...waitRows(facts),
      ...rates.rows,
      ...treatmentFailsRows(reckoned, basis),
      ...turning,
    ],
    matters: rates.matters,
    turnBacks: turnBacksOf(basis),
    callFirst: callFirst(reckoned, stops),
    cautions: [...rates.cautions, ...standing, ...offRoute, ...bound, ...pastEnd],
  };
}
