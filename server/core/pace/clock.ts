const HOUR_MS = 3_600_000;

/** ISO date of a day so many days after another. */
export const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 24 * HOUR_MS).toISOString().slice(0, 10);

/**
 * Local date and time, to the minute, `hours` after an hour of a day: "2027-05-03T14:05". Local clock throughout: no
 * time zone is crossed and no clock is put forward.
 */
export function localTime(departure: { date: string; hour: number }, hours: number): string {
  const minutes = Math.round((departure.hour + hours) * 60);
  const time = new Date(Date.parse(`${departure.date}T00:00:00Z`) + minutes * 60_000);
  return time.toISOString().slice(0, 16);
}

/** A local time, or a date, so many hours after another of the same form; of a date only whole days count. */
export function dateTimeAfter(time: string, hours: number): string {
  const [date = time, clock] = time.split('T');
  if (clock === undefined) return dateAfter(date, Math.floor(hours / 24));
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return localTime({ date, hour: hour + minute / 60 }, hours);
}
