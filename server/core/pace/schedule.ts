import type { Profile } from '../gaps/course/profile.ts';
import { at } from '../lists/at.ts';
import type { Day, Night } from './day.ts';

/** A stretch at one pace: hours of driving, and the share of a driving day that they are. */
export interface Piece {
  fromM: number;
  toM: number;
  hours: number;
  dayShare: number;
}

/** A halt of the user's: a camp for so many nights, or a stay of so many days (24 hours each). */
export interface Stop {
  atM: number;
  kind: 'camp' | 'stay';
  name: string | null;
  /** Whole nights of a camp, days of a stay. */
  days: number;
}

/** A day from one morning to the next, metres along the route. */
export interface ScheduledDay {
  /** 0 for the day of departure. */
  index: number;
  fromM: number;
  toM: number;
  hours: number;
  halt: Day['halt'];
}

/** A drive, day by day. Hours count from departure; nights and stays are jumps of `elapsedH`. */
export interface Schedule {
  elapsedH: Profile;
  /** Share of the day's driving that is used up, 0 to 1, at the places of `elapsedH`: falls where a morning comes. */
  usedShare: Profile;
  drivingH: number;
  days: ScheduledDay[];
  /** Nights at camps and where a day's hours end; those of stays go with the stays. */
  nights: Night[];
  /** False where the drive has more days than are told one by one: from there on it goes at the mean of a day. */
  allListed: boolean;
}

/** More days than this are not told one by one (ours). */
export const MOST_DAYS = 1000;
/** A day whose hours end within this share of it before a stop ends at the stop: under half a second of driving. */
const NOISE_SHARE = 1e-5;
/** A stretch too short to be a day of its own, metres. */
const NOISE_M = 0.01;
const NOISE_H = 1e-9;

/**
 * Drives the pieces, which tile the route in order, halting at the stops, which are in order and lie before its end.
 * Each day has 24 hours and begins with driving; the driving goes on without a break until its share of the day is
 * used up, a camp is reached, or the waiting of a stay has used up the rest of the hours (`hoursPerDay`).
 */
export function scheduleOf(pieces: readonly Piece[], stops: readonly Stop[], hoursPerDay: number): Schedule {
  const drive = new Drive(hoursPerDay);
  let next = 0;
  for (const piece of pieces) {
    let { hours, dayShare } = piece;
    for (; next < stops.length && at(stops, next).atM < piece.toM; next += 1) {
      const stop = at(stops, next);
      const restM = piece.toM - drive.atM;
      const part = restM <= 0 ? 0 : Math.max(0, stop.atM - drive.atM) / restM;
      drive.on(Math.max(drive.atM, stop.atM), hours * part, dayShare * part);
      hours *= 1 - part;
      dayShare *= 1 - part;
      drive.halt(stop);
    }
    drive.on(piece.toM, hours, dayShare);
  }
  return drive.end();
}

class Drive {
  atM = 0;
  readonly #hoursPerDay: number;
  readonly #placesM = [0];
  readonly #hours = [0];
  readonly #shares = [0];
  readonly #days: ScheduledDay[] = [];
  readonly #nights: Night[] = [];
  #elapsedH = 0;
  #drivingH = 0;
  /** The day at hand: its number, the share of its driving that is used up, where it began, hours driven. */
  #day = 0;
  #share = 0;
  #dayFromM = 0;
  #hoursToday = 0;

  constructor(hoursPerDay: number) {
    this.#hoursPerDay = hoursPerDay;
  }

  /** Drives on to `toM`, over as many nights as it takes. */
  on(toM: number, hours: number, dayShare: number): void {
    let restH = hours;
    let rest = dayShare;
    while (rest > 1 - this.#share + NOISE_SHARE && !this.#endless()) {
      const part = Math.max(0, 1 - this.#share) / rest;
      this.#share = 1;
      this.#drive(this.atM + part * (toM - this.atM), part * restH);
      restH *= 1 - part;
      rest *= 1 - part;
      this.#nights.push({ atM: this.atM, name: null, from: 'pace' });
      this.#sleep({ kind: 'pace', name: null });
    }
    if (this.#endless()) {
      this.#drivingH += restH;
      this.#elapsedH += rest * 24;
      this.atM = toM;
      this.#mark();
      return;
    }
    // What is within noise of a day is a day: a share of more would make a night of the nothing that is left of a piece.
    this.#share = Math.min(1, this.#share + rest);
    this.#drive(toM, restH);
  }

  halt(stop: Stop): void {
    if (this.#endless()) {
      this.#elapsedH += 24 * stop.days;
      this.#mark();
      return;
    }
    const halt = { kind: stop.kind, name: stop.name };
    if (stop.kind === 'camp') {
      this.#nights.push({ atM: stop.atM, name: stop.name, from: 'camp' });
      for (let night = 0; night < stop.days; night += 1) this.#sleep(halt);
      return;
    }
    const used = this.#share;
    const clockH = this.#elapsedH - 24 * this.#day;
    const leavesH = this.#elapsedH + 24 * stop.days;
    const day = Math.floor((leavesH + NOISE_H) / 24);
    while (this.#day < day && !this.#endless()) this.#closeDay(halt);
    this.#day = day;
    this.#elapsedH = leavesH;
    const leavesAtH = Math.max(0, leavesH - 24 * day);
    // Whole days leave the share as it was; other waiting takes up driving hours of the day that it ends in.
    const waitedH = leavesAtH - clockH;
    const share = waitedH > -NOISE_H ? used + waitedH / this.#hoursPerDay : leavesAtH / this.#hoursPerDay;
    this.#share = Math.abs(waitedH) <= NOISE_H ? used : Math.min(1, share);
    this.#mark();
    // The wait for the morning belongs to the stay.
    if (this.#share >= 1 && used < 1 && !this.#endless()) this.#sleep(halt);
  }

  end(): Schedule {
    const last = this.#days.at(-1);
    if (this.#endless()) return this.#whole(false);
    if (last === undefined || this.atM - this.#dayFromM > NOISE_M)
      this.#closeDay({ kind: 'end', name: null });
    else last.toM = this.atM;
    return this.#whole(true);
  }

  #whole(allListed: boolean): Schedule {
    const atM = Float64Array.from(this.#placesM);
    return {
      elapsedH: { atM, sum: Float64Array.from(this.#hours) },
      usedShare: { atM, sum: Float64Array.from(this.#shares) },
      drivingH: this.#drivingH,
      days: this.#days,
      nights: this.#nights,
      allListed,
    };
  }

  #drive(toM: number, hours: number): void {
    this.atM = toM;
    this.#elapsedH += hours;
    this.#drivingH += hours;
    this.#hoursToday += hours;
    this.#mark();
  }

  /** Until the next morning. */
  #sleep(halt: Day['halt']): void {
    this.#closeDay(halt);
    this.#elapsedH = 24 * this.#day;
    this.#share = 0;
    this.#mark();
  }

  #closeDay(halt: Day['halt']): void {
    this.#days.push({
      index: this.#day,
      fromM: this.#dayFromM,
      toM: this.atM,
      hours: this.#hoursToday,
      halt,
    });
    this.#day += 1;
    this.#dayFromM = this.atM;
    this.#hoursToday = 0;
  }

  #mark(): void {
    this.#placesM.push(this.atM);
    this.#hours.push(this.#elapsedH);
    // At the mean of a day no place is known to be in its morning.
    this.#shares.push(this.#endless() ? 1 : this.#share);
  }

  #endless = (): boolean => this.#day >= MOST_DAYS;
}
