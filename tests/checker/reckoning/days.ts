/** A place of the route as it is reached and left: hours since departure, and driving hours of its day that are used up. */
export interface Moment {
  readonly hours: number;
  readonly usedH: number;
}

/** A halt of the user's: a camp for a night, or a stay of so many days. */
export type UserHalt =
  | { readonly kind: 'camp'; readonly km: number }
  | { readonly kind: 'stay'; readonly km: number; readonly days: number };

interface Mark extends Moment {
  readonly km: number;
}

/** Less than this of an hour is float noise. */
const NOISE_H = 1e-9;
/** Half a second of driving is no day of its own. */
const NOISE_DAY = 1e-5;

/**
 * The drive along the route at the slow pace, day by day: each day of 24 hours begins with driving, which goes on until
 * its hours are used up or a camp is reached; then the next morning is waited for. Whole days of a stay leave the day as
 * it was, other hours of it are hours of driving less.
 */
export class DayPlan {
  readonly #marks: Mark[] = [{ km: 0, hours: 0, usedH: 0 }];
  readonly #hoursPerDay: number;
  #km = 0;
  #hours = 0;
  #usedH = 0;
  #day = 0;

  constructor(facts: {
    readonly lengthKm: number;
    readonly hoursPerKm: number;
    readonly hoursPerDay: number;
    readonly halts: readonly UserHalt[];
  }) {
    this.#hoursPerDay = facts.hoursPerDay;
    for (const halt of [...facts.halts].sort((a, b) => a.km - b.km)) {
      this.#driveTo(halt.km, facts.hoursPerKm);
      if (halt.kind === 'camp') this.#sleep();
      else this.#stay(24 * halt.days);
    }
    this.#driveTo(facts.lengthKm, facts.hoursPerKm);
  }

  /** Reached, before what the place itself has: a night, a stay. */
  reaching(km: number): Moment {
    const index = this.#marks.findIndex((mark) => mark.km >= km);
    const next = this.#marks.at(index);
    return next?.km === km ? next : between(this.#marks[index - 1], next, km);
  }

  /** Left, after what the place itself has. */
  leaving(km: number): Moment {
    const index = this.#marks.findLastIndex((mark) => mark.km <= km);
    const last = this.#marks.at(index);
    return last?.km === km ? last : between(last, this.#marks[index + 1], km);
  }

  /** Places inside a stretch where a night or a stay falls. */
  placesInside(fromKm: number, toKm: number): number[] {
    return this.#marks.map(({ km }) => km).filter((km) => km > fromKm && km < toKm);
  }

  #driveTo(km: number, hoursPerKm: number): void {
    for (;;) {
      const restH = (km - this.#km) * hoursPerKm;
      const leftH = Math.max(0, this.#hoursPerDay - this.#usedH);
      const isToday = restH <= leftH + NOISE_DAY * this.#hoursPerDay;
      const drivenH = isToday ? restH : leftH;
      this.#km = isToday ? km : this.#km + leftH / hoursPerKm;
      this.#hours += drivenH;
      this.#usedH += drivenH;
      this.#mark();
      if (isToday) return;
      this.#sleep();
    }
  }

  #sleep(): void {
    this.#day += 1;
    this.#hours = 24 * this.#day;
    this.#usedH = 0;
    this.#mark();
  }

  #stay(hours: number): void {
    const [usedH, clockH] = [this.#usedH, this.#hours - 24 * this.#day];
    this.#hours += hours;
    this.#day = Math.floor((this.#hours + NOISE_H) / 24);
    const leavesAtH = this.#hours - 24 * this.#day;
    const waitedH = leavesAtH - clockH;
    if (Math.abs(waitedH) > NOISE_H)
      this.#usedH = Math.min(this.#hoursPerDay, waitedH > 0 ? usedH + waitedH : leavesAtH);
    this.#mark();
    if (this.#usedH >= this.#hoursPerDay && usedH < this.#hoursPerDay) this.#sleep();
  }

  #mark(): void {
    this.#marks.push({ km: this.#km, hours: this.#hours, usedH: this.#usedH });
  }
}

function between(before: Mark | undefined, after: Mark | undefined, km: number): Moment {
  if (before === undefined || after === undefined) throw new Error(`km ${km} is not on the route`);
  const share = (km - before.km) / (after.km - before.km);
  return {
    hours: before.hours + share * (after.hours - before.hours),
    usedH: before.usedH + share * (after.usedH - before.usedH),
  };
}

/** Nights on a way of so many hours of driving, those of its first day that are used up already among them. */
export const nightsOver = (drivingH: number, hoursPerDay: number): number =>
  Math.max(1, Math.ceil(drivingH / hoursPerDay - NOISE_H)) - 1;
