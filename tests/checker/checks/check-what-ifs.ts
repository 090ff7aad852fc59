import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan } from '../../../server/contract/plan.ts';
import type { WhatIf, WhatIfRow } from '../../../server/contract/whatif.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive, type End, isSame, type Leg } from '../reckoning/leg.ts';
import { COMMODITIES, haltsBetween, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import { isClose, Notebook } from '../reckoning/notebook.ts';
import { type FailingStop, failingStops, failsWith } from '../reckoning/stops.ts';
import { withHalt } from './check-failures.ts';
import { MILLIMETRE, refilled } from './check-legs.ts';
import { checkTurnBack } from './check-turn-backs.ts';

/** Less than this is noise, litres. */
const NOISE_L = 1e-6;

/** A way over supplies that fail: each is gone to in vain. */
interface OverFailed {
  readonly leg: Leg;
  readonly failed: readonly [End, ...End[]];
}

/** What-ifs of stops that fail, of a plan that is to bear nothing. */
export function checkStopFails(book: Notebook, facts: Facts, plan: Plan, whatIf: WhatIf): void {
  const rows = whatIf.rows.filter(({ kind }) => kind === 'stop-fails');
  let expected = 0;
  for (const stop of failingStops(facts)) {
    for (const commodity of COMMODITIES) {
      const ways = waysOver(facts, plan, commodity, stop);
      if (ways.length === 0) continue;
      expected += 1;
      const name = `${commodity}, stop of ${[...stop.ids].join(' ')}`;
      // One set of objects may be part of another: then several rows tell of one object.
      const told = rows.filter(
        (row) => row.commodity === commodity && row.id !== null && stop.ids.has(row.id),
      );
      book.holds('a row for a stop that fails', told.length > 0, name);
      const notes = told.map((row) => notesOn(facts, plan, { row, ways, stop, name }));
      const [best] = notes.sort((a, b) => a.disagreements.length - b.disagreements.length);
      if (best !== undefined) book.add(best);
    }
  }
  book.holds(
    'a row for each stop and commodity that is missed',
    rows.length === expected,
    `${rows.length} rows, ${expected} missed`,
  );
}

/** Every way of a plan over supplies of a stop. */
function waysOver(facts: Facts, plan: Plan, commodity: Commodity, stop: FailingStop): OverFailed[] {
  const ways: OverFailed[] = [];
  let begun: Leg | null = null;
  let failed: End[] = [];
  for (const leg of legsOfPlan(facts, plan, commodity)) {
    begun ??= leg;
    if (leg.to.kind === 'passing' && failsWith(stop, leg.to)) {
      failed.push(leg.to);
      continue;
    }
    const [first, ...more] = failed;
    if (first !== undefined)
      ways.push({ leg: overFailed(facts, plan, { begun, to: leg.to }, failed), failed: [first, ...more] });
    begun = null;
    failed = [];
  }
  return ways;
}

function overFailed(
  facts: Facts,
  plan: Plan,
  { begun, to }: { begun: Leg; to: End },
  failed: readonly End[],
): Leg {
  const { commodity } = begun;
  const halts = haltsBetween(facts, plan.legs, commodity, { from: begun.from, to });
  return {
    ...begun,
    to,
    halts: failed
      .filter(({ atKm }) => atKm > begun.from.atKm && atKm <= to.atKm)
      .reduce((all, stop) => withHalt(all, stop, facts.termsOf(commodity, stop.id).waitHours), halts),
  };
}

interface RowFacts {
  readonly row: WhatIfRow;
  readonly ways: readonly OverFailed[];
  readonly stop: FailingStop;
  readonly name: string;
}

/** The row is of the way that is left with least, by way of another supply where that is better. */
function notesOn(facts: Facts, plan: Plan, { row, ways, stop, name }: RowFacts): Notebook {
  const book = new Notebook();
  const best = ways.map((way) => ({ way, onward: onwardOver(facts, plan, way, stop) }));
  const least = Math.min(...best.map(({ onward }) => onward.marginL));
  book.close('margin when a stop fails', { says: row.marginL, own: least }, name);
  const worst = best.find(
    ({ onward }) =>
      isClose(onward.marginL, least) &&
      isSame(onward.drive.leg.from, row.from) &&
      isSame(onward.drive.leg.to, row.to),
  );
  book.holds('the way that is left with least', worst !== undefined, name);
  if (worst === undefined) return book;
  const { drive, by } = worst.onward;
  book.holds(
    'by way of the supply that leaves most',
    (row.instead?.at.atKm ?? null) === (by?.atKm ?? null),
    name,
  );
  book.close('arrival when a stop fails', { says: row.arriveL, own: drive.arriveL }, name);
  checkVerdict(book, row, { drive, canL: facts.stores[row.commodity].canL, name });
  const there = placeOf(stop, worst.way.failed);
  book.holds('where it happens', row.id === there.id && row.atKm === there.atKm, name);
  checkBackMargin(book, facts, plan, { row, way: worst.way, there, name });
  checkTurnBack(book, facts, drive, { turnBackKm: row.turnBackKm, place: `${name}, fails` });
  return book;
}

/** At the first place of the stop the last supply that was to be used there. */
function placeOf({ places }: FailingStop, failed: OverFailed['failed']): End {
  const isAt = (place: FailingStop['places'][number], end: End) =>
    place.some((passing) => isSame(passing, end));
  const place = places.find((one) => isAt(one, failed[0])) ?? [];
  return failed.findLast((end) => isAt(place, end)) ?? failed[0];
}

/** Enough, into the reserve, or short: with what would have helped. */
function checkVerdict(
  book: Notebook,
  row: WhatIfRow,
  { drive, canL, name }: { drive: Drive; canL: number; name: string },
): void {
  const { arriveL, marginL, leg } = drive;
  const isNear = Math.abs(arriveL) < NOISE_L || Math.abs(marginL) < NOISE_L;
  const verdict = marginL >= 0 ? 'enough' : arriveL >= 0 ? 'into-reserve' : 'short';
  book.holds(
    'verdict when a stop fails',
    isNear || row.verdict === verdict,
    `${name}: says ${row.verdict}, ${verdict}`,
  );
  book.close('litres missing', { says: row.missingL, own: Math.max(0, -arriveL) }, name);
  book.close('litres to cover', { says: row.coverL, own: Math.max(0, -marginL) }, name);
  book.atLeast('cans that cover', { says: row.coverCans * canL, own: Math.max(0, -marginL) }, name);
  book.holds('no can too many', row.coverCans === 0 || (row.coverCans - 1) * canL < -marginL, name);
  if (isNear) return;
  book.holds('whether it ends on the way', (row.endsAtKm !== null) === arriveL < 0, name);
  if (row.endsAtKm === null) return;
  const before = drive.levelAt(Math.max(leg.from.atKm, row.endsAtKm - MILLIMETRE), 'reaching');
  const after = drive.levelAt(Math.min(leg.to.atKm, row.endsAtKm + MILLIMETRE), 'leaving');
  book.holds(
    'nothing is left where it ends',
    before > -NOISE_L * 10 && after < NOISE_L * 10,
    `${name}, km ${row.endsAtKm}: ${before}, ${after}`,
  );
}

interface BackFacts {
  readonly row: WhatIfRow;
  readonly way: OverFailed;
  readonly there: End;
  readonly name: string;
}

/** Going back from the supply that was sought in vain. */
function checkBackMargin(
  book: Notebook,
  facts: Facts,
  plan: Plan,
  { row, way, there, name }: BackFacts,
): void {
  const earlier = way.failed.filter(({ atKm }) => atKm < there.atKm);
  const leg = overFailed(facts, plan, { begun: way.leg, to: there }, earlier);
  const drive = new Drive(facts, leg);
  const needL = drive.thereAndBackL;
  book.holds(
    'whether one can go back from what fails',
    (row.backMarginL === null) === (needL === null),
    name,
  );
  if (needL === null || row.backMarginL === null) return;
  const { baseAt, shareOfNeed } = facts.stores[leg.commodity];
  const own = leg.departL - needL - baseAt(leg.from.atKm) - shareOfNeed * needL;
  book.close('margin on going back from what fails', { says: row.backMarginL, own }, name);
}

interface Onward {
  readonly marginL: number;
  /** The tighter part of the way. */
  readonly drive: Drive;
  readonly by: End | null;
}

/** The best way on: to the next stop that is used, or where that breaks the reserve by way of another that counts. */
function onwardOver(facts: Facts, plan: Plan, way: OverFailed, stop: FailingStop): Onward {
  const { leg } = way;
  const drive = new Drive(facts, leg);
  let best: Onward = { marginL: drive.marginL, drive, by: null };
  if (drive.marginL >= -NOISE_L) return best;
  for (const passing of facts.passings) {
    const isOnWay =
      passing.commodity === leg.commodity && passing.atKm > leg.from.atKm && passing.atKm < leg.to.atKm;
    if (!isOnWay || failsWith(stop, passing)) continue;
    const by: End = { kind: 'passing', id: passing.id, atKm: passing.atKm, detourKm: passing.detourKm };
    const onward = onwardBy(facts, plan, way, by);
    if (onward !== null && onward.marginL > best.marginL + NOISE_L) best = onward;
  }
  return best;
}

/** By way of a supply that lies ahead, or back on the way where it is regained with the reserve. */
function onwardBy(facts: Facts, plan: Plan, { leg, failed }: OverFailed, by: End): Onward | null {
  const [first] = failed;
  const { commodity } = leg;
  const { capacityL, canL } = facts.stores[commodity];
  const { mostL } = facts.termsOf(commodity, by.id);
  const isBehind = by.atKm < first.atKm;
  if (isBehind && mostL !== null) return null;
  const there = new Drive(facts, overFailed(facts, plan, { begun: leg, to: by }, failed));
  const cameL = isBehind ? regainedL(facts, leg, { by, fromKm: first.atKm }) : there.arriveL;
  if (cameL === null) return null;
  const cans = plan.cans[commodity];
  const full = { departL: capacityL + cans * canL, cans };
  const departure = mostL === null ? full : refilled(facts, there, { mostL, cans });
  const on = new Drive(facts, {
    ...leg,
    from: by,
    ...departure,
    filledL: Math.max(0, departure.departL - Math.max(0, cameL)),
    sleepsFirst: false,
    halts: overFailed(facts, plan, { begun: { ...leg, from: by }, to: leg.to }, failed).halts.filter(
      ({ atKm }) => atKm > Math.max(by.atKm, first.atKm),
    ),
  });
  const drive = isBehind || on.marginL < there.marginL ? on : there;
  return { marginL: drive.marginL, drive, by };
}

/** Left on having come back from where another was sought in vain, and waited; null where that is less than the reserve. */
function regainedL(facts: Facts, leg: Leg, { by, fromKm }: { by: End; fromKm: number }): number | null {
  const drive = new Drive(facts, leg);
  if (drive.backUntilKm < fromKm) return null;
  const backL = drive.wayBackL(fromKm, 'leaving') - drive.wayBackL(by.atKm, 'reaching');
  const perKm = leg.commodity === 'fuel' ? facts.fuelPerKm : facts.hoursPerWayKm * facts.mostWaterPerHour;
  const waitL =
    leg.commodity === 'fuel' ? 0 : facts.termsOf('water', by.id).waitHours * facts.mostWaterPerHour;
  const leftL = drive.levelAt(fromKm, 'leaving') - backL - by.detourKm * facts.wayPerKm * perKm - waitL;
  return leftL < drive.reserveL ? null : leftL;
}
