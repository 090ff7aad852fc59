import type { Term } from '../../contract/analysis.ts';
import { SLACK } from '../quantity/slack.ts';
import type { Reserve } from '../rig/rig.ts';
import { type Course, type EdgeM, sketchyM } from './course.ts';
import { amountBetween } from './profile.ts';
import { standingDays, standingLPerDay } from './standing.ts';

/** What has to be driven, and how long it takes. */
export interface Way {
  wayKm: number;
  /** Driving, stays and the hours past the end, in days of the pace the verdict uses. */
  days: number;
  /** Metres off the route: detours and the way past the end, before the allowance. */
  offM: number;
  /** Days past the end of the route that its km do not explain. */
  onwardExtraDays: number;
  /** Days of filling and waiting at both ends. */
  standingDays: number;
  terms: Term[];
}

/**
 * The way from one edge to the next: route, both detours, any further detours (`viaM`, metres), the way past the
 * end of the route, all raised by the allowance.
 */
export function wayOf(course: Course, from: EdgeM, to: EdgeM, viaM = 0): Way {
  const onward = to.kind === 'end' ? course.onward : null;
  const onwardM = (onward?.km ?? 0) * 1000;
  const offM = from.detourM + to.detourM + viaM + onwardM;
  const wayKm = (amountBetween(course.wayM, from.atM, to.atM) + offM * course.off.wayM) / 1000;
  const onwardExtraDays = Math.max(
    0,
    (onward?.hours ?? 0) / course.rig.pace.hoursPerDay - onwardM * course.off.days,
  );

  const lengthKm = (to.atM - from.atM) / 1000;
  const terms: Term[] = [{ label: 'along the route', value: lengthKm, unit: 'km' }];
  const add = (label: string, value: number) => {
    if (value !== 0) terms.push({ label, value, unit: 'km' });
  };
  add('from the supply back to the route', from.detourM / 1000);
  add('to a supply that fails, and back', viaM / 1000);
  add('from the route to the supply', to.detourM / 1000);
  add('past the end of the route', onwardM / 1000);
  const raised = sketchyM(course, from.atM, to.atM) > 0 ? ' and straight lines' : '';
  add(`allowance for bends${raised}`, wayKm - lengthKm - offM / 1000);
  const standing = standingDays(from, to);
  return {
    wayKm,
    days: amountBetween(course.days, from.atM, to.atM) + offM * course.off.days + onwardExtraDays + standing,
    offM,
    onwardExtraDays,
    standingDays: standing,
    terms,
  };
}

export interface Litres {
  litres: number;
  terms: Term[];
}

/** Use over a way at the rate the verdict uses, without reserve. */
export function needOf(course: Course, from: EdgeM, to: EdgeM, way: Way): Litres {
  if (course.commodity === 'water') return waterFor(course, way.days);
  const terms = course.explain(from.atM, to.atM);
  if (way.offM !== 0) {
    const label = `${shown((way.offM * course.off.wayM) / 1000)} km off the route`;
    terms.push({ label, value: way.offM * course.off.litres, unit: 'l' });
  }
  const standingL = way.standingDays * standingLPerDay(course);
  if (standingL !== 0) terms.push({ label: 'filling and waiting', value: standingL, unit: 'l' });
  return {
    litres: amountBetween(course.litres.out, from.atM, to.atM) + way.offM * course.off.litres + standingL,
    terms,
  };
}

/** Use over the way from `from` to `to` and home again; stays, filling and waiting are on the way out. */
export function returnNeedL(course: Course, from: EdgeM, to: EdgeM): number {
  const offM = 2 * (from.detourM + to.detourM);
  const litres =
    amountBetween(course.litres.out, from.atM, to.atM) +
    amountBetween(course.litres.home, from.atM, to.atM) +
    offM * course.off.litres +
    standingDays(from, to) * standingLPerDay(course);
  if (course.commodity === 'fuel') return litres;
  return waterFor(course, litres / course.rig.water.litresPerDay.high).litres;
}

/** Water for a number of days: for every day begun, or by the time that passes. */
function waterFor(course: Course, days: number): Litres {
  const { high } = course.rig.water.litresPerDay;
  const charged = course.charge === 'elapsed' ? days : Math.ceil(days - SLACK);
  const what =
    course.charge === 'elapsed'
      ? `${shown(charged)} days`
      : `${charged} ${charged === 1 ? 'day' : 'days'} begun`;
  const litres = charged * high;
  return { litres, terms: [{ label: `${what} at ${high} l a day`, value: litres, unit: 'l' }] };
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
      const { litresPerDay, grades } = course.rig.water;
      const { high } = grades === null ? litresPerDay : grades.drinkingPerDay;
      const grade = grades === null ? '' : ' of drinking grade';
      const why = base.why === undefined ? '' : ` (${base.why})`;
      return {
        litres: base.value * high,
        label: `${grades === null && base.why === undefined ? base.value : shown(base.value)} days at ${grades === null ? high : shown(high)} l a day${grade}${why}`,
      };
    }
    case 'fraction':
      return { litres: base.value * drawableL, label: `${shown(base.value * 100)} % of what the tanks give` };
    case 'litres':
      return { litres: base.value, label: `${base.value} litres` };
  }
}

/** For labels only. */
const shown = (value: number): string => String(Math.round(value * 10) / 10);
