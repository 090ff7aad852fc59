import type { Course } from '../gaps/course/course.ts';
import type { DayClock } from '../gaps/course/day-clock.ts';
import { raisedOn } from '../gaps/course/hotter.ts';
import { type Profile, profileOf } from '../gaps/course/profile.ts';
import { HOURS_PER_DAY } from '../gaps/course/standing.ts';
import { metresOf } from '../quantity/rates.ts';
import { mostWaterPerDay } from '../rig/rig.ts';
import { paceOn } from './pace-on.ts';
import type { PacePlan } from './pace-plan.ts';
import type { Piece } from './schedule.ts';

/**
 * A course whose days go by the plan: by the time that passes, each night in its place, on the way home as well. Water
 * goes with the days, more of it where it is hotter. On the way to a supply off the route nights are shared out over the driving.
 */
export function pacedCourse(even: Course, plan: PacePlan): Course {
  const { hoursPerDay, kmPerHour } = paceOn(plan.rig, 'unknown');
  const hoursPerWayM = 1 / metresOf(kmPerHour.slow);
  const days = elapsedDays(plan);
  const off = { ...even.off, days: (even.off.wayM * hoursPerWayM) / hoursPerDay };
  if (even.commodity === 'fuel') {
    const { perHour, hours } = even.rig.fuel.model;
    const nightL = perHour.heater * hours.heaterPerNight;
    return { ...even, days, off, clock: nightL === 0 ? null : clockOf(plan, nightL) };
  }
  const { high } = even.rig.water.litresPerDay;
  const most = mostWaterPerDay(even.rig);
  const litresPerHour = high / HOURS_PER_DAY;
  const raised = (profile: Profile): Profile => raisedOn(even.hotter ?? [], profile, high);
  return {
    ...even,
    days,
    litres: {
      out: raised(times(days, high)),
      home: raised(along(plan, (piece) => (piece.hours + aboardH(plan, piece)) * litresPerHour)),
    },
    clock: clockOf(plan, ((HOURS_PER_DAY - fewestHoursOf(plan)) * most) / HOURS_PER_DAY),
    off: {
      ...off,
      litres: off.days * most,
      homeLitres: (even.off.wayM * hoursPerWayM * most) / HOURS_PER_DAY,
    },
  };
}

/** Hours aboard a ferry that a piece comes to: on the way home they are no stay. */
function aboardH({ ferries }: PacePlan, { fromM, toM }: Piece): number {
  const ferry = ferries.find((one) => one.fromM <= fromM && toM <= one.toM);
  return ferry === undefined ? 0 : (ferry.hours * (toM - fromM)) / (ferry.toM - ferry.fromM);
}

const clockOf = (plan: PacePlan, nightL: number): DayClock => ({
  hoursPerDay: fewestHoursOf(plan),
  drivenDays: along(plan, ({ dayShare }) => dayShare),
  usedShare: plan.schedules.slow.usedShare,
  nightL,
});

/** Hours driven in a day on the surface of the route, or off it, where they are fewest. */
const fewestHoursOf = ({ rig, surfaces }: PacePlan): number =>
  Math.min(...[...surfaces, 'unknown' as const].map((surface) => paceOn(rig, surface).hoursPerDay));

const along = ({ pieces }: PacePlan, amount: (piece: Piece) => number): Profile =>
  profileOf(pieces.map((piece) => ({ lengthM: piece.toM - piece.fromM, amount: amount(piece) })));

/** Days that have passed since departure, at the slow pace. */
const elapsedDays = (plan: PacePlan): Profile => times(plan.schedules.slow.elapsedH, 1 / HOURS_PER_DAY);

const times = (profile: Profile, factor: number): Profile => ({
  atM: profile.atM,
  sum: profile.sum.map((value) => value * factor),
});
