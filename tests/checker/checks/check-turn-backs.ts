import type { Plan, PlanLeg } from '../../../server/contract/plan.ts';
import type { WhatIf } from '../../../server/contract/whatif.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive, isSame } from '../reckoning/leg.ts';
import { COMMODITIES, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import type { Notebook } from '../reckoning/notebook.ts';
import { MILLIMETRE, placeOf } from './check-legs.ts';

/** So far behind a turn-back point it is too late, km: ten metres. */
const BEHIND_KM = 0.01;
/** Less than this is noise of summing, litres. */
const NOISE_L = 1e-6;
/** Of the way to a turn-back point, so many places are looked at besides those where something happens. */
const PLACES = 24;

/** The turn-back point of every leg, and the list of those that matter. */
export function checkTurnBacks(
  book: Notebook,
  facts: Facts,
  plan: Plan,
  { turnBacks }: Pick<WhatIf, 'turnBacks'>,
): void {
  for (const commodity of COMMODITIES) {
    const drives = legsOfPlan(facts, plan, commodity).map((leg) => new Drive(facts, leg));
    for (const [index, says] of plan.legs[commodity].entries()) {
      const drive = drives[index];
      if (drive === undefined) continue;
      const place = placeOf(commodity, says);
      checkTurnBack(book, facts, drive, { turnBackKm: says.turnBackKm, place });
      checkListed(book, says, { place, listed: turnBacks.filter((turn) => turn.commodity === commodity) });
    }
  }
}

/** Up to a turn-back point one comes back with the reserve; behind it one does not, or it cannot be driven back. */
export function checkTurnBack(
  book: Notebook,
  facts: Facts,
  drive: Drive,
  { turnBackKm, place }: { turnBackKm: number | null; place: string },
): void {
  const { from } = drive.leg;
  const untilKm = drive.backUntilKm;
  if (turnBackKm === null) {
    book.holds('no turn-back point', drive.overBackL(from.atKm, 'leaving') < NOISE_L, place);
    return;
  }
  book.holds(
    'a turn-back point on its leg',
    turnBackKm >= from.atKm && turnBackKm <= untilKm + MILLIMETRE,
    place,
  );
  const step = (turnBackKm - from.atKm) / PLACES;
  const even = Array.from({ length: PLACES }, (_, index) => from.atKm + index * step);
  const events = [
    ...facts.days.placesInside(from.atKm, turnBackKm),
    ...drive.leg.halts.map(({ atKm }) => atKm),
  ];
  for (const km of [...even, ...events].filter((km) => km < turnBackKm - MILLIMETRE)) {
    // At the very beginning what is off the route is driven already.
    const overL = drive.overBackL(km, km === from.atKm ? 'leaving' : 'reaching');
    book.atLeast(
      'back with the reserve from before the turn-back point',
      { says: overL, own: 0 },
      `${place}, km ${km}`,
    );
    book.atLeast(
      'back with the reserve from before the turn-back point',
      { says: drive.overBackL(km, 'leaving'), own: 0 },
      `${place}, km ${km}`,
    );
  }
  const there = drive.overBackL(
    Math.max(from.atKm, turnBackKm - MILLIMETRE),
    turnBackKm - MILLIMETRE > from.atKm ? 'reaching' : 'leaving',
  );
  if (turnBackKm > from.atKm)
    book.atLeast(
      'back with the reserve from the turn-back point',
      { says: there, own: 0 },
      `${place}, km ${turnBackKm}`,
    );
  if (turnBackKm >= untilKm - BEHIND_KM) return;
  book.holds(
    'no way back with the reserve from behind the turn-back point',
    drive.overBackL(turnBackKm + BEHIND_KM, 'reaching') < NOISE_L ||
      drive.overBackL(turnBackKm + MILLIMETRE, 'leaving') < NOISE_L,
    `${place}, km ${turnBackKm}: ${drive.overBackL(turnBackKm + BEHIND_KM, 'reaching')} l are left`,
  );
}

/** A leg that can be gone back over from its end has no point to mind; each other one is listed with its place. */
function checkListed(
  book: Notebook,
  { from, to, turnBackKm }: PlanLeg,
  { place, listed }: { place: string; listed: WhatIf['turnBacks'] },
): void {
  const atKm = turnBackKm ?? from.atKm;
  const row = listed.find(({ backTo, towards }) => isSame(backTo, from) && isSame(towards, to));
  if (atKm >= to.atKm - MILLIMETRE) return;
  book.holds('a turn-back point is listed', row !== undefined, place);
  if (row === undefined) return;
  book.close('a turn-back point as listed', { says: row.atKm, own: atKm }, place);
  book.close('back to where', { says: row.backToKm, own: from.atKm }, place);
}
