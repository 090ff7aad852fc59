import type { Commodity } from '../../../server/contract/common.ts';
import type { PlanEdge } from '../../../server/contract/plan.ts';
import { nightsOver } from './days.ts';
import type { Facts } from './facts.ts';

/** Where a way begins or ends. */
export type End = Pick<PlanEdge, 'kind' | 'id' | 'atKm' | 'detourKm'>;

/** Somewhere off the route that is gone to on a way, and what is waited there. */
export interface Halt {
  readonly atKm: number;
  readonly detourKm: number;
  readonly waitHours: number;
}

/** A way from one supply to another, as it is begun. */
export interface Leg {
  readonly commodity: Commodity;
  readonly from: End;
  readonly to: End;
  readonly departL: number;
  /** Full cans of it. */
  readonly cans: number;
  /** Of it, filled in at `from`. */
  readonly filledL: number;
  /** The night is spent at `from`, as the plan says. */
  readonly sleepsFirst: boolean;
  /** In route order. */
  readonly halts: readonly Halt[];
}

export const isSame = (a: Pick<End, 'id' | 'atKm'>, b: Pick<End, 'id' | 'atKm'>): boolean =>
  a.id === b.id && a.atKm === b.atKm;

/** Of a place: as it is reached, or as it is left. */
export type Side = 'reaching' | 'leaving';

/** A way driven by hand. */
export class Drive {
  readonly facts: Facts;
  readonly leg: Leg;
  readonly needL: number;
  readonly reserveL: number;
  /** What must be left on coming back. */
  readonly backReserveL: number;
  readonly arriveL: number;
  readonly marginL: number;

  constructor(facts: Facts, leg: Leg) {
    this.facts = facts;
    this.leg = leg;
    const { baseAt, shareOfNeed } = facts.stores[leg.commodity];
    this.needL =
      this.#startsL() +
      this.#routeL(leg.to.atKm, 'reaching') +
      this.#haltsL(leg.to.atKm, 'leaving') +
      this.#endsL();
    this.reserveL = baseAt(leg.to.atKm) + shareOfNeed * this.needL;
    this.backReserveL = Math.max(this.reserveL, baseAt(leg.from.atKm) + shareOfNeed * this.needL);
    this.arriveL = leg.departL - this.needL;
    this.marginL = this.arriveL - this.reserveL;
  }

  /** What is aboard at a place of the route; what a halt there takes is gone when it is left. */
  levelAt(km: number, side: Side): number {
    const { from, to, departL } = this.leg;
    if (km === from.atKm && side === 'reaching') return departL;
    if (km === to.atKm && side === 'leaving') return this.arriveL;
    return departL - this.#startsL() - this.#routeL(km, side) - this.#haltsL(km, side);
  }

  /** What is aboard beside the end, every halt made, before the way to the end's supply. */
  get besideEndL(): number {
    return this.arriveL + this.#endsL();
  }

