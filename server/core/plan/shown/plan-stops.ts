import type { PlanStopAsk } from '../../../contract/plan.ts';
import { hoursOfStanding } from '../../gaps/course/standing.ts';
import { pairsOf } from '../../lists/pairs.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { askOf, waitHoursAt } from '../../supply/points/stop-asks.ts';
import type { DrivenLeg, DrivenLegs } from '../drive/drive.ts';
import { supplyStops } from '../question/supply-stops.ts';
import type { CarrySide, CarrySides } from '../side/carry-side.ts';
import { isSamePlace } from '../side/supply-edge.ts';
import type { PlanStop, PlanStopPassing } from './plan-stop.ts';

interface StopFacts {
  readonly asks: readonly PlanStopAsk[];
  readonly sides: CarrySides;
  readonly legs: DrivenLegs;
}

/** Every supply stop with its passings, used or passed by. */
export function planStops(passings: readonly Passing[], facts: StopFacts): PlanStop[] {
  return supplyStops(passings).map(({ fromM, toM, passings: inside }) => {
    const all = inside.map((passing) => stopPassing(passing, facts));
    return { fromM, toM, used: all.some(({ used }) => used), passings: all };
  });
}

function stopPassing(passing: Passing, { asks, sides, legs }: StopFacts): PlanStopPassing {
  const { id, name, kind, commodity, atM, detourM, evidence } = passing;
  const ask = askOf(asks, passing);
  const halt = pairsOf(legs[commodity]).find(([{ to }]) => to.kind === 'passing' && isSamePlace(to, passing));
  return {
    id,
    name,
    kind,
    commodity,
    atM,
    detourM,
    evidence,
    mostL: passing.mostL ?? null,
    waitHours: waitHoursAt(passing, ask),
    ...(halt === undefined ? PASSED_BY : filledAt(sides[commodity], halt)),
  };
}

type Filled = Pick<PlanStopPassing, 'used' | 'arriveL' | 'fillL' | 'cansFull' | 'fillHours'>;

const PASSED_BY: Filled = { used: false, arriveL: null, fillL: null, cansFull: null, fillHours: 0 };

/** What is filled in between the leg that ends at a supply and the one that begins there. */
function filledAt(side: CarrySide, [arriving, leaving]: [DrivenLeg, DrivenLeg]): Filled {
  const { arriveL } = arriving.figures;
  return {
    used: true,
    arriveL,
    fillL: leaving.tankL + leaving.cans * side.canL - arriveL,
    cansFull: leaving.cans,
    fillHours: hoursOfStanding(leaving.from.fillDays ?? 0),
  };
}
