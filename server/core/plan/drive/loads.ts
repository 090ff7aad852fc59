import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { fuelKgPerLitre, WATER_KG_PER_L } from '../../mass/densities.ts';
import type { LoadSpan } from '../../mass/load.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type CarrySide, isBound } from '../question/problem.ts';
import { loadKg } from '../question/problem-of.ts';
import type { ContainerLevel } from './containers.ts';
import type { Driven, DrivenLeg } from './drive.ts';

/** The load is told anew at least this often along the way, metres (ours): some 10 kg of fuel and water are used on it. */
const STEP_M = 50_000;

/**
 * What is on board along a driven plan, in pieces that begin at every stop, halt and pour and each hold what is aboard
 * where they begin: within a piece it only gets less. Of water as much is reckoned as there would be if the least of its
 * range were used, and at a stop no litre is taken for let go that may still be aboard.
 */
export function loadsAlong(
  rig: RigFile,
  cans: Record<Commodity, number>,
  sides: Record<Commodity, CarrySide>,
  driven: Driven,
): LoadSpan[] {
  const cuts = cutsOf(driven, sides.fuel.course.lengthM);
  const mostKg = loadKg(rig, cans);
  const missing = COMMODITIES.map((commodity) => {
    const { course, canL } = sides[commodity];
    const kgPerLitre = commodity === 'fuel' ? fuelKgPerLitre(rig.fuel.kind) : WATER_KG_PER_L;
    const fullL = course.rig[commodity].drawableL + cans[commodity] * canL;
    const { low, high } = course.rig.water.litresPerDay;
    const share = commodity === 'fuel' || high === 0 ? 1 : low / high;
    return aboardAt(cuts, driven[commodity], fullL, share).map((aboardL) => (fullL - aboardL) * kgPerLitre);
  });
  return cuts.slice(1).map((toM, index) => ({
    fromM: cuts[index]!,
    toM,
    moreKg: mostKg - missing.reduce((sum, kg) => sum + kg[index]!, 0),
  }));
}

/** Where pieces begin and end, metres along, in order, each once: the start and the end of the route among them. */
function cutsOf(driven: Driven, lengthM: number): number[] {
  const places = COMMODITIES.flatMap((commodity) =>
    driven[commodity].flatMap(({ from, poursM, detours }) => [
      from.atM,
      ...poursM,
      ...detours.map(({ atM }) => atM),
    ]),
  );
  for (let atM = 0; atM < lengthM; atM += STEP_M) places.push(atM);
  const inside = places.filter((atM) => atM >= 0 && atM < lengthM);
  return [...new Set(inside)].sort((a, b) => a - b).concat(lengthM);
}

/**
 * The most litres aboard of a commodity from each place on, when of what a plan takes to be used only a share is; never
 * above `fullL`. `places` in order.
 */
function aboardAt(
  places: readonly number[],
  legs: readonly DrivenLeg[],
  fullL: number,
  share: number,
): number[] {
  let [leg, level] = [0, 0];
  let departL = legs[0]!.figures.departL;
  return places.map((atM) => {
    for (let next = legs[leg + 1]; next !== undefined && next.from.atM <= atM; next = legs[leg + 1]) {
      const { needL, arriveL } = legs[leg]!.figures;
      // Where not all that is wanted is to be had, what was not used comes on top of it.
      const gotL = isBound(next.from) ? Math.max(0, next.figures.departL - arriveL) : 0;
      departL = Math.max(next.figures.departL, Math.min(fullL, departL - needL * share + gotL));
      leg += 1;
      level = 0;
    }
    const { levels, figures } = legs[leg]!;
    while (level < levels.length - 1 && levels[level]!.atM < atM) level += 1;
    const after = levels[level]!;
    const before = after.atM > atM ? (levels[level - 1] ?? after) : after;
    const part = after.atM === before.atM ? 0 : (atM - before.atM) / (after.atM - before.atM);
    const heldL = totalOf(before) + part * (totalOf(after) - totalOf(before));
    return departL - (figures.departL - heldL) * share;
  });
}

const totalOf = ({ tankL, cansL }: ContainerLevel): number =>
  cansL.reduce((sum, litres) => sum + litres, tankL);
