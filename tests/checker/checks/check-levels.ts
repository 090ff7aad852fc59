import type { Plan, PlanLevel } from '../../../server/contract/plan.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive } from '../reckoning/leg.ts';
import { COMMODITIES, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import { isAtLeast, type Notebook } from '../reckoning/notebook.ts';
import { MILLIMETRE } from './check-legs.ts';

/** The levels of a plan against the drive by hand, at every place that is told. */
export function checkLevels(book: Notebook, facts: Facts, plan: Plan): void {
  for (const commodity of COMMODITIES) {
    const legs = legsOfPlan(facts, plan, commodity).map((leg) => new Drive(facts, leg));
    const levels = plan.levels[commodity];
    const { capacityL, canL } = facts.stores[commodity];
    let [index, isBegun] = [0, false];
    for (const [number, level] of levels.entries()) {
      const place = `${commodity}, km ${level.atKm}, level ${number}`;
      const ahead = legs[index + 1];
      // A leg ends where what is aboard is what it arrives with, and the next level is what the next one leaves with.
      const before = levels[number - 1];
      const drive = legs[index];
      if (drive === undefined) continue;
      if (
        isBegun &&
        ahead !== undefined &&
        before !== undefined &&
        isEndOf(drive, before) &&
        isStartOf(ahead, level)
      ) {
        index += 1;
      }
      isBegun = true;
      const of = legs[index];
      if (of === undefined) continue;
      const [fromKm, toKm] = [of.leg.from.atKm, of.leg.to.atKm];
      book.holds('levels lie on their leg', level.atKm >= fromKm && level.atKm <= toKm, place);
      const most = of.levelAt(Math.max(fromKm, level.atKm - MILLIMETRE), 'reaching');
      const least = of.levelAt(Math.min(toKm, level.atKm + MILLIMETRE), 'leaving');
      book.atLeast('level at a place', { says: level.totalL, own: least }, place);
      book.atLeast('level at a place', { says: most, own: level.totalL }, place);
      checkContainers(book, level, { capacityL, canL, place });
    }
    book.holds(
      'levels of all legs',
      index === legs.length - 1,
      `${commodity}: ${index + 1} of ${legs.length}`,
    );
    checkMiddles(book, legs, levels);
  }
}

const isEndOf = ({ leg, arriveL }: Drive, level: PlanLevel): boolean =>
  level.atKm === leg.to.atKm && Math.abs(level.totalL - arriveL) < 1e-6;
const isStartOf = ({ leg }: Drive, level: PlanLevel): boolean =>
  level.atKm === leg.from.atKm && Math.abs(level.totalL - leg.departL) < 1e-6;

function checkContainers(
  book: Notebook,
  { tankL, cansL, totalL, tanksL }: PlanLevel,
  { capacityL, canL, place }: { capacityL: number; canL: number; place: string },
): void {
  const sum = cansL.reduce((litres, can) => litres + can, tankL);
  book.close('a level is tanks and cans', { says: totalL, own: sum }, place);
  book.holds(
    'tanks within their capacity',
    isAtLeast(capacityL, tankL) && isAtLeast(tankL, 0),
    `${place}: ${tankL}`,
  );
  book.holds(
    'cans within their capacity',
    cansL.every((can) => can >= 0 && can <= canL),
    place,
  );
  if (tanksL !== undefined)
    book.close(
      'a level of single tanks',
      { says: tanksL.reduce((litres, tank) => litres + tank, 0), own: tankL },
      place,
    );
}

/** Between two levels lines are straight: a bend that is not told would show in the middle. */
function checkMiddles(book: Notebook, legs: readonly Drive[], levels: readonly PlanLevel[]): void {
  for (const [index, after] of levels.slice(1).entries()) {
    const before = levels[index];
    if (before === undefined || after.atKm - before.atKm < 10 * MILLIMETRE) continue;
    const km = (before.atKm + after.atKm) / 2;
    const drive = legs.find(({ leg }) => leg.from.atKm < km && leg.to.atKm > km);
    if (drive === undefined) continue;
    const own = drive.levelAt(km, 'leaving');
    const place = `${drive.leg.commodity}, km ${km}`;
    book.close('level between two places', { says: (before.totalL + after.totalL) / 2, own }, place);
  }
}
