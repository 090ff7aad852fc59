import type { Course } from '../gaps/course.ts';
import { type Profile, profileOf } from '../gaps/profile.ts';
import { at, numberAt } from '../lists/at.ts';
import { paceOn } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';

/**
 * A course whose days go by the plan: by surface, and with an hour of departure by the time that passes, each night in
 * its place. Water goes with the days. A plan of one pace all the way without an hour of departure changes nothing.
 * Way off the route, and the way home, are reckoned in days of driving: their nights have no place yet.
 */
export function pacedCourse(even: Course, plan: PacePlan): Course {
  if (!plan.timed && !plan.bySurface) return even;
  const { hoursPerDay, kmPerHour } = paceOn(plan.rig, 'unknown');
  const daysPerWayM = 1 / (hoursPerDay * kmPerHour.slow * 1000);
  const days = plan.timed ? elapsedDays(plan) : drivingDays(even, plan);
  const off = { ...even.off, days: even.off.wayM * daysPerWayM };
  const charge = plan.timed ? 'elapsed' : 'days-begun';
  if (even.commodity === 'fuel') return { ...even, days, off, charge };
  const { high } = even.rig.water.litresPerDay;
  const home = profileOf(
    plan.pieces.map((piece) => ({ lengthM: piece.toM - piece.fromM, amount: piece.dayShare * high })),
  );
  return {
    ...even,
    days,
    litres: { out: times(days, high), home },
    off: { ...off, litres: off.days * high },
    charge,
  };
}

/** Days that have passed since departure, at the slow pace. */
const elapsedDays = (plan: PacePlan): Profile => times(plan.schedules.slow.elapsedH, 1 / 24);

/** Days of driving by surface, with the stays of the even course as jumps. */
function drivingDays(even: Course, plan: PacePlan): Profile {
  const stays = staysIn(even.days);
  const atM = [0];
  const sum = [0];
  let days = 0;
  const mark = (place: number) => {
    atM.push(place);
    sum.push(days);
  };
  let next = 0;
  for (const piece of plan.pieces) {
    let { fromM, dayShare } = piece;
    for (; next < stays.length && at(stays, next).atM < piece.toM; next += 1) {
      const stay = at(stays, next);
      const part = Math.max(0, stay.atM - fromM) / (piece.toM - fromM);
      days += dayShare * part;
      mark(stay.atM);
      days += stay.days;
      mark(stay.atM);
      dayShare *= 1 - part;
      fromM = Math.max(fromM, stay.atM);
    }
    days += dayShare;
    mark(piece.toM);
  }
  return { atM: Float64Array.from(atM), sum: Float64Array.from(sum) };
}

/** The jumps of a profile, in order. */
function staysIn(profile: Profile): { atM: number; days: number }[] {
  const stays: { atM: number; days: number }[] = [];
  for (let index = 1; index < profile.atM.length; index += 1) {
    if (profile.atM[index] !== profile.atM[index - 1]) continue;
    const days = numberAt(profile.sum, index) - numberAt(profile.sum, index - 1);
    if (days > 0) stays.push({ atM: numberAt(profile.atM, index), days });
  }
  return stays;
}

const times = (profile: Profile, factor: number): Profile => ({
  atM: profile.atM,
  sum: profile.sum.map((value) => value * factor),
});
