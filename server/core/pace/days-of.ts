import { sumBefore } from '../gaps/course/profile.ts';
import type { Report } from '../gaps/gap.ts';
import { at } from '../lists/at.ts';
import { dateAfter } from './clock.ts';
import type { Day, Days } from './day.ts';
import type { PaceEnd } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';
import { timeSpan } from './time-there.ts';

/** The day table, with what is left of fuel and water at each day's end. */
export function daysOf(plan: PacePlan, lengthM: number, fuel: Report, water: Report): Days {
  const { slow, typical, fast } = plan.schedules;
  const elapsed = (pace: PaceEnd) => sumBefore(plan.schedules[pace].elapsedH, lengthM) / 24;
  const { date } = plan.departure;
  let haltsBefore = 0;
  const rows = slow.days.map((day, position): Day => {
    const haltM = day.toM;
    // The how manieth day's end at this very place: a stay empties the tanks day by day.
    haltsBefore = position > 0 && at(slow.days, position - 1).toM === haltM ? haltsBefore + 1 : 0;
    let daysHere = 1;
    while (slow.days[position + daysHere]?.toM === haltM) daysHere += 1;
    const share = haltsBefore / (haltsBefore + daysHere);
    const arrive = day.hours === 0 ? null : timeSpan(plan, haltM);
    return {
      day: day.index + 1,
      date: date === null ? null : dateAfter(date, day.index),
      fromM: day.fromM,
      toM: haltM,
      hours: day.hours,
      halt: day.halt,
      arrive,
      fuelL: leftAt(fuel, haltM, share),
      waterL: leftAt(water, haltM, share),
      waterByGrade: leftByGrade(water, haltM, share),
    };
  });
  return {
    rows,
    allListed: slow.allListed,
    drivingHours: { slow: slow.drivingH, typical: typical.drivingH, fast: fast.drivingH },
    elapsedDays: { slow: elapsed('slow'), typical: elapsed('typical'), fast: elapsed('fast') },
    waterCharge: 'elapsed',
  };
}

/**
 * Litres aboard on reaching a place; at a supply, before it is filled. Where standing there takes litres, `share` (0 to
 * 1) is how much of the standing is over.
 */
function leftAt(report: Report, atM: number, share = 0): number {
  const gap = gapAt(report, atM);
  const { levels } = gap;
  if (gap.to.atM <= atM) return gap.arriveL;
  const index = levels.findIndex((level) => level.atM >= atM);
  const after = levels[index] ?? at(levels, levels.length - 1);
  if (after.atM === atM) {
    const last = levels.findLast((level) => level.atM === atM) ?? after;
    return after.litres + share * (last.litres - after.litres);
  }
  const before = levels[index - 1] ?? after;
  if (before.atM === after.atM) return after.litres;
  const part = (atM - before.atM) / (after.atM - before.atM);
  return before.litres + part * (after.litres - before.litres);
}

/**
 * The same by grade: each grade goes down over a gap as the whole does. Washing water taken on the way counts from the
 * gap's end only.
 */
function leftByGrade(report: Report, atM: number, share = 0): Day['waterByGrade'] {
  const gap = gapAt(report, atM);
  if (gap.grades === null || gap.grades === undefined) return null;
  const { drinking, washing, washingTakenL } = gap.grades;
  const over = gap.to.atM <= atM;
  const gone = gap.needL === 0 ? 1 : (gap.departL - leftAt(report, atM, share)) / gap.needL;
  const left = (grade: typeof drinking, takenL: number) =>
    over ? grade.arriveL : grade.arriveL - takenL + grade.needL * (1 - gone);
  return { drinkingL: left(drinking, 0), washingL: left(washing, washingTakenL) };
}

const gapAt = (report: Report, atM: number) =>
  report.gaps.find((one) => one.to.atM >= atM) ?? at(report.gaps, report.gaps.length - 1);
