import type { Commodity } from '../../../server/contract/common.ts';
import type { OneFailure, Plan } from '../../../server/contract/plan.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive, type Halt, isSame, type Leg } from '../reckoning/leg.ts';
import { COMMODITIES, haltsBetween, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import type { Notebook } from '../reckoning/notebook.ts';
import { type FailingStop, failingStops, failsWith } from '../reckoning/stops.ts';
import { checkLegs, refilled } from './check-legs.ts';
import { checkTurnBack } from './check-turn-backs.ts';

/** The plan against one failure may have so many cans beyond those there are. */
const MORE_CANS = 6;

type SafePlan = Pick<OneFailure, 'legs' | 'failures' | 'cans' | 'carries' | 'spendsReserve'> &
  Pick<Plan, 'restsOn'>;

/** A plan that is to bear the failure of any one stop: driven as it is, and with each of its stops failing. */
export function checkFailures(book: Notebook, facts: Facts, plan: Plan): void {
  const { oneFailure } = plan;
  if (oneFailure?.status !== 'found') return;
  const safe: SafePlan = { ...oneFailure, restsOn: oneFailure.nights };
  const mostCans = {
    fuel: plan.mostCans.fuel + MORE_CANS,
    water: plan.mostCans.water + MORE_CANS,
  };
  checkLegs(book, facts, safe, mostCans);
  const whole = new SafeDrive(book, facts, safe);
  for (const commodity of COMMODITIES)
    for (const [index, { turnBackKm }] of safe.legs[commodity].entries()) {
      const drive = whole.drives[commodity][index];
      if (drive !== undefined)
        checkTurnBack(book, facts, drive, {
          turnBackKm,
          place: `against one failure, ${commodity}, leg ${index}`,
        });
    }
  for (const stop of failingStops(facts)) whole.checkStop(stop);
  book.holds('failures are those of stops that are used', whole.rowsLeft === 0, `${whole.rowsLeft} more`);
}

type Failure = OneFailure['failures'][number];

/** A leg that comes to a stop which fails, by its index. */
interface Missed {
  readonly commodity: Commodity;
  readonly index: number;
  readonly leg: Leg;
  readonly row: Failure | undefined;
}

class SafeDrive {
  readonly drives: Readonly<Record<Commodity, readonly Drive[]>>;
  readonly #book: Notebook;
  readonly #facts: Facts;
  readonly #plan: SafePlan;
  readonly #seen = new Set<Failure>();

  constructor(book: Notebook, facts: Facts, plan: SafePlan) {
    this.#book = book;
    this.#facts = facts;
    this.#plan = plan;
    const drivesOf = (commodity: Commodity) =>
      legsOfPlan(facts, plan, commodity).map((leg) => new Drive(facts, leg));
    this.drives = { fuel: drivesOf('fuel'), water: drivesOf('water') };
  }

  get rowsLeft(): number {
    return this.#plan.failures.filter((row) => !this.#seen.has(row)).length;
  }

  /** At each place of a stop in turn, until the crew goes back. */
  checkStop(stop: FailingStop): void {
    for (const place of stop.places) {
      const missed = this.#missedAt(stop, place);
      if (missed.length === 0) continue;
      const rows = missed.flatMap(({ row }) => row ?? []);
      this.#book.holds(
        'what to do is told for all that is missed',
        rows.length === missed.length,
        placeName(missed),
      );
      for (const row of rows) this.#seen.add(row);
      const [first] = rows;
      if (first === undefined) return;
      this.#book.holds(
        'one thing is done at one place',
        rows.every(({ next }) => next === first.next),
        placeName(missed),
      );
      if (first.next === 'on') {
        for (const one of missed) this.#checkOn(stop, one);
        continue;
      }
      for (const one of missed) this.#checkBack(stop, one);
      this.#checkOthersBack(place, missed);
      return;
    }
  }

  /** The legs of both commodities that come to a place from elsewhere than the stop that fails. */
  #missedAt(
    stop: FailingStop,
    place: readonly { id: string; atKm: number; commodity: Commodity }[],
  ): Missed[] {
    return COMMODITIES.flatMap((commodity) =>
      this.drives[commodity].flatMap(({ leg }, index): Missed[] => {
        const isThere = place.some((passing) => passing.commodity === commodity && isSame(passing, leg.to));
        if (!isThere || failsWith(stop, leg.from)) return [];
        const row = this.#plan.failures.find(
          (failure) =>
            failure.commodity === commodity && isSame(failure.at, leg.to) && !this.#seen.has(failure),
        );
        return [{ commodity, index, leg, row }];
      }),
    );
  }

  /** On to the next stop that is used; over stops that give only some, as far as one that gives all, or the end. */
  #checkOn(stop: FailingStop, { commodity, index, leg, row }: Missed): void {
    const next = this.drives[commodity][index + 1]?.leg;
    if (row === undefined || next === undefined) return;
    const place = `${commodity}, km ${leg.to.atKm} fails`;
    this.#book.holds('on to what does not fail', !failsWith(stop, row.to), place);
    if (!isSame(row.to, next.to)) {
      this.#checkOnBy({ commodity, index, leg, row }, next, place);
      return;
    }
    let drive = new Drive(this.#facts, this.#inVain(leg, next));
    this.#book.close('arrival on the way on', { says: row.arriveL, own: drive.arriveL }, place);
    this.#checkLeft(drive, `${place}, on to km ${next.to.atKm}`);
    for (let more = index + 2; ; more += 1) {
      const after = this.drives[commodity][more]?.leg;
      if (after === undefined || this.#facts.termsOf(commodity, after.from.id).mostL === null) return;
      const refilled = this.#refilled(drive, after);
      drive = new Drive(this.#facts, refilled);
      this.#checkLeft(drive, `${place}, on over stops that give some to km ${after.to.atKm}`);
    }
  }

  /** On by a supply that counts and the plan passes by, and from there to the next that is used with the reserve. */
  #checkOnBy({ commodity, index, leg, row }: Missed, next: Leg, place: string): void {
    if (row === undefined) return;
    const by = this.#facts.passings.find(
      (passing) => passing.commodity === commodity && isSame(passing, row.to),
    );
    const isAhead = by !== undefined && by.atKm > leg.to.atKm && by.atKm < next.to.atKm;
    this.#book.holds('on to the next stop that is used, or to one before it that counts', isAhead, place);
    if (!isAhead) return;
    const there = new Drive(this.#facts, this.#inVain(leg, { ...next, to: row.to }));
    this.#book.close('arrival on the way on', { says: row.arriveL, own: there.arriveL }, place);
    this.#checkLeft(there, `${place}, on to km ${by.atKm}`);
    const { capacityL, canL } = this.#facts.stores[commodity];
    const cans = this.#plan.legs[commodity][index]?.cans ?? 0;
    const { mostL } = this.#facts.termsOf(commodity, by.id);
    const full = { departL: capacityL + cans * canL, cans };
    const departure = mostL === null ? full : refilled(this.#facts, there, { mostL, cans });
    const on = new Drive(this.#facts, {
      ...next,
      from: row.to,
      ...departure,
      filledL: Math.max(0, departure.departL - Math.max(0, there.arriveL)),
      sleepsFirst: false,
      halts: haltsBetween(this.#facts, this.#plan.legs, commodity, { from: row.to, to: next.to }),
    });
    this.#book.atLeast('by another supply on to the next that is used', { says: on.marginL, own: 0 }, place);
  }

  /** Left as little as was come with, where a stop gives only some; with no more cans than planned. */
  #refilled(came: Drive, after: Leg): Leg {
    const { commodity } = after;
    const mostL = this.#facts.termsOf(commodity, after.from.id).mostL ?? 0;
    const planned = this.#plan.legs[commodity].find(
      ({ from, to }) => isSame(from, after.from) && isSame(to, after.to),
    );
    const departure = refilled(this.#facts, came, { mostL, cans: planned?.cans ?? 0 });
    return { ...after, ...departure, filledL: Math.max(0, departure.departL - came.arriveL) };
  }

  #inVain(leg: Leg, next: Leg): Leg {
    const halts = haltsBetween(this.#facts, this.#plan.legs, leg.commodity, { from: leg.from, to: next.to });
    return {
      ...leg,
      to: next.to,
      halts: withHalt(halts, leg.to, this.#facts.termsOf(leg.commodity, leg.to.id).waitHours),
    };
  }

  #checkLeft({ arriveL, marginL }: Drive, place: string): void {
    const leftL = this.#plan.spendsReserve ? arriveL : marginL;
    this.#book.atLeast('a failure is borne', { says: leftL, own: 0 }, place);
  }

  #checkBack(stop: FailingStop, { commodity, index, leg, row }: Missed): void {
    const drive = this.drives[commodity][index];
    if (row === undefined || drive === undefined) return;
    const place = `${commodity}, km ${leg.to.atKm} fails, back to km ${leg.from.atKm}`;
    this.#book.holds('back to the stop before', isSame(row.to, leg.from), place);
    this.#book.holds('back to what does not fail', !failsWith(stop, row.to), place);
    const needL = drive.thereAndBackL;
    this.#book.holds('a way back that can be driven', needL !== null, place);
    if (needL === null) return;
    const arriveL = leg.departL - needL;
    this.#book.close('arrival on the way back', { says: row.arriveL, own: arriveL }, place);
    this.#book.atLeast('a failure is borne', { says: arriveL, own: this.#keptL(leg, needL) }, place);
  }

  #keptL({ commodity, from }: Leg, needL: number): number {
    const { baseAt, shareOfNeed } = this.#facts.stores[commodity];
    return this.#plan.spendsReserve ? 0 : baseAt(from.atKm) + shareOfNeed * needL;
  }

  /** Going back for one commodity, the other has to bear the way back as well. */
  #checkOthersBack(place: readonly { id: string; atKm: number }[], missed: readonly Missed[]): void {
    for (const commodity of COMMODITIES) {
      for (const { leg } of this.drives[commodity]) {
        if (place.some((passing) => isSame(passing, leg.to))) continue;
        for (const { leg: sought } of missed.filter((one) => one.commodity !== commodity)) {
          if (leg.from.atKm >= sought.to.atKm || leg.to.atKm <= sought.to.atKm) continue;
          const { atKm, detourKm, id } = sought.to;
          const way: Leg = {
            ...leg,
            to: { kind: 'passing', id: null, atKm, detourKm: 0 },
            halts: withHalt(
              leg.halts.filter((halt) => halt.atKm < atKm),
              { atKm, detourKm },
              this.#facts.termsOf(sought.commodity, id).waitHours,
            ),
          };
          const needL = new Drive(this.#facts, way).thereAndBackL;
          const name = `${commodity} beside ${sought.commodity} that fails at km ${atKm}, back to km ${leg.from.atKm}`;
          this.#book.holds('a way back that can be driven', needL !== null, name);
          if (needL === null) continue;
          this.#book.atLeast(
            'a failure is borne',
            { says: leg.departL - needL, own: this.#keptL(leg, needL) },
            name,
          );
        }
      }
    }
  }
}

const placeName = (missed: readonly Missed[]): string =>
  missed.map(({ commodity, leg }) => `${commodity}, km ${leg.to.atKm}`).join('; ');

/** With a stop that is gone to in vain, unless it is a halt of the other commodity already. */
export function withHalt(
  halts: readonly Halt[],
  { atKm, detourKm }: Pick<Halt, 'atKm' | 'detourKm'>,
  waitHours: number,
): Halt[] {
  const isKnown = halts.some((halt) => halt.atKm === atKm && halt.detourKm === detourKm);
  if (isKnown) return [...halts];
  return [...halts, { atKm, detourKm, waitHours }].sort((a, b) => a.atKm - b.atKm);
}
