import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { at, numberAt } from '../../lists/at.ts';
import { pairsOf } from '../../lists/pairs.ts';
import type { LoadSpan } from '../../mass/load.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import { kgPerLitreOf, loadKg } from '../question/can-kg.ts';
import { type CarrySides, drawableOf } from '../side/carry-side.ts';
import { isBound } from '../side/supply-edge.ts';
import { allLitres, type ContainerLevel } from './containers.ts';
import type { DrivenLeg, DrivenLegs } from './drive.ts';

/** The load is told anew at least this often along the way, metres (ours): some 10 kg of fuel and water are used on it. */
const STEP_M = 50_000;

/**
 * What is on board along a driven plan, in pieces that begin at every stop, halt and pour and each hold what is aboard
 * where they begin: within a piece it only gets less. Of water as much is reckoned as there would be if the least of its
 * range were used, and at a stop no litre is taken for let go that may still be aboard.
 */
export function loadsAlong(
  rig: RigFile,
  cans: Readonly<Record<Commodity, number>>,
  sides: CarrySides,
  legs: DrivenLegs,
): LoadSpan[] {
  const cuts = cutsOf(legs, sides.fuel.course.lengthM);
  const mostKg = loadKg(rig, cans);
  const missing = COMMODITIES.map((commodity) => {
    const side = sides[commodity];
    const fullL = drawableOf(side) + cans[commodity] * side.canL;
    const { low } = side.course.rig.water.litresPerDay;
    const most = mostWaterPerDay(side.course.rig);
    const share = commodity === 'fuel' || most === 0 ? 1 : low / most;
    const aboard = aboardReader(legs[commodity], fullL, share);
    return Float64Array.from(cuts, (atM) => (fullL - aboard(atM)) * kgPerLitreOf(rig, commodity));
  });
  return pairsOf(cuts).map(([fromM, toM], index) => ({
    fromM,
    toM,
    moreKg: mostKg - missing.reduce((sum, kg) => sum + numberAt(kg, index), 0),
  }));
}

/** Where pieces begin and end, metres along, in order, each once: the start and the end of the route among them. */
function cutsOf(legs: DrivenLegs, lengthM: number): number[] {
  const places = COMMODITIES.flatMap((commodity) =>
    legs[commodity].flatMap(({ from, poursM, detours }) => [
      from.atM,
      ...poursM,
      ...detours.map(({ atM }) => atM),
    ]),
  );
  for (let atM = 0; atM < lengthM; atM += STEP_M) places.push(atM);
  const inside = places.filter((atM) => atM >= 0 && atM < lengthM);
  return [...new Set(inside)].sort((a, b) => a - b).concat(lengthM);
}

/** A leg with the most that may be aboard where it begins. */
interface FullestLeg {
  readonly leg: DrivenLeg;
  readonly departL: number;
}

/**
 * Reads the most litres aboard of a commodity from a place on, when of what a plan takes to be used only a share is;
 * never above `fullL`.
 */
function aboardReader(legs: readonly DrivenLeg[], fullL: number, share: number): (atM: number) => number {
  const fullest = fullestLegs(legs, fullL, share);
  return (atM) => {
    const { leg, departL } = fullest.findLast(({ leg: { from } }) => from.atM <= atM) ?? at(fullest, 0);
    return departL - (leg.figures.departL - litresAt(leg.levels, atM)) * share;
  };
}

function fullestLegs(legs: readonly DrivenLeg[], fullL: number, share: number): FullestLeg[] {
  const fullest: FullestLeg[] = [];
  for (const leg of legs) {
    const before = fullest.at(-1);
    fullest.push({ leg, departL: before === undefined ? leg.figures.departL : mostAfter(before, leg) });
  }
  return fullest;

  function mostAfter({ leg, departL }: FullestLeg, next: DrivenLeg): number {
    const { needL, arriveL } = leg.figures;
    // Where not all that is wanted is to be had, what was not used comes on top of it.
    const gotL = isBound(next.from) ? Math.max(0, next.figures.departL - arriveL) : 0;
    return Math.max(next.figures.departL, Math.min(fullL, departL - needL * share + gotL));
  }
}

/** All that is aboard at a place: on arriving where it differs from on leaving. */
function litresAt(levels: readonly ContainerLevel[], atM: number): number {
  const next = levels.findIndex((level) => level.atM >= atM);
  const index = next < 0 ? levels.length - 1 : next;
  const after = at(levels, index);
  const before = after.atM > atM ? (levels[index - 1] ?? after) : after;
  const part = after.atM === before.atM ? 0 : (atM - before.atM) / (after.atM - before.atM);
  return allLitres(before) + part * (allLitres(after) - allLitres(before));
}
