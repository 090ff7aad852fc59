/** Forms of a duration (OSM wiki, Key:duration): minutes, hours and minutes, with seconds, ISO 8601. */
const MINUTES = /^(\d+)$/;
const CLOCK = /^(\d+):([0-5]?\d)(?::([0-5]?\d))?$/;
const ISO = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?$/;

const hoursFrom = (days: number, hours: number, minutes: number, seconds: number): number =>
  days * 24 + hours + minutes / 60 + seconds / 3600;

/** The hours that a value of `duration` says; null where it cannot be read. */
export function durationHours(written: string): number | null {
  const text = written.trim().toUpperCase();
  const minutes = MINUTES.exec(text);
  if (minutes !== null) return hoursFrom(0, 0, Number(minutes[1]), 0);
  const clock = CLOCK.exec(text);
  if (clock !== null) return hoursFrom(0, Number(clock[1]), Number(clock[2]), Number(clock[3] ?? 0));
  const iso = text === 'P' ? null : ISO.exec(text);
  if (iso === null) return null;
  const [days = 0, hours = 0, isoMinutes = 0, seconds = 0] = iso.slice(1).map((part) => Number(part ?? 0));
  return hoursFrom(days, hours, isoMinutes, seconds);
}
