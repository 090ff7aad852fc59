import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { litresPerM } from '../../quantity/rates.ts';
import type { SpanM } from '../../quantity/span.ts';
import { metresPerDayOf, type Rig } from '../../rig/rig.ts';
import type { SketchySpan } from '../../route/route-line.ts';
import type { Course, Stay } from './course.ts';
import { amountBetween, type Profile, profileOf } from './profile.ts';

/** A straight line where a road is meant is this much shorter than the road (ours). */
export const SKETCHY_FACTOR = 1.3;

/** What a course of one rate all the way is made of. */
export interface EvenCourseFacts {
  commodity: Commodity;
  rig: Rig;
  lengthM: number;
  /** Needs are the measured way times this: 1.05 for an allowance of 5 %. */
  allowanceFactor: number;
  /** Where the surface is told: stretches that tile the route, each with its own; else `allowanceFactor` holds. */
  allowances?: readonly (SpanM & { factor: number })[];
  sketchy: readonly SketchySpan[];
  /** In route order. */
  stays: readonly Stay[];
  oneWay: readonly SpanM[];
  uncovered: readonly SpanM[];
  onward: { m: number; hours: number } | null;
}

/** A course on which every kilometre of way costs the same: one rate of use, one pace. */
export function evenCourse(facts: EvenCourseFacts): Course {
  const { rig, commodity, lengthM, sketchy, allowanceFactor } = facts;
  const daysPerWayM = 1 / metresPerDayOf(rig);
  const litresPerWayM =
    commodity === 'fuel'
      ? litresPerM(rig.fuel.litresPer100Km.high)
      : rig.water.litresPerDay.high * daysPerWayM;
  const standing = commodity === 'fuel' ? 0 : rig.water.litresPerDay.high;

  const along = (perWayM: number, perStayDay: number): Profile =>
    profileOf(stepsOf(facts, perWayM, perStayDay));
  const wayM = along(1, 0);
  return {
    commodity,
    rig,
    lengthM,
    wayM,
    days: along(daysPerWayM, 1),
    litres: { out: along(litresPerWayM, standing), home: along(litresPerWayM, 0) },
    clock: null,
    dearer: [],
    off: {
      wayM: allowanceFactor,
      days: allowanceFactor * daysPerWayM,
      litres: allowanceFactor * litresPerWayM,
      homeLitres: allowanceFactor * litresPerWayM,
    },
    explain: (fromM, toM) => {
      const metres = amountBetween(wayM, fromM, toM);
      const rate = rig.fuel.litresPer100Km.high;
      const label: Phrase = { phrase: 'along-the-route-at', facts: { wayM: metres, litresPer100Km: rate } };
      return [{ label, value: metres * litresPerM(rate), unit: 'l' }];
    },
    sketchy,
    oneWay: facts.oneWay,
    uncovered: facts.uncovered,
    onward: facts.onward,
  };
}

function stepsOf(
  { lengthM, sketchy, stays, allowanceFactor, allowances = [] }: EvenCourseFacts,
  perWayM: number,
  perStayDay: number,
): { lengthM: number; amount: number }[] {
  const places = [
    ...new Set([
      0,
      lengthM,
      ...sketchy.flatMap((span) => [span.fromM, span.toM]),
      ...stays.map((stay) => stay.atM),
      ...allowances.flatMap((span) => [span.fromM, span.toM]),
    ]),
  ].sort((a, b) => a - b);
  return places.slice(0, -1).flatMap((fromM, index) => {
    const toM = at(places, index + 1);
    const straight = sketchy.some((span) => span.fromM <= fromM && toM <= span.toM);
    const drivenM = (toM - fromM) * (straight ? SKETCHY_FACTOR : 1);
    const stayDays = stays.filter((stay) => stay.atM === fromM).reduce((sum, stay) => sum + stay.days, 0);
    const factor =
      allowances.find((span) => span.fromM <= fromM && toM <= span.toM)?.factor ?? allowanceFactor;
    const step = { lengthM: toM - fromM, amount: drivenM * factor * perWayM };
    return stayDays === 0 ? [step] : [{ lengthM: 0, amount: stayDays * perStayDay }, step];
  });
}
