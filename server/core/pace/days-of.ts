import type { Report } from '../../contract/analysis.ts';
import type { Day, Days } from '../../contract/pace.ts';
import { sumBefore } from '../gaps/profile.ts';
import { dateAfter, localTime } from './clock.ts';
import type { PaceEnd } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';

/** The day table, with what is left of fuel and water at each day's end. */
export function daysOf(plan: PacePlan, lengthM: number, fuel: Report, water: Report): Days {
  const { slow, typical, fast } = plan.schedules;
  const elapsed = (pace: PaceEnd) => sumBefore(plan.schedules[pace].elapsedH, lengthM) / 24;
  const { date, hour } = plan.departure;
  let haltsBefore = 0;
  const rows = slow.days.map((day, position): Day => {
    const haltM = day.toM;
    // The how manieth day's end at this very place: a stay empties the tanks day by day.
    haltsBefore = position > 0 && slow.days[position - 1]!.toM === haltM ? haltsBefore + 1 : 0;
    let daysHere = 1;
    while (slow.days[position + daysHere]?.toM === haltM) daysHere += 1;
    const share = haltsBefore / (haltsBefore + daysHere);
    const arrive =
      date === null || !plan.timed || day.hours === 0
        ? null
        : {
            earliest: localTime({ date, hour }, sumBefore(fast.elapsedH, haltM)),
            latest: localTime({ date, hour }, sumBefore(slow.elapsedH, haltM)),
          };
    return {
      day: day.index + 1,
      date: date === null ? null : dateAfter(date, day.index),
      fromKm: day.fromM / 1000,
      toKm: haltM / 1000,
      hours: day.hours,
      halt: day.halt,
      arrive,
      fuelL: leftAt(fuel, haltM / 1000, share),
      waterL: leftAt(water, haltM / 1000, share),
      waterByGrade: leftByGrade(water, haltM / 1000, share),
    };
  });
  return {
    rows,
    allListed: slow.allListed,
    drivingHours: { slow: slow.drivingH, typical: typical.drivingH, fast: fast.drivingH },
    elapsedDays: { slow: elapsed('slow'), typical: elapsed('typical'), fast: elapsed('fast') },
    waterCharge: plan.timed ? 'elapsed' : 'days-begun',
  };
}

/**
 * Litres aboard on reaching a place; at a supply, before it is filled. Where standing there takes litres, `share` (0 to
 * 1) is how much of the standing is over.
 */
function leftAt(report: Report, atKm: number, share = 0): number {
  const gap = gapAt(report, atKm);
  const { levels } = gap;
  if (gap.to.atKm <= atKm) return gap.arriveL;
  const index = levels.findIndex((level) => level.atKm >= atKm);
  const after = levels[index] ?? levels.at(-1)!;
  if (after.atKm === atKm) {
    const last = levels.findLast((level) => level.atKm === atKm) ?? after;
    return after.litres + share * (last.litres - after.litres);
  }
  const before = levels[index - 1] ?? after;
  if (before.atKm === after.atKm) return after.litres;
  const part = (atKm - before.atKm) / (after.atKm - before.atKm);
  return before.litres + part * (after.litres - before.litres);
}

/**
 * The same by grade: each grade goes down over a gap as the whole does. Washing water taken on the way counts from the
 * gap's end only.
 */
function leftByGrade(report: Report, atKm: number, share = 0): Day['waterByGrade'] {
  const gap = gapAt(report, atKm);
  if (gap.grades === null || gap.grades === undefined) return null;
  const { drinking, washing, washingTakenL } = gap.grades;
  const over = gap.to.atKm <= atKm;
  const gone = gap.needL === 0 ? 1 : (gap.departL - leftAt(report, atKm, share)) / gap.needL;
  const left = (grade: typeof drinking, takenL: number) =>
    over ? grade.arriveL : grade.arriveL - takenL + grade.needL * (1 - gone);
  return { drinkingL: left(drinking, 0), washingL: left(washing, washingTakenL) };
}

const gapAt = (report: Report, atKm: number) =>
  report.gaps.find((one) => one.to.atKm >= atKm) ?? report.gaps.at(-1)!;
