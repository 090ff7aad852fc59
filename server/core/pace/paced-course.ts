import type { Course } from '../gaps/course.ts';
import { type Profile, profileOf } from '../gaps/profile.ts';
import { metresOf } from '../quantity/rates.ts';
import { paceOn } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';

/**
 * A course whose days go by the plan: by the time that passes, each night in its place. Water goes with the days.
 * Way off the route, and the way home, are reckoned in days of driving: their nights have no place yet.
 */
export function pacedCourse(even: Course, plan: PacePlan): Course {
  const { hoursPerDay, kmPerHour } = paceOn(plan.rig, 'unknown');
  const daysPerWayM = 1 / (hoursPerDay * metresOf(kmPerHour.slow));
  const days = elapsedDays(plan);
  const off = { ...even.off, days: even.off.wayM * daysPerWayM };
  if (even.commodity === 'fuel') return { ...even, days, off };
  const { high } = even.rig.water.litresPerDay;
  const home = profileOf(
    plan.pieces.map((piece) => ({ lengthM: piece.toM - piece.fromM, amount: piece.dayShare * high })),
  );
  return {
    ...even,
    days,
    litres: { out: times(days, high), home },
    off: { ...off, litres: off.days * high },
  };
}

/** Days that have passed since departure, at the slow pace. */
const elapsedDays = (plan: PacePlan): Profile => times(plan.schedules.slow.elapsedH, 1 / 24);

const times = (profile: Profile, factor: number): Profile => ({
  atM: profile.atM,
  sum: profile.sum.map((value) => value * factor),
});
