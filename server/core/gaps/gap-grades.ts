import type { GapGrades, GradeFigures } from '../../contract/crew.ts';
import { aboardOf } from '../crew/needs/graded-store.ts';
import { at } from '../lists/at.ts';
import type { Level } from '../quantity/level.ts';
import type { Rig } from '../rig/rig.ts';
import { type VerdictFacts, verdictOf } from './verdict.ts';

/** What a gap's grades are reckoned from: the gap's own figures, all water together. */
export interface GapWater {
  rig: Rig;
  fromM: number;
  toM: number;
  departL: number;
  /** Of it in cans kept for washing: no drinking water. */
  washingCansL?: number;
  needL: number;
  reserveL: number;
  levels: readonly Level[];
  /** Metres along the route where washing water is taken from a source marked for it. */
  washingStopsM: readonly number[];
}

export interface GradedGap {
  grades: GapGrades;
  /**
   * Litres of all water aboard at which drinking grade is down to its reserve, and to nothing: what is kept for washing
   * is still aboard then.
   */
  reserveAtL: number;
  dryAtL: number;
}

/**
 * Both grades over a gap at the rates the verdict uses; null where no crew tells them. Washing draws what is kept for
 * it first, then what serves both; drinking what is kept for it first. The reserve is of drinking grade. Without
 * washing stops needs, arrivals and margins of both add up to the gap's own.
 */
export function gapGrades(
  water: GapWater,
  facts: Pick<VerdictFacts, 'firstUncoveredM' | 'atBestUnknown'>,
  whereAtL: (litres: number) => number | null,
): GradedGap | null {
  const { rig, departL, needL, reserveL } = water;
  const store = rig.water.grades;
  if (store === null) return null;
  const share = drinkingShare(rig);
  const drinkingNeedL = needL * share;
  const washingNeedL = needL - drinkingNeedL;
  const { washingCansL = 0 } = water;
  const inTanks = aboardOf(store, departL - washingCansL);
  const aboard = { ...inTanks, washingL: inTanks.washingL + washingCansL };
  const washed = washingDrawn(water, washingNeedL, aboard.washingL, store.keptForWashingL);
  const fromAnyL = Math.min(washed.beyondL, Math.max(0, aboard.anyL));
  const drinkableL = aboard.drinkingL + aboard.anyL;

  const levelAt = (leftL: number) =>
    drinkingNeedL === 0 ? Number.NEGATIVE_INFINITY : departL - ((drinkableL - leftL) / drinkingNeedL) * needL;
  const dryAtL = levelAt(0);
  const figures = (
    needs: number,
    reserve: number,
    arriveL: number,
    runsDryM: number | null,
  ): GradeFigures => {
    const marginL = arriveL - reserve;
    const verdict = verdictOf({ ...facts, arriveL, marginL, runsDryM });
    return { needL: needs, reserveL: reserve, arriveL, marginL, verdict };
  };
  const drinkingDryM = whereAtL(Math.max(dryAtL, 0));
  const washingDryL =
    washed.stops > 0 || washingNeedL === 0
      ? null
      : departL - ((aboard.washingL + aboard.anyL) / washingNeedL) * needL;
  return {
    grades: {
      drinking: figures(drinkingNeedL, reserveL, drinkableL - drinkingNeedL - fromAnyL, drinkingDryM),
      washing: figures(
        washingNeedL,
        0,
        washed.leftL - (washed.beyondL - fromAnyL),
        washingDryL === null ? null : whereAtL(washingDryL),
      ),
      washingTakenL: washed.takenL,
    },
    reserveAtL: Math.max(levelAt(reserveL), reserveL),
    dryAtL: Math.max(dryAtL, 0),
  };
}

/**
 * Of all water used at the high rate, the share that must be fit to drink, 0 to 1: what heat adds on a stretch is drunk,
 * so the share of the hottest one is taken all along, that drinking water is nowhere reckoned for less than it is.
 */
export function drinkingShare({ water }: Rig): number {
  const { grades, litresPerDay, addedByHeatPerDay = 0 } = water;
  if (grades === null) return 1;
  return (grades.drinkingPerDay.high + addedByHeatPerDay) / (litresPerDay.high + addedByHeatPerDay);
}

/**
 * Litres of all water that may be used up on leaving with `departL`, so that drinking grade keeps `reserveL`: the
 * smaller of what all water allows and of what drinking grade alone allows, at the ratio in which both are used.
 */
export function usableL(rig: Rig, departL: number, reserveL: number, washingCansL = 0): number {
  const store = rig.water.grades;
  const share = drinkingShare(rig);
  if (store === null || share === 0) return departL - reserveL;
  const { drinkingL, anyL } = aboardOf(store, departL - washingCansL);
  return Math.min(departL - reserveL, (drinkingL + anyL - reserveL) / share);
}

/** Washing water drawn along the gap, which is refilled at each stop: what was drawn beyond it, what is left, taken. */
function washingDrawn(
  { fromM, toM, departL, needL, levels, washingStopsM }: GapWater,
  washingNeedL: number,
  atStartL: number,
  fullL: number,
): { beyondL: number; leftL: number; takenL: number; stops: number } {
  const stops = washingStopsM.filter((atM) => atM > fromM && atM < toM);
  const usedBefore = (atM: number) => (needL === 0 ? 0 : (departL - levelAtM(levels, atM)) / needL);
  const cuts = [0, ...stops.map(usedBefore), 1];
  let leftL = atStartL;
  let beyondL = 0;
  let takenL = 0;
  for (let index = 1; index < cuts.length; index += 1) {
    const needed = washingNeedL * (at(cuts, index) - at(cuts, index - 1));
    const drawn = Math.min(leftL, needed);
    leftL -= drawn;
    beyondL += needed - drawn;
    if (index === cuts.length - 1) break;
    takenL += fullL - leftL;
    leftL = fullL;
  }
  return { beyondL, leftL, takenL, stops: stops.length };
}

/** The level on reaching a place. */
function levelAtM(levels: readonly Level[], atM: number): number {
  const next = levels.findIndex((level) => level.atM >= atM);
  if (next <= 0) return levels[next]?.litres ?? levels.at(-1)?.litres ?? 0;
  const before = at(levels, next - 1);
  const after = at(levels, next);
  const part = after.atM === before.atM ? 1 : (atM - before.atM) / (after.atM - before.atM);
  return before.litres + part * (after.litres - before.litres);
}