  /** From a place of the route back to `from`, without reserve. */
  wayBackL(km: number, side: Side): number {
    const { facts } = this;
    const { from, halts, commodity } = this.leg;
    const drivingKm = km - from.atKm + from.detourKm;
    if (commodity === 'fuel') return drivingKm * facts.wayPerKm * facts.fuelPerKm;
    const usedH =
      this.#usedH(km, side) +
      (km - from.atKm + 2 * from.detourKm) * this.#hoursPerKm() +
      this.#standingBeforeH() +
      halts
        .filter((halt) => (side === 'leaving' ? halt.atKm <= km : halt.atKm < km))
        .reduce((sum, halt) => sum + this.#drivingHoursOf(halt), 0);
    return this.#homeL(km) + this.#nightsL(usedH);
  }

  /** What is left above the reserve on having come back from a place. */
  overBackL(km: number, side: Side): number {
    return this.levelAt(km, side) - this.wayBackL(km, side) - this.backReserveL;
  }

  /** Where a stretch that cannot be driven back begins; the end where there is none. */
  get backUntilKm(): number {
    const { from, to } = this.leg;
    return this.facts.oneWay
      .filter((span) => span.toKm > from.atKm && span.fromKm < to.atKm)
      .reduce((until, span) => Math.min(until, Math.max(from.atKm, span.fromKm)), to.atKm);
  }

  /** To the end's supply itself and back home, without reserve; null where the way cannot be driven back. */
  get thereAndBackL(): number | null {
    const { facts } = this;
    const { from, to, halts, commodity } = this.leg;
    if (this.backUntilKm < to.atKm) return null;
    const outKm = to.atKm - from.atKm + from.detourKm + to.detourKm;
    const haltsKm = halts.reduce((sum, { detourKm }) => sum + 2 * detourKm, 0);
    if (commodity === 'fuel') return (2 * outKm + haltsKm) * facts.wayPerKm * facts.fuelPerKm;
    const waitH = this.#waitHours(to);
    const waitsH = halts.reduce((sum, { waitHours }) => sum + waitHours, waitH);
    const usedH =
      this.#usedH(to.atKm, 'reaching') +
      (to.atKm - from.atKm + 2 * from.detourKm + 2 * to.detourKm) * this.#hoursPerKm() +
      this.#standingBeforeH() +
      this.#takenH(to.atKm, waitH) +
      halts.reduce((sum, halt) => sum + this.#drivingHoursOf(halt), 0);
    return (
      this.#offL(from.detourKm + to.detourKm + haltsKm) +
      this.#fillingL() +
      this.#routeL(to.atKm, 'reaching') +
      waitsH * facts.mostWaterPerHour +
      this.#homeL(to.atKm) +
      to.detourKm * this.#hoursPerKm() * facts.mostWaterPerHour +
      this.#nightsL(usedH)
    );
  }

  #hoursPerKm(): number {
    return this.facts.wayPerKm * this.facts.hoursPerWayKm;
  }

  #usedH(km: number, side: Side): number {
    return this.facts.days[side](km).usedH;
  }

