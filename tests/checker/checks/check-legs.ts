import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan, PlanLeg } from '../../../server/contract/plan.ts';
import type { Facts } from '../reckoning/facts.ts';
import { Drive, isSame, type Leg } from '../reckoning/leg.ts';
import { COMMODITIES, legsOfPlan } from '../reckoning/legs-of-plan.ts';
import type { Notebook } from '../reckoning/notebook.ts';

/** Places of the plan and of the checker are the same within this, km: a night may fall between them. */
export const MILLIMETRE = 1e-6;

/** What of a plan tells its legs. */
export type LegPlan = Pick<Plan, 'legs' | 'restsOn' | 'cans' | 'carries'>;

export const placeOf = (commodity: Commodity, { from, to }: Pick<PlanLeg, 'from' | 'to'>): string =>
  `${commodity}, km ${from.atKm} to km ${to.atKm}`;

/** Every leg: need, reserve, what is left, what is filled, what is carried. */
export function checkLegs(
  book: Notebook,
  facts: Facts,
  plan: LegPlan,
  mostCans: Record<Commodity, number>,
): void {
  for (const commodity of COMMODITIES) {
    const legs = plan.legs[commodity];
    checkChain(book, facts, commodity, legs);
    for (const [index, leg] of legsOfPlan(facts, plan, commodity).entries()) {
      const says = legs[index];
      if (says === undefined) continue;
      const place = placeOf(commodity, says);
      const own = new Drive(facts, leg);
      book.close('need of a leg', { says: says.needL, own: own.needL }, place);
      book.close('reserve of a leg', { says: says.reserveL, own: own.reserveL }, place);
      book.close('arrival of a leg', { says: says.arriveL, own: own.arriveL }, place);
      book.close('margin of a leg', { says: says.marginL, own: own.marginL }, place);
      book.atLeast('reserve intact on arrival', { says: own.marginL, own: 0 }, place);
      book.holds('verdict of a leg', says.verdict === 'enough', place);
      checkDeparture(book, facts, commodity, { leg: says, came: legs[index - 1] });
    }
    book.holds(
      'cans there are',
      legs.every(({ cans }) => cans <= plan.cans[commodity]) && plan.cans[commodity] <= mostCans[commodity],
      `${commodity}: ${plan.cans[commodity]} of ${mostCans[commodity]}`,
    );
    checkCarries(book, facts, plan, commodity);
  }
}

/** Cans beyond those that are owned only where the trip sets no limit; what is to be got is told. */
export function checkCans(book: Notebook, facts: Facts, { cans, mostCans, getCans }: Plan): void {
  for (const commodity of COMMODITIES) {
    const { owned, toldMost } = facts.stores[commodity];
    const most = mostCans[commodity];
    book.holds('the most cans as asked', toldMost === null ? most >= owned : most === toldMost, commodity);
    book.holds('cans to get', getCans[commodity] === Math.max(0, cans[commodity] - owned), commodity);
  }
}

/** From the start to the end, by supplies that count. */
function checkChain(book: Notebook, facts: Facts, commodity: Commodity, legs: readonly PlanLeg[]): void {
  book.holds(
    'from start to end',
    legs[0]?.from.kind === 'start' && legs[0].from.atKm === 0 && legs.at(-1)?.to.kind === 'end',
    commodity,
  );
  book.close(
    'the end is that of the route',
    { says: legs.at(-1)?.to.atKm ?? 0, own: facts.lengthKm },
    commodity,
  );
  for (const [index, leg] of legs.entries()) {
    const place = placeOf(commodity, leg);
    const next = legs[index + 1];
    book.holds('legs in turn', leg.from.atKm <= leg.to.atKm, place);
    if (next === undefined) continue;
    book.holds('legs without a break', isSame(leg.to, next.from) && leg.to.kind === 'passing', place);
    const supply = facts.passings.find(
      (passing) => passing.commodity === commodity && isSame({ id: passing.id, atKm: passing.atKm }, leg.to),
    );
    book.holds('a stop that counts', supply !== undefined, place);
    if (supply !== undefined)
      book.close('detour of a stop', { says: leg.to.detourKm, own: supply.detourKm }, place);
  }
}

/** What a supply is left with: no more than there is room for, and than it gives. */
function checkDeparture(
  book: Notebook,
  facts: Facts,
  commodity: Commodity,
  { leg, came }: { leg: PlanLeg; came: PlanLeg | undefined },
): void {
  const place = placeOf(commodity, leg);
  const { capacityL, canL, startL, cansAtStart } = facts.stores[commodity];
  book.close('aboard is tanks and cans', { says: leg.departL, own: leg.tankL + leg.cans * canL }, place);
  book.atLeast('tanks no fuller than they hold', { says: capacityL, own: leg.tankL }, place);
  book.atLeast('tanks not below nothing', { says: leg.tankL, own: 0 }, place);
  if (came === undefined) {
    book.close('tanks at the start', { says: leg.tankL + leg.shortL, own: startL }, place);
    book.holds('cans at the start only where they can be filled', leg.cans === 0 || cansAtStart, place);
    return;
  }
  const { mostL } = facts.termsOf(commodity, leg.from.id);
  if (mostL === null) {
    book.close('tanks full, but for what is short', { says: leg.tankL + leg.shortL, own: capacityL }, place);
    return;
  }
  // What is let go elsewhere may not come back as filled here: each container by itself.
  const arrival = stockAfter(facts, commodity, came);
  const intoTanksL = Math.max(0, leg.tankL - arrival.tankL);
  const intoCansL = Math.max(0, leg.cans - arrival.cans) * canL;
  book.atLeast('no more filled than is to be had', { says: mostL, own: intoTanksL + intoCansL }, place);
}

