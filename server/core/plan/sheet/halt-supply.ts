import type { Commodity } from '../../../contract/common.ts';
import type { PlanStopAsk } from '../../../contract/plan.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { HOURS_PER_DAY, hoursOfStanding } from '../../gaps/course/standing.ts';
import { usableL } from '../../gaps/gap-grades.ts';
import { dateTimeAfter } from '../../pace/clock.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import { isLaid } from '../../supply/points/laid.ts';
import { askOf, waitHoursAt } from '../../supply/points/stop-asks.ts';
import type { ContainerLevel } from '../drive/containers.ts';
import type { DrivenLeg } from '../drive/drive.ts';
import { washingCansL } from '../drive/drive-stretch.ts';
import { lastWayBackM } from '../drive/turn-back/turn-back.ts';
import type { CarrySide } from '../side/carry-side.ts';
import { planEdge } from '../side/plan-edge.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import { contactOf } from './contact.ts';
import type { Alarm, Filling, HaltSupply } from './sheet-halt.ts';
import { fixedTanks, tanksReader } from './tanks-reader.ts';

/** A halt of one commodity: the leg that ends there, and the one that begins there. */
export interface LegsAtHalt {
  readonly arriving: DrivenLeg | null;
  readonly leaving: DrivenLeg | null;
}

/** Less than this is float noise and not filled, litres. */
const NOISE_L = 1e-6;

/** What is done about one commodity where a leg ends and another begins; null where neither does. */
export function haltSupply(reckoned: Reckoned, side: CarrySide, legs: LegsAtHalt): HaltSupply | null {
  const { arriving, leaving } = legs;
  const edge = leaving?.from ?? arriving?.to;
  if (edge === undefined) return null;
  const into =
    leaving === null ? [] : fillings(reckoned, side, aboardBefore(reckoned, side, arriving), leaving);
  const fillL = into.reduce((sum, { litres }) => sum + litres, 0);
  return {
    at: planEdge(edge),
    arriveL: arriving?.figures.arriveL ?? null,
    fillL,
    into,
    ...leavingFacts(leaving),
    ...supplyFacts(reckoned, side.commodity, edge, fillL),
    alarm: side.commodity === 'water' && leaving !== null ? alarmOf(reckoned, leaving) : null,
  };
}

type LeavingFacts = Pick<HaltSupply, 'cansFull' | 'leaveL' | 'pourAtM' | 'next' | 'turnBackM' | 'fillHours'>;

const AT_THE_END: LeavingFacts = {
  cansFull: 0,
  leaveL: null,
  pourAtM: [],
  next: null,
  turnBackM: null,
  fillHours: 0,
};

/** With what one leaves, and how far it is to last. */
function leavingFacts(leaving: DrivenLeg | null): LeavingFacts {
  if (leaving === null) return AT_THE_END;
  const { from, to, cans, figures, poursM, stretch } = leaving;
  return {
    cansFull: cans,
    leaveL: figures.departL,
    pourAtM: poursM,
    next: { at: planEdge(to), lengthM: to.atM - from.atM },
    turnBackM: lastWayBackM(stretch),
    fillHours: hoursOfStanding(from.fillDays ?? 0),
  };
}

type SupplyFacts = Pick<
  HaltSupply,
  'kind' | 'lon' | 'lat' | 'mostL' | 'waitHours' | 'cost' | 'contact' | 'arrival'
>;

/** What is known of the supply itself. */
function supplyFacts(reckoned: Reckoned, commodity: Commodity, edge: SupplyEdge, fillL: number): SupplyFacts {
  const { analysis } = reckoned;
  const passing = analysis.passings.find((one) => one.commodity === commodity && isSamePlace(one, edge));
  const { trip } = analysis;
  if (passing === undefined) {
    const cost = costOf(trip, { commodity, isOwn: false }, undefined, fillL);
    return { ...UNKNOWN, cost };
  }
  const { kind, lon, lat, arrival = null } = passing;
  const ask = askOf(trip.plan?.stops ?? [], passing);
  const isOwn = isLaid(passing);
  return {
    kind,
    lon,
    lat,
    mostL: passing.mostL ?? null,
    waitHours: waitHoursAt(passing, ask),
    cost: costOf(trip, { commodity, isOwn }, ask, fillL),
    contact: isOwn ? null : contactOf(reckoned, passing),
    arrival,
  };
}

const UNKNOWN = {
  kind: null,
  lon: null,
  lat: null,
  mostL: null,
  waitHours: 0,
  contact: null,
  arrival: null,
} as const;

/** What is aboard before anything is filled: on arrival, or at the start as the user says. */
function aboardBefore(
  { sides }: Reckoned,
  { commodity }: CarrySide,
  arriving: DrivenLeg | null,
): Pick<ContainerLevel, 'tankL' | 'cansL'> {
  const last = arriving?.levels.at(-1);
  return (
    last ?? {
      tankL: Math.min(sides[commodity].startL, sides[commodity].course.rig[commodity].drawableL),
      cansL: [],
    }
  );
}

/** What goes into which container. */
function fillings(
  { analysis }: Reckoned,
  { commodity, canL }: CarrySide,
  before: Pick<ContainerLevel, 'tankL' | 'cansL'>,
  { tankL, cans }: DrivenLeg,
): Filling[] {
  const inCansL = cans * canL - before.cansL.reduce((sum, litres) => sum + litres, 0);
  const fullBefore = before.cansL.filter((litres) => litres >= canL - NOISE_L).length;
  const intoCans: Filling = { into: 'cans', name: null, count: Math.abs(cans - fullBefore), litres: inCansL };
  return [...intoTanks(analysis.rig, commodity, before.tankL, tankL), intoCans].filter(
    ({ litres }) => Math.abs(litres) > NOISE_L,
  );
}

function intoTanks(
  rig: Reckoned['analysis']['rig'],
  commodity: Commodity,
  beforeL: number,
  afterL: number,
): Filling[] {
  const read = tanksReader(rig, commodity);
  if (read === null) return [{ into: 'tanks', name: null, count: 1, litres: afterL - beforeL }];
  const before = read(beforeL);
  const after = read(afterL);
  return fixedTanks(rig, commodity).map(({ name }, index) => ({
    into: 'tank',
    name,
    count: 1,
    litres: (after[index] ?? 0) - (before[index] ?? 0),
  }));
}

/** By the stop's own price, else by the one for all, which a supply of one's own does not have; null where none is told. */
function costOf(
  { plan }: TripFile,
  { commodity, isOwn }: { readonly commodity: Commodity; readonly isOwn: boolean },
  ask: PlanStopAsk | undefined,
  litres: number,
): number | null {
  const ofAll = isOwn ? 0 : plan?.pricePerLitre?.[commodity];
  const price = ask?.pricePerLitre?.[commodity] ?? ofAll;
  return price === undefined ? null : Math.max(0, litres) * price;
}

/** When help must be called at the latest: with so many hours left as it takes to come. Null where those are not told. */
function alarmOf({ analysis, timeThere }: Reckoned, { from, stretch, figures }: DrivenLeg): Alarm | null {
  const { helpHours } = analysis.trip;
  if (helpHours === undefined) return null;
  const { rig } = stretch.course;
  const litres = usableL(rig, figures.departL, 0, washingCansL(stretch));
  const afterHours = (litres / mostWaterPerDay(rig)) * HOURS_PER_DAY - helpHours;
  const leaving = timeThere(from.atM).span?.earliest;
  return { afterHours, by: leaving === undefined ? null : dateTimeAfter(leaving, afterHours) };
}