  #waitHours({ id, kind }: End): number {
    return kind === 'passing' ? this.facts.termsOf(this.leg.commodity, id).waitHours : 0;
  }

  /** Nights that fall on so many hours of driving, those used up of the first day among them. */
  #nightsL(drivingH: number): number {
    const { hoursPerDay, mostWaterPerHour } = this.facts;
    return nightsOver(drivingH, hoursPerDay) * (24 - hoursPerDay) * mostWaterPerHour;
  }

  /** Off the route nights are shared out over the hours of driving. */
  #offL(km: number): number {
    const { wayPerKm, fuelPerKm, hoursPerDay, mostWaterPerHour } = this.facts;
    return this.leg.commodity === 'fuel'
      ? km * wayPerKm * fuelPerKm
      : ((km * this.#hoursPerKm()) / hoursPerDay) * 24 * mostWaterPerHour;
  }

  /** Along the route to a place: fuel by distance, water by the time that passes. */
  #routeL(km: number, side: Side): number {
    const { days, wayPerKm, fuelPerKm, waterPerHour } = this.facts;
    const { atKm } = this.leg.from;
    return this.leg.commodity === 'fuel'
      ? (km - atKm) * wayPerKm * fuelPerKm
      : (days[side](km).hours - days.reaching(atKm).hours) * waterPerHour + this.#hotterL(km, side);
  }

  /** More, where it is hotter, for all hours that pass there, those at its ends included. */
  #hotterL(km: number, side: Side): number {
    const { days, hotter } = this.facts;
    const { atKm } = this.leg.from;
    return hotter
      .filter(({ fromKm, toKm }) => fromKm <= km && toKm >= atKm)
      .reduce((sum, { fromKm, toKm, morePerHour }) => {
        const endKm = Math.min(km, toKm);
        const left = days[endKm === km ? side : 'leaving'](endKm);
        return sum + (left.hours - days.reaching(Math.max(atKm, fromKm)).hours) * morePerHour;
      }, 0);
  }

  /** Water of driving back from a place of the route to the supply where the way begins. */
  #homeL(km: number): number {
    const { waterPerHour, mostWaterPerHour, hotter } = this.facts;
    const { atKm, detourKm } = this.leg.from;
    const moreL = hotter.reduce(
      (sum, { fromKm, toKm, morePerHour }) =>
        sum + Math.max(0, Math.min(km, toKm) - Math.max(atKm, fromKm)) * morePerHour,
      0,
    );
    return ((km - atKm) * waterPerHour + moreL + detourKm * mostWaterPerHour) * this.#hoursPerKm();
  }

  #fillHours(): number {
    const { from, filledL, commodity } = this.leg;
    return from.kind === 'passing' ? this.facts.termsOf(commodity, from.id).hoursPerLitre * filledL : 0;
  }

  /** What is drunk while it is filled; where there is as much as is wanted, it is the supply's. */
  #fillingL(): number {
    const { from, commodity } = this.leg;
    if (commodity === 'fuel' || this.facts.termsOf(commodity, from.id).mostL === null) return 0;
    return this.#fillHours() * this.facts.mostWaterPerHour;
  }

  #startsL(): number {
    return this.#offL(this.leg.from.detourKm) + this.#fillingL();
  }

  /** Hours of driving that waiting and filling at `from` take; less than nothing where the way begins in a morning. */
  #standingBeforeH(): number {
    const { from, commodity, sleepsFirst } = this.leg;
    const { hoursPerDay } = this.facts;
    const hours = (this.#waitHours(from) + this.#fillHours()) % 24;
    if (hours === 0 && !sleepsFirst) return 0;
    const usedH = this.#usedH(from.atKm, 'reaching');
    const givesAll = commodity === 'water' && this.facts.termsOf(commodity, from.id).mostL === null;
    if (sleepsFirst || (givesAll && usedH + hours >= hoursPerDay)) return -usedH;
    return Math.min(Math.max(0, hoursPerDay - usedH), hours);
  }

  /** The way to the end's supply, the waiting there, and what comes past the end of the route. */
  #endsL(): number {
    const { facts } = this;
    const { to, commodity } = this.leg;
    const { km, hours } = to.kind === 'end' ? facts.onward : { km: 0, hours: 0 };
    const offL = this.#offL(to.detourKm + km);
    if (commodity === 'fuel') return offL;
    const moreH = Math.max(0, hours - km * this.#hoursPerKm());
    const pushedL =
      this.#standingBeforeH() <= 0
        ? 0
        : this.#nightsL(this.#usedH(to.atKm, 'reaching') + this.#standingBeforeH());
    return offL + ((moreH / facts.hoursPerDay) * 24 + this.#waitHours(to)) * facts.mostWaterPerHour + pushedL;
  }

  #haltsL(km: number, side: Side): number {
    return this.leg.halts
      .filter((halt) => (side === 'leaving' ? halt.atKm <= km : halt.atKm < km))
      .reduce((sum, halt) => sum + this.#haltL(halt), 0);
  }

  /** A halt: there and back, and where it takes hours of the day the night that it brings onto the way. */
  #haltL({ atKm, detourKm, waitHours }: Halt): number {
    const { facts } = this;
    const offL = this.#offL(2 * detourKm);
    if (this.leg.commodity === 'fuel' || waitHours === 0) return offL;
    const takenH = this.#takenH(atKm, waitHours);
    const nightsL = this.#nightsL(this.#usedH(this.leg.to.atKm, 'reaching') + takenH);
    return offL + waitHours * facts.mostWaterPerHour + nightsL;
  }

  /** Of the hours of driving of a day. */
  #takenH(km: number, waitHours: number): number {
    return Math.min(Math.max(0, this.facts.hoursPerDay - this.#usedH(km, 'reaching')), waitHours % 24);
  }

  #drivingHoursOf({ atKm, detourKm, waitHours }: Halt): number {
    return 2 * detourKm * this.#hoursPerKm() + this.#takenH(atKm, waitHours);
  }
}
