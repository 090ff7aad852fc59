import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Hop } from '../legs/leg.ts';
import { leaving } from '../legs/leg-need.ts';
import { arriveWith, type Departure, refill, type Stock } from '../legs/stock.ts';
import type { Choice, PlannedLeg } from '../model/choice.ts';
import { type CarrySide, type CarrySides, edgeAt, endsOf } from '../side/carry-side.ts';
import { detoursOf, type Halt, haltsBetween, haltsOf } from '../side/halts.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { driveStretch, type StretchDrive } from './drive-stretch.ts';
import type { Stretch } from './stretch.ts';

/** A hop of a plan as it is driven. */
export interface DrivenLeg extends StretchDrive, Pick<Stretch, 'from' | 'to' | 'cans' | 'tankL' | 'detours'> {
  /** Less in the tanks on leaving than they hold, for the sake of a permitted mass. */
  readonly shortL: number;
  /** Its end is only filled up at, since one halts there anyway. */
  readonly endsAtTopUp: boolean;
}

export type DrivenLegs = Readonly<Record<Commodity, readonly DrivenLeg[]>>;

/**
 * Drives the route with a plan: the one source of levels for every view and check. With `keepsCans` a can that comes
 * full to a stop stays full, also where the plan needs fewer from there.
 */
export function drive(sides: CarrySides, choice: Pick<Choice, 'legs'>, keepsCans = false): DrivenLegs {
  const foreign = byCommodity((commodity) => {
    const other = sides[otherOf(commodity)];
    const stops = choice.legs[other.commodity].flatMap(({ hops }) => hops.map(({ to }) => edgeAt(other, to)));
    return haltsOf({ ...other, edges: stops }, sides[commodity].course);
  });
  return byCommodity((commodity) => {
    const legs: DrivenLeg[] = [];
    for (const leg of choice.legs[commodity])
      legs.push(...driveLeg(sides[commodity], leg, foreign[commodity], { leg: legs.at(-1), keepsCans }));
    return legs;
  });
}

/** What comes to where a leg begins; none at the start. */
interface Coming {
  readonly leg: DrivenLeg | undefined;
  readonly keepsCans: boolean;
}

/** Hop by hop: at a supply that does not give all that is wanted, what it is left with hangs on what was left. */
function driveLeg(side: CarrySide, leg: PlannedLeg, foreign: readonly Halt[], coming: Coming): DrivenLeg[] {
  const legs: DrivenLeg[] = [];
  for (const hop of leg.hops) {
    const before = legs.at(-1);
    const departure =
      before === undefined
        ? firstDeparture(side, leg, coming)
        : refill(side, edgeAt(side, hop.from), arrivalOf(side, before), hop.cans);
    const drives = driveStretch(stretchOver(side, hop, departure, foreign));
    const { from, to, cans, tankL, detours } = drives.stretch;
    const shortL = before === undefined ? leg.shortL : 0;
    legs.push({ ...drives, from, to, cans, tankL, detours, shortL, endsAtTopUp: leg.endsAtTopUp === true });
  }
  return legs;
}

/** What a leg is left with, filled up from what came; cans that come full stay so, where they are kept. */
function firstDeparture(
  side: CarrySide,
  { hops: [first], shortL }: PlannedLeg,
  { leg, keepsCans }: Coming,
): Departure {
  const fullCans = leg !== undefined && keepsCans ? arrivalOf(side, leg).cans : 0;
  const tankL = first.tankL - shortL;
  const cans = Math.max(first.cans, fullCans);
  const cameL = leg === undefined ? 0 : Math.max(0, leg.figures.arriveL);
  return { tankL, cans, filledL: Math.max(0, Math.min(first.filledL, tankL + cans * side.canL - cameL)) };
}

const arrivalOf = (side: CarrySide, leg: DrivenLeg): Stock => arriveWith(side, leg, leg.figures.needL);

function stretchOver(side: CarrySide, hop: Hop, departure: Departure, foreign: readonly Halt[]): Stretch {
  const { course, canL, cansDrinkable } = side;
  const [from, to] = endsOf(side, hop);
  const { tankL, cans, filledL } = departure;
  return {
    course,
    from: leaving(from, filledL, hop.filledL),
    to,
    tankL,
    cans,
    canL,
    washingCans: !cansDrinkable,
    detours: detoursOf(haltsBetween(foreign, from, to)),
  };
}

/** A litre this small is float noise of the way through the solver. */
const NOISE_L = 1e-6;

/** Legs that do not keep the reserve, or whose tanks are fuller than they can be: none, if the plan is one. */
export const brokenLegs = (legs: DrivenLegs): { commodity: Commodity; leg: DrivenLeg; missingL: number }[] =>
  COMMODITIES.flatMap((commodity) =>
    legs[commodity]
      .filter((leg) => leg.marginL < -NOISE_L - SLACK)
      .map((leg) => ({ commodity, leg, missingL: -leg.marginL })),
  );
