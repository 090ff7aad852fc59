import { sumBefore } from '../gaps/course/profile.ts';
import { locate } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import { classify, type Judging } from '../supply/judge/rules.ts';
import type { Passing } from '../supply/points/passing.ts';
import type { SupplyFeature } from '../supply/points/supply-feature.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { goesByDates } from '../supply/tags/hours.ts';
import { dateAfter, localTime } from './clock.ts';
import type { PacePlan } from './pace-plan.ts';

/**
 * Judges supplies whose tags speak of seasons, or of hours that go by dates, and those of which the user reported, for the
 * days on which they are reached, each passing for its own; all others stay as judged. A supply off the corridor is judged for the day on which its nearest place of the route is
 * reached. Without a date of departure nothing changes.
 */
export function judgedOnReach(input: {
  route: RouteLine;
  plan: PacePlan;
  features: readonly SupplyFeature[];
  points: readonly SupplyPoint[];
  passings: readonly Passing[];
  judging: Judging;
}): { points: SupplyPoint[]; passings: Passing[] } {
  const { route, plan, features, judging } = input;
  const points = [...input.points];
  const passings = [...input.passings];
  const { date, hour } = plan.departure;
  if (date === null) return { points, passings };
  const departure = { date, hour };
  const seasonal = new Map(goByDays(features, judging).map((feature) => [feature.id, feature]));
  if (seasonal.size === 0) return { points, passings };

  const judgedAt = (feature: SupplyFeature, commodity: SupplyPoint['commodity'], atM: number) =>
    classify([feature], { ...judging, ...reachOf(plan, departure, atM) }).find(
      (point) => point.commodity === commodity,
    );
  const firstReach = new Map<string, SupplyPoint>();
  for (const [index, passing] of passings.entries()) {
    const feature = seasonal.get(passing.id);
    const point = feature === undefined ? undefined : judgedAt(feature, passing.commodity, passing.atM);
    if (point === undefined) continue;
    const { tags: _tags, mappedTags: _mapped, ...judged } = point;
    passings[index] = { ...passing, ...judged };
    const key = `${point.commodity} ${point.id}`;
    if (!firstReach.has(key)) firstReach.set(key, point);
  }
  for (const [index, point] of points.entries()) {
    const feature = seasonal.get(point.id);
    if (feature === undefined) continue;
    const reached = firstReach.get(`${point.commodity} ${point.id}`);
    const judged = reached ?? judgedAt(feature, point.commodity, locate(route, feature.lon, feature.lat).atM);
    if (judged !== undefined) points[index] = judged;
  }
  return { points, passings };
}

/** Those that may be one thing on one day and another on the next. */
function goByDays(features: readonly SupplyFeature[], { confirmations = [] }: Judging): SupplyFeature[] {
  const reported = new Set(confirmations.map(({ id }) => id));
  return features.filter(
    (feature) => speaksOfSeasons(feature) || [feature.id, ...feature.alsoIds].some((id) => reported.has(id)),
  );
}

/** Season words stand under `seasonal`, or as a value of other keys. */
const speaksOfSeasons = (feature: SupplyFeature): boolean =>
  [feature.tags, ...(feature.otherReadings ?? []).map((other) => other.tags)].some(
    (tags) =>
      (tags.seasonal ?? 'no') !== 'no' ||
      Object.values(tags).includes('seasonal') ||
      Object.entries(tags).some(
        ([key, value]) =>
          (key.startsWith('opening_hours') || key.endsWith(':conditional')) && goesByDates(value),
      ),
  );

/** The days on which a place is reached, and the times where the hour of departure is told. */
function reachOf(
  plan: PacePlan,
  departure: { date: string; hour: number },
  atM: number,
): Pick<Judging, 'seasonDays' | 'reachedAt'> {
  const seasonDays = reachDays(plan, departure, atM);
  if (!plan.timed) return { seasonDays };
  const timeAt = (pace: 'fast' | 'slow') =>
    localTime(departure, sumBefore(plan.schedules[pace].elapsedH, atM));
  return { seasonDays, reachedAt: { earliest: timeAt('fast'), latest: timeAt('slow') } };
}

/**
 * The days for which a place is to be in season: reached at the fast pace, at the slow one, and the first day of every
 * month between, as seasons go by months.
 */
function reachDays(plan: PacePlan, departure: { date: string; hour: number }, atM: number): string[] {
  const dayAt = (pace: 'fast' | 'slow') =>
    localTime(departure, sumBefore(plan.schedules[pace].elapsedH, atM)).slice(0, 10);
  const [first, last] = [dayAt('fast'), dayAt('slow')];
  const days = [first];
  let month = nextMonth(first);
  // Past a year every month has been looked at.
  while (month < last && days.length < 14) {
    days.push(month);
    month = nextMonth(month);
  }
  if (last !== first) days.push(last);
  return days;
}

/** The first day of the month after a date. */
const nextMonth = (date: string): string => `${dateAfter(`${date.slice(0, 7)}-01`, 31).slice(0, 7)}-01`;
