import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan } from '../../../server/contract/plan.ts';
import type { Gauge, GaugeRow } from '../../../server/contract/whatif.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive, isSame, type Side } from '../reckoning/leg.ts';
import { COMMODITIES, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import { isClose, type Notebook } from '../reckoning/notebook.ts';
import { MILLIMETRE } from './check-legs.ts';

/** The gauge table: the least to have aboard to go on, and to go back. */
export function checkGauge(book: Notebook, facts: Facts, plan: Plan, gauge: Gauge): void {
  book.holds('the gauge is of the plan', gauge.basis === 'plan', gauge.basis);
  const drives = {
    fuel: legsOfPlan(facts, plan, 'fuel').map((leg) => new Drive(facts, leg)),
    water: legsOfPlan(facts, plan, 'water').map((leg) => new Drive(facts, leg)),
  };
  for (let km = gauge.stepKm; km < facts.lengthKm; km += gauge.stepKm)
    book.holds(
      'a line every so many km',
      gauge.rows.some(({ atKm }) => Math.abs(atKm - km) < MILLIMETRE),
      `km ${km}`,
    );
  for (const row of gauge.rows)
    for (const commodity of COMMODITIES) checkSide(book, drives[commodity], { row, commodity });
}

function checkSide(
  book: Notebook,
  drives: readonly Drive[],
  { row, commodity }: { row: GaugeRow; commodity: Commodity },
): void {
  const { from, to, onL, backL, plannedL } = row[commodity];
  const place = `${commodity}, km ${row.atKm}, ${row.at}`;
  const drive = drives.find(({ leg }) => isSame(leg.from, from) && isSame(leg.to, to));
  book.holds('a line has a leg', drive !== undefined, place);
  if (drive === undefined) return;
  const [fromKm, toKm] = [drive.leg.from.atKm, drive.leg.to.atKm];
  book.holds(
    'a line lies on its leg',
    row.atKm >= fromKm - MILLIMETRE && row.atKm <= toKm + MILLIMETRE,
    place,
  );
  const leavesSupply = row.at === 'start' || (row.at === 'leaving' && row.commodities.includes(commodity));
  if (leavesSupply) {
    book.close('aboard on leaving', { says: plannedL, own: drive.leg.departL }, place);
    book.close('to go on from a supply', { says: onL, own: drive.needL + drive.reserveL }, place);
    return;
  }
  // Who turns back where a leg begins has left its supply.
  const turnsAtOnce =
    row.at === 'turn-back' && row.commodities.includes(commodity) && row.atKm <= fromKm + MILLIMETRE;
  const side: Side = row.at === 'leaving' || turnsAtOnce ? 'leaving' : 'reaching';
  const [mostL, leastL] = [
    Math.max(fromKm, row.atKm - MILLIMETRE),
    Math.min(toKm, row.atKm + MILLIMETRE),
  ].map((km, index) => drive.levelAt(km, index === 0 ? 'reaching' : 'leaving'));
  if (mostL === undefined || leastL === undefined) return;
  book.atLeast('aboard by the plan', { says: mostL, own: plannedL }, place);
  book.atLeast('aboard by the plan', { says: plannedL, own: leastL }, place);
  // Said at the level that it is said for, so that a night at the very place is on the same side of it.
  const needL = plannedL - drive.arriveL + drive.reserveL;
  book.close('to go on with the reserve', { says: onL, own: needL }, place);
  // A night, or another halt, may lie less than a millimetre before or behind the place.
  const aheads =
    side === 'leaving'
      ? [row.atKm >= toKm ? drive.besideEndL : drive.levelAt(row.atKm + MILLIMETRE, side)]
      : [row.atKm, Math.max(fromKm, row.atKm - MILLIMETRE)].map((km) => drive.levelAt(km, side));
  const owns = aheads.map((level) => level - drive.arriveL + drive.reserveL);
  book.holds(
    'to go on, halts at the place still to come or gone',
    owns.some((own) => isClose(onL, own)),
    `${place}: says ${onL}, by own arithmetic ${owns.join(' or ')}`,
  );
  checkBack(book, drive, { row, backL, side, place });
}

function checkBack(
  book: Notebook,
  drive: Drive,
  { row, backL, side, place }: { row: GaugeRow; backL: number | null; side: Side; place: string },
): void {
  const isOpen = row.atKm <= drive.backUntilKm + MILLIMETRE;
  book.holds('whether it can be driven back', (backL !== null) === isOpen, place);
  if (backL === null || !isOpen) return;
  const km = side === 'reaching' ? Math.max(drive.leg.from.atKm, row.atKm - MILLIMETRE) : row.atKm;
  book.close(
    'to go back with the reserve',
    { says: backL, own: drive.wayBackL(km, side) + drive.backReserveL },
    place,
  );
}
