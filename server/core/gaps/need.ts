import type { Term } from '../../contract/analysis.ts';
import { kmPerDayOf, type Reserve } from '../rig/rig.ts';
import { type Course, drivenM, type EdgeM, SKETCHY_FACTOR, sketchyM, stayDays } from './course.ts';

/**
 * Days are floats; a gap of 3 days that comes out as 3.000000000001 has not begun a fourth.
 * The same slack keeps float noise from turning a margin of nothing into a shortage. Days or litres.
 */
export const SLACK = 1e-9;

/** What has to be driven, and how long it takes: all in the terms it was summed from. */
export interface Way {
  wayKm: number;
  /** Driving, stays and the hours past the end, in days of the pace the verdict uses. */
  days: number;
  /** Of `days`: standing still (stays) and hours past the end of the route that its km do not explain. */
  standingDays: number;
  onwardExtraDays: number;
  terms: Term[];
}

/**
 * The way from one edge to the next: route, both detours, any further detours (`viaM`, metres), the way past the
 * end of the route, all raised by the allowance.
 */
export function wayOf(course: Course, from: EdgeM, to: EdgeM, viaM = 0): Way {
  const lengthKm = (to.atM - from.atM) / 1000;
  const sketchyKm = ((SKETCHY_FACTOR - 1) * sketchyM(course, from.atM, to.atM)) / 1000;
  const onward = to.kind === 'end' ? course.onward : null;
  const onwardKm = onward?.km ?? 0;
  const drivenKm = (drivenM(course, from.atM, to.atM) + from.detourM + to.detourM + viaM) / 1000 + onwardKm;
  const wayKm = drivenKm * course.allowanceFactor;

  const kmPerDay = kmPerDayOf(course.rig);
  const standingDays = stayDays(course, from.atM, to.atM);
  const onwardExtraDays = Math.max(
    0,
    (onward?.hours ?? 0) / course.rig.pace.hoursPerDay - (onwardKm * course.allowanceFactor) / kmPerDay,
  );

  const terms: Term[] = [{ label: 'along the route', value: lengthKm, unit: 'km' }];
  const add = (label: string, value: number) => {
    if (value !== 0) terms.push({ label, value, unit: 'km' });
  };
  add('straight lines where a road is meant, 30 % more', sketchyKm);
  add('from the supply back to the route', from.detourM / 1000);
  add('to a supply that fails, and back', viaM / 1000);
  add('from the route to the supply', to.detourM / 1000);
  add('past the end of the route', onwardKm);
  add('allowance for bends', drivenKm * (course.allowanceFactor - 1));
  return {
    wayKm,
    days: wayKm / kmPerDay + standingDays + onwardExtraDays,
    standingDays,
    onwardExtraDays,
    terms,
  };
}

export interface Litres {
  litres: number;
  terms: Term[];
}

/** Use over a way at the rate the verdict uses, without reserve. Water is charged for every day begun. */
export function needOf(course: Course, way: Pick<Way, 'wayKm' | 'days'>): Litres {
  if (course.commodity === 'fuel') {
    const { high } = course.rig.fuel.litresPer100Km;
    const litres = (way.wayKm * high) / 100;
    return {
      litres,
      terms: [{ label: `${shown(way.wayKm)} km at ${high} l/100 km`, value: litres, unit: 'l' }],
    };
  }
  const { high } = course.rig.water.litresPerDay;
  const days = Math.ceil(way.days - SLACK);
  const litres = days * high;
  const label = `${days} ${days === 1 ? 'day' : 'days'} begun at ${high} l a day`;
  return { litres, terms: [{ label, value: litres, unit: 'l' }] };
}

/** What must still be aboard on arrival. */
export function reserveOf(course: Course, needL: number): Litres {
  const store = course.rig[course.commodity];
  const base = baseOf(course, store.reserve.base, store.drawableL);
  const share = store.reserve.shareOfNeed * needL;
  const terms: Term[] = [{ label: base.label, value: base.litres, unit: 'l' }];
  if (share !== 0) {
    terms.push({ label: `${shown(store.reserve.shareOfNeed * 100)} % of the need`, value: share, unit: 'l' });
  }
  return { litres: base.litres + share, terms };
}

function baseOf(course: Course, base: Reserve['base'], drawableL: number): { litres: number; label: string } {
  switch (base.unit) {
    case 'km': {
      const { high } = course.rig.fuel.litresPer100Km;
      return { litres: (base.value * high) / 100, label: `${base.value} km at ${high} l/100 km` };
    }
    case 'days': {
      const { high } = course.rig.water.litresPerDay;
      return { litres: base.value * high, label: `${base.value} days at ${high} l a day` };
    }
    case 'fraction':
      return { litres: base.value * drawableL, label: `${shown(base.value * 100)} % of what the tanks give` };
    case 'litres':
      return { litres: base.value, label: `${base.value} litres` };
  }
}

/** For labels only. */
const shown = (value: number): string => String(Math.round(value * 10) / 10);
