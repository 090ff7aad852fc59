import type { Commodity } from '../../contract/common.ts';
import type { WayOut } from '../../contract/plan.ts';
import type { RigFile } from '../../contract/rig.ts';
import { depotWaysOut } from './depots.ts';
import { otherStopWaysOut } from './other-stops.ts';
import { COMMODITIES } from './problem.ts';
import { canKgOf, problemOf } from './problem-of.ts';
import { solveCarry } from './solve.ts';
import { bare, plannedCans, type WaysOutContext } from './try-change.ts';

/** More cans than this are no way out (ours). */
const MOST_CANS = 40;
/** Hours a day that nobody should be told to drive beyond (ours). */
const MOST_HOURS = 10;

/**
 * Changes with which there is a plan, each computed again and found; a smaller reserve is never one of them. `complete`
 * is false where the time ran out before all were tried.
 */
export function waysOut(context: WaysOutContext): { ways: WayOut[]; complete: boolean } {
  const ways: WayOut[] = [];
  for (const kind of [moreCans, lessWashing, longerDays, depotWaysOut, otherStopWaysOut]) {
    if (context.clock() >= context.until) return { ways, complete: false };
    ways.push(...kind(context));
  }
  return { ways, complete: context.clock() < context.until };
}

const cansText = (cans: number, commodity: Commodity): string =>
  `${cans} ${cans === 1 ? 'can' : 'cans'} of ${commodity}`;

/** The fewest cans beyond those there may be: first of one commodity alone, then of both. */
function moreCans(context: WaysOutContext): WayOut[] {
  const { reckoned } = context;
  const { rig } = reckoned.analysis;
  const { problem } = problemOf(reckoned);
  const most = { fuel: problem.sides.fuel.mostCans, water: problem.sides.water.mostCans };
  const tries = [
    { ...most, fuel: MOST_CANS },
    { ...most, water: MOST_CANS },
    { fuel: MOST_CANS, water: MOST_CANS },
  ];
  for (const allowed of tries) {
    const { problem: free } = problemOf(reckoned, { mostCans: allowed });
    // Chosen at the mass of the cans there are, then again at the mass of those it takes.
    const light = {
      ...free,
      sides: { ...free.sides, fuel: { ...free.sides.fuel, course: problem.sides.fuel.course } },
    };
    const solved = solveCarry(fewestFirst(light), context);
    if (solved.status !== 'found') continue;
    let cans = solved.choice.cans;
    for (let again = 0; again < 4; again += 1) {
      const mostCans = { fuel: Math.max(most.fuel, cans.fuel), water: Math.max(most.water, cans.water) };
      const found = plannedCans(reckoned, context, { mostCans });
      if (found !== null) {
        const more = COMMODITIES.map((commodity) => ({
          commodity,
          count: mostCans[commodity] - most[commodity],
        })).filter(({ count }) => count > 0);
        const amount = more.reduce((sum, { count }) => sum + count, 0);
        if (amount === 0) return [];
        const moreKg = more.reduce((sum, { commodity, count }) => {
          const { empty, filling } = canKgOf(rig, commodity);
          return sum + count * (empty + filling);
        }, 0);
        const text = `With ${more.map(({ commodity, count }) => cansText(count, commodity)).join(' and ')} more it can be done: ${Math.round(moreKg)} kg more when they are full.`;
        return [{ ...bare, kind: 'more-cans', text, cans: found, amount, unit: 'cans', moreKg }];
      }
      cans = { fuel: Math.min(MOST_CANS, cans.fuel + 1), water: cans.water };
    }
  }
  return [];
}

/** The problem with evidence all alike, so that fewest cans come first. */
function fewestFirst(problem: ReturnType<typeof problemOf>['problem']) {
  const alike = (commodity: Commodity) => ({
    ...problem.sides[commodity],
    edges: problem.sides[commodity].edges.map((edge) => ({ ...edge, evidence: null })),
  });
  return { ...problem, sides: { fuel: alike('fuel'), water: alike('water') } };
}

/** Washing and showers given up, where the crew's uses are told: drinking water is never touched. */
function lessWashing(context: WaysOutContext): WayOut[] {
  const { reckoned } = context;
  const { rig } = reckoned.analysis;
  const { grades } = reckoned.sides.water.course.rig.water;
  if (rig.crew === undefined || rig.water.litresPerDay !== undefined || grades === null) return [];
  const frugal: RigFile = {
    ...rig,
    crew: {
      ...rig.crew,
      people: rig.crew.people.map((person) => ({ ...person, washing: NO_WASHING, shower: 0 })),
    },
  };
  const again = context.reckon(frugal);
  if (!again.ok) return [];
  const before = reckoned.sides.water.course.rig.water.litresPerDay.high;
  const after = again.value.sides.water.course.rig.water.litresPerDay.high;
  if (before - after < 0.05) return [];
  const cans = plannedCans(again.value, context);
  if (cans === null) return [];
  const text = `Without washing and showers, teeth, hands and wounds aside, ${(before - after).toFixed(1)} l a day less are used and it can be done. Drinking water stays as it is.`;
  return [
    {
      ...bare,
      kind: 'less-washing',
      text,
      cans,
      amount: before - after,
      unit: 'l a day',
      commodity: 'water',
    },
  ];
}

/** The first litres of washing, for teeth, hands and wounds, are of drinking grade and stay (see crew levels). */
const NO_WASHING = { low: 0.5, typical: 0.5, high: 0.5 };

/** The fewest more hours of driving a day, by half hours: less water is used on the way. */
function longerDays(context: WaysOutContext): WayOut[] {
  const { rig } = context.reckoned.analysis;
  for (let hours = Math.floor(rig.pace.hoursPerDay * 2) / 2 + 0.5; hours <= MOST_HOURS; hours += 0.5) {
    if (context.clock() >= context.until) return [];
    const again = context.reckon({ ...rig, pace: { ...rig.pace, hoursPerDay: hours } });
    if (!again.ok) return [];
    const cans = plannedCans(again.value, context);
    if (cans === null) continue;
    const text = `Driving ${hours} hours a day in place of ${rig.pace.hoursPerDay} it can be done: the way takes fewer days, so less water.`;
    return [{ ...bare, kind: 'longer-days', text, cans, amount: hours, unit: 'hours a day' }];
  }
  return [];
}
