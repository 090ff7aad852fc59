import type { Phrase } from '../phrases/phrases.ts';
import { litresPer100Km, metresOf } from '../quantity/rates.ts';
import { METRES_OF_WAY, type Term } from '../quantity/term.ts';
import type { Reserve } from '../rig/rig.ts';
import { type Course, type DearerStretch, type Edge, sketchyM } from './course/course.ts';
import { addedByHeat, addedWithin } from './course/hotter.ts';
import type { Detour } from './course/levels.ts';
import { amountBetween, sumBefore } from './course/profile.ts';
import {
  drivingDaysOfStanding,
  fillingL,
  nightDays,
  nightL,
  pushedNights,
  standingDays,
  standingLPerDay,
} from './course/standing.ts';
import { besidesDaysAt, besidesDaysVia, wayBackL } from './course/way-back.ts';

/** What has to be driven, and how long it takes. */
export interface Way {
  wayM: number;
  /** Driving, stays and the hours past the end, in days of the pace the verdict uses. */
  days: number;
  /** Metres off the route: detours and the way past the end, before the allowance. */
  offM: number;
  /** Days past the end of the route that its km do not explain. */
  onwardExtraDays: number;
  /** Days of filling and waiting at both ends. */
  standingDays: number;
  /** Of them, those over which water is drawn from the supply. */
  suppliedDays: number;
  /** Nights that standing brings onto the way, beyond those of the plan of days. */
  pushedNights: number;
  terms: Term[];
}

/**
 * The way from one edge to the next: route, both detours, any further detours (`viaM`, metres), the way past the
 * end of the route, all raised by the allowance.
 */
export function wayOf(course: Course, from: Edge, to: Edge, viaM = 0): Way {
  const onward = to.kind === 'end' ? course.onward : null;
  const onwardM = onward?.m ?? 0;
  const offM = from.detourM + to.detourM + viaM + onwardM;
  const wayM = amountBetween(course.wayM, from.atM, to.atM) + offM * course.off.wayM;
  const onwardExtraDays = Math.max(
    0,
    (onward?.hours ?? 0) / course.rig.pace.hoursPerDay - onwardM * course.off.days,
  );
  const lengthM = to.atM - from.atM;
  const straightLines = sketchyM(course, from.atM, to.atM) > 0;
  const extras: [Phrase, number][] = [
    [{ phrase: 'back-to-the-route', facts: {} }, from.detourM],
    [{ phrase: 'failing-supply-and-back', facts: {} }, viaM],
    [{ phrase: 'to-the-supply', facts: {} }, to.detourM],
    [{ phrase: 'past-the-end', facts: {} }, onwardM],
    [{ phrase: 'allowance-for-bends', facts: { straightLines } }, wayM - lengthM - offM],
  ];
  const standing = standingDays(from, to);
  const nights = pushedNights(course, from, to);
  return {
    wayM,
    days:
      amountBetween(course.days, from.atM, to.atM) +
      offM * course.off.days +
      onwardExtraDays +
      standing +
      nights * nightDays(course),
    offM,
    onwardExtraDays,
    standingDays: standing,
    suppliedDays: from.givesAll === true ? (from.fillDays ?? 0) : 0,
    pushedNights: nights,
    terms: [
      wayTerm({ phrase: 'along-the-route', facts: {} }, lengthM),
      ...extras.filter(([, metres]) => metres !== 0).map(([label, metres]) => wayTerm(label, metres)),
    ],
  };
}

const wayTerm = (label: Phrase, value: number): Term => ({ label, value, unit: METRES_OF_WAY });

export interface Litres {
  litres: number;
  terms: Term[];
}

/** Use over a way at the rate the verdict uses, without reserve. */
export function needOf(course: Course, from: Edge, to: Edge, way: Way): Litres {
  if (course.commodity === 'water')
    return waterFor(course, { fromM: from.atM, toM: to.atM, days: way.days - way.suppliedDays });
  const terms = course.explain(from.atM, to.atM);
  if (way.offM !== 0) {
    const label: Phrase = { phrase: 'off-the-route', facts: { wayM: way.offM * course.off.wayM } };
    terms.push({ label, value: way.offM * course.off.litres, unit: 'l' });
  }
  const standingL = way.standingDays * standingLPerDay(course) + way.pushedNights * nightL(course);
  if (standingL !== 0) {
    terms.push({ label: { phrase: 'filling-and-waiting', facts: {} }, value: standingL, unit: 'l' });
  }
  return {
    litres: amountBetween(course.litres.out, from.atM, to.atM) + way.offM * course.off.litres + standingL,
    terms,
  };
}

