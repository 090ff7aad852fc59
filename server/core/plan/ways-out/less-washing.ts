import type { Crew, Person } from '../../../contract/crew.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { LEVELS, TEETH_AND_HANDS_L } from '../../crew/needs/levels.ts';
import { atEnds, rangeOf } from '../../crew/needs/range.ts';
import { USE_LEVEL } from '../../defaults/rig-defaults.ts';
import { staysBroken } from './stays-broken.ts';
import { cansWith, isOver, type WaysOutContext } from './try-change.ts';
import { WAY_OUT, type WayOut } from './way-out.ts';

/** Washing is cut by steps of this share, percent (ours). */
const STEP_PERCENT = 10;
/** Of drinking grade this much less is float noise, litres a day. */
const NOISE_L = 1e-9;
/** Less than this saves nothing worth telling, litres a day. */
const LEAST_SAVED_L = 0.05;

/**
 * The smallest cut of washing and shower water with which there is a plan, where the crew's uses are told. What is of
 * drinking grade (teeth, hands before food and wounds among it) stays as it is.
 */
export function lessWashingWay(context: WaysOutContext): WayOut[] {
  const { reckoned } = context;
  const { rig } = reckoned.analysis;
  // What was observed of all aboard wins over the crew's parts: a cut of them would change nothing.
  const { crew } = rig;
  if (crew === undefined || rig.water.litresPerDay !== undefined) return [];
  if (crew.observedLitresPerDay !== undefined || crew.washingAtSource === true) return [];
  let best: WayOut | null = null;
  // The more is cut, the less is missing: the smallest cut that helps is found by halving.
  let low = 1;
  let high = 100 / STEP_PERCENT;
  for (let step = high; low < high; step = Math.floor((low + high) / 2)) {
    if (isOver(context)) break;
    const way = withCut(context, rig, crew, step * STEP_PERCENT);
    if (way === null && best === null) return [];
    if (way === null) low = step + 1;
    else {
      best = way;
      high = step;
    }
  }
  return best === null ? [] : [best];
}

function withCut(context: WaysOutContext, rig: RigFile, crew: Crew, cutPercent: number): WayOut | null {
  const frugal = withLessWashing(rig, crew, cutPercent);
  if (staysBroken(context, frugal)) return null;
  const again = context.reckon(frugal);
  if (!again.ok) return null;
  const savedL = perDayL(context.reckoned) - perDayL(again.value);
  if (savedL < LEAST_SAVED_L || drinkingL(again.value) < drinkingL(context.reckoned) - NOISE_L) return null;
  const cans = cansWith(again.value, context);
  if (cans === null) return null;
  return {
    ...WAY_OUT,
    kind: 'less-washing',
    text: { phrase: 'with-less-washing', facts: { cutPercent, savedL } },
    cans,
    amount: savedL,
    unit: 'l a day',
    commodity: 'water',
    cutPercent,
  };
}

/** The rig with so much less water for washing and showers, of drinking grade nothing less. */
export function withLessWashing(rig: RigFile, crew: Crew, cutPercent: number): RigFile {
  const left = 1 - cutPercent / 100;
  const frugal = (person: Person): Person => {
    const level = LEVELS[person.level ?? USE_LEVEL];
    const washing = rangeOf(person.washing ?? level.washing);
    const shower = rangeOf(person.shower ?? level.shower);
    const kept = (end: keyof typeof washing) => Math.min(washing[end], TEETH_AND_HANDS_L);
    return {
      ...person,
      washing: atEnds((end) => kept(end) + left * (washing[end] - kept(end))),
      shower: atEnds((end) => left * shower[end]),
    };
  };
  return { ...rig, crew: { ...crew, people: crew.people.map(frugal) } };
}

const perDayL = ({ sides }: Reckoned): number => sides.water.course.rig.water.litresPerDay.high;

/** Litres a day of drinking grade, at the rate the verdict uses. */
const drinkingL = ({ analysis }: Reckoned): number =>
  analysis.waterUse.uses
    .filter(({ grade }) => grade === 'drinking')
    .reduce((sum, { litresPerDay }) => sum + litresPerDay.high, 0);