/** What comes of what a leg left with: cans are poured as soon as there is room, a large one is drawn from. */
function stockAfter(
  facts: Facts,
  commodity: Commodity,
  { tankL, cans, needL }: Pick<PlanLeg, 'tankL' | 'cans' | 'needL'>,
): { tankL: number; cans: number } {
  const { capacityL, canL } = facts.stores[commodity];
  let tank = tankL - needL;
  let full = cans;
  if (canL <= capacityL) {
    while (full > 0 && tank + canL <= capacityL + 1e-9) {
      tank += canL;
      full -= 1;
    }
    return { tankL: tank, cans: full };
  }
  // Begun cans are no full ones; what is left in one goes into the tanks as far as there is room.
  while (full > 0 && tank < -1e-9) {
    tank += canL;
    full -= 1;
  }
  return { tankL: Math.min(capacityL, tank), cans: full };
}

/** As a stop that gives only some is left: whole cans first, up to so many, and the tanks with the rest. */
export function refilled(
  facts: Facts,
  came: Drive,
  { mostL, cans }: { mostL: number; cans: number },
): Pick<Leg, 'departL' | 'cans'> {
  const { leg, needL } = came;
  const { capacityL, canL } = facts.stores[leg.commodity];
  const tankL = leg.departL - leg.cans * canL;
  const arrival = stockAfter(facts, leg.commodity, { tankL, cans: leg.cans, needL });
  const comesL = Math.max(0, arrival.tankL);
  const more = Math.max(0, Math.min(cans - arrival.cans, Math.floor(mostL / canL + 1e-9)));
  const intoTanksL = Math.max(0, Math.min(capacityL - comesL, mostL - more * canL));
  const full = arrival.cans + more;
  return { departL: comesL + intoTanksL + full * canL, cans: full };
}

/** Cans that are carried: those of the legs, poured where the tanks have room. */
function checkCarries(book: Notebook, facts: Facts, plan: LegPlan, commodity: Commodity): void {
  const carries = plan.carries.filter((carry) => carry.commodity === commodity);
  const carrying = plan.legs[commodity].filter(({ cans }) => cans > 0);
  book.holds('carries are those of the legs', carries.length === carrying.length, commodity);
  const drives = legsOfPlan(facts, plan, commodity).map((leg) => new Drive(facts, leg));
  const { capacityL, canL } = facts.stores[commodity];
  for (const carry of carries) {
    const place = placeOf(commodity, carry);
    const index = plan.legs[commodity].findIndex(
      ({ from, to }) => isSame(from, carry.from) && isSame(to, carry.to),
    );
    const [leg, drive] = [plan.legs[commodity][index], drives[index]];
    if (leg === undefined || drive === undefined) {
      book.holds('a carry has a leg', false, place);
      continue;
    }
    book.holds('cans of a carry', carry.cans === leg.cans && carry.fromKm === leg.from.atKm, place);
    book.close('litres of a carry', { says: carry.litres, own: carry.cans * canL }, place);
    const lastKm = carry.pourAtKm.length < carry.cans ? leg.to.atKm : carry.pourAtKm.at(-1);
    book.close(
      'a carry ends where its last can is poured',
      { says: carry.toKm, own: lastKm ?? leg.to.atKm },
      place,
    );
    for (const [can, km] of carry.pourAtKm.entries()) {
      const leastUsedL =
        canL <= capacityL ? canL * (can + 1) - (capacityL - leg.tankL) : leg.tankL + can * canL;
      const usedL = leg.departL - drive.levelAt(Math.min(leg.to.atKm, km + MILLIMETRE), 'leaving');
      book.atLeast(
        'room for a can where it is poured',
        { says: usedL, own: leastUsedL },
        `${place}, can ${can + 1} at km ${km}`,
      );
      // Poured before the tanks run dry.
      const before = leg.departL - drive.levelAt(Math.max(leg.from.atKm, km - MILLIMETRE), 'reaching');
      book.atLeast(
        'a can is poured in time',
        { says: leg.tankL + can * canL, own: before },
        `${place}, can ${can + 1} at km ${km}`,
      );
    }
    const usedL = leg.needL;
    for (let can = carry.pourAtKm.length; can < carry.cans; can += 1)
      book.atLeast(
        'a can that comes full was not needed',
        { says: leg.tankL + can * canL, own: usedL },
        place,
      );
  }
}