/**
 * Use over the way from `from` to `to` and home again; stays, filling, waiting and further detours are on the way out.
 */
export function returnNeedL(course: Course, from: Edge, to: Edge, detours: readonly Detour[] = []): number {
  const viaM = detours.reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const besidesDays =
    besidesDaysAt(course, from) +
    2 * to.detourM * course.off.days +
    (course.clock === null
      ? 0
      : drivingDaysOfStanding(course.clock, to.waitDays ?? 0, sumBefore(course.clock.usedShare, to.atM))) +
    besidesDaysVia(course, detours);
  return (
    amountBetween(course.litres.out, from.atM, to.atM) +
    (from.detourM + to.detourM + viaM) * course.off.litres +
    fillingL(course, from) +
    (to.waitDays ?? 0) * standingLPerDay(course) +
    to.detourM * course.off.homeLitres +
    wayBackL(course, from, to.atM, besidesDays)
  );
}

/** Water for the days that pass between two places, and what heat adds to it. */
export function waterFor(course: Course, over: { fromM: number; toM: number; days: number }): Litres {
  const { days } = over;
  const { high } = course.rig.water.litresPerDay;
  const litres = days * high;
  const label: Phrase = { phrase: 'days-elapsed', facts: { days, litresPerDay: high } };
  const terms: Term[] = [{ label, value: litres, unit: 'l' }];
  const addedL = addedByHeat(course, over);
  if (addedL > 0) terms.push({ label: { phrase: 'hotter-stretches', facts: {} }, value: addedL, unit: 'l' });
  return { litres: litres + addedL, terms };
}

/**
 * What must still be aboard on arrival at a place, metres along; null for no place in particular, where kilometres are
 * those of the rig's own high rate, as they are nowhere below it.
 */
export function reserveOf(course: Course, needL: number, atM: number | null): Litres {
  const store = course.rig[course.commodity];
  const base = baseOf(course, store.reserve.base, atM);
  const share = store.reserve.shareOfNeed * needL;
  const terms: Term[] = [{ label: base.label, value: base.litres, unit: 'l' }];
  if (share !== 0) {
    const label: Phrase = { phrase: 'share-of-need', facts: { share: store.reserve.shareOfNeed } };
    terms.push({ label, value: share, unit: 'l' });
  }
  return { litres: base.litres + share, terms };
}

/** Before a place this much of the way tells what a reserve is driven on, metres: the leg's last kilometre. */
const LEG_END_M = 1000;

/**
 * What of the way a reserve of so many kilometres is driven on takes most: the leg's last kilometre, or what comes as far
 * behind its end. Null where none takes more than the rig's own rate.
 */
function dearestNear({ dearer }: Course, atM: number, km: number): DearerStretch | null {
  return dearer.reduce<DearerStretch | null>((most, stretch) => {
    const isNear = stretch.fromM < atM + metresOf(km) && stretch.toM > atM - LEG_END_M;
    return isNear && (most === null || stretch.litresPerM > most.litresPerM) ? stretch : most;
  }, null);
}

function reserveKm(course: Course, km: number, atM: number | null): { litres: number; label: Phrase } {
  const dearest = atM === null ? null : dearestNear(course, atM, km);
  const rate = dearest === null ? course.rig.fuel.litresPer100Km.high : litresPer100Km(dearest.litresPerM);
  const facts = { km, litresPer100Km: rate, surface: dearest?.surface ?? null };
  return { litres: (km * rate) / 100, label: { phrase: 'reserve-km', facts } };
}

function baseOf(
  course: Course,
  base: Reserve['base'],
  atM: number | null,
): { litres: number; label: Phrase } {
  switch (base.unit) {
    case 'km':
      return reserveKm(course, base.value, atM);
    case 'days': {
      const { litresPerDay, grades } = course.rig.water;
      const { high: plainPerDay } = grades === null ? litresPerDay : grades.drinkingPerDay;
      const high = plainPerDay + (atM === null ? 0 : addedWithin(course, atM - LEG_END_M, atM));
      const facts = { days: base.value, litresPerDay: high, graded: grades !== null, why: base.why ?? null };
      return { litres: base.value * high, label: { phrase: 'reserve-days', facts } };
    }
    case 'fraction':
      return {
        litres: base.value * course.rig[course.commodity].drawableL,
        label: { phrase: 'reserve-fraction', facts: { share: base.value } },
      };
    case 'litres':
      return { litres: base.value, label: { phrase: 'reserve-litres', facts: { litres: base.value } } };
  }
}
