import type { Commodity, Evidence, WaterClass } from '../../../contract/common.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { OpeningHoursReader } from '../../input/opening-hours.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import { isNotedPoint } from '../points/laid.ts';
import type { SupplyFeature } from '../points/supply-feature.ts';
import type { SupplyPoint } from '../points/supply-point.ts';
import { ageOf } from '../tags/age.ts';
import { hostKind } from '../tags/hosts.ts';
import { ANY_WITH_WATER, type KindRule, SURFACE_WATERS } from '../tags/kinds.ts';
import { type KindMatch, matchKinds } from '../tags/match-kinds.ts';
import {
  effectOf,
  type FoundReason,
  found,
  isAnswered,
  ONE_DOWN,
  reaches,
  reasonsFrom,
  weakerOf,
} from '../tags/reasons.ts';
import { inCurrentForm } from '../tags/tag-forms.ts';
import { type Confirmation, type ReportDays, reportOn } from './confirmations.ts';
import type { EngineNeeds } from './engine-needs.ts';
import { FUEL_RULES } from './fuels.ts';
import { judgeFuel } from './judge-fuel.ts';
import { type HoursFacts, judgeHours } from './judge-hours.ts';
import { judgeUse } from './judge-use.ts';
import { judgeWater, lessFit } from './judge-water.ts';
import type { Judgement } from './judgement.ts';
import { type Treats, treat } from './treats.ts';

/** What supplies are judged for: the needs of a rig, the evidence asked for, the day, the user's own reports. */
export interface Judging {
  fuelKind: FuelKind;
  /** What the engine takes, where that is told. */
  engine?: EngineNeeds;
  ropeAndBucket: boolean;
  /** True for a rig that signs for heavy vehicles mean: its permitted or kerb mass is told, and over 3.5 t. */
  isHeavy?: boolean;
  /** The lowest evidence that counts. */
  counting: { fuel: Evidence; water: Evidence };
  /** ISO date for which seasons, age and confirmations are judged; null when the user names none. */
  on: string | null;
  /** ISO dates that seasons are judged for in place of `on`: in season only where each of them is. */
  seasonDays?: readonly string[];
  /** Local times between which it is reached, in place of whole days, for opening hours. */
  reachedAt?: { readonly earliest: string; readonly latest: string };
  /** Without it hours are not judged, beyond those that say outright that it is closed. */
  readHours?: OpeningHoursReader | undefined;
  /** Ids of supplies for which the user told how long one waits. */
  waitsTold?: ReadonlySet<string>;
  /** ISO date that stands in for age and confirmations, not for seasons, when `on` is null; without it age is not judged. */
  today?: string;
  confirmations: TripFile['confirmations'];
  /** What the rig's treatment line and the user's notes make of a water; left out where there is neither. */
  treats?: Treats | undefined;
}

/** One reading of an object's tags for one commodity. */
interface Reading {
  rule: KindRule;
  evidence: Evidence;
  waterClass: WaterClass | null;
  reasons: FoundReason[];
}

/** The days for which the user's reports are judged. */
function reportDaysOf({ on, today, seasonDays = [] }: Judging): ReportDays {
  const [first, last] = [seasonDays[0], seasonDays.at(-1)];
  const days = { departure: on, today: today ?? null };
  return first === undefined || last === undefined ? days : { ...days, reached: { first, last } };
}

/** Hours are judged for the time of reaching it, else for the day; null where nobody reads them. */
function hoursFacts(judge: Judging): HoursFacts | null {
  const from = judge.on ?? judge.today;
  if (judge.readHours === undefined || from === undefined) return null;
  const [first, last] = [judge.seasonDays?.[0] ?? judge.on, judge.seasonDays?.at(-1) ?? judge.on];
  const days =
    first === null || last === null ? null : { earliest: `${first}T00:00`, latest: `${last}T23:59` };
  return { read: judge.readHours, window: judge.reachedAt ?? days, from };
}

function matchOf({ surface }: SupplyFeature, tags: Tags, commodity: Commodity): KindMatch | undefined {
  if (surface !== undefined)
    return commodity === 'water' ? { rule: SURFACE_WATERS[surface], prefixes: [] } : undefined;
  return matchKinds(tags).find((candidate) => candidate.rule.commodity === commodity);
}

function read(feature: SupplyFeature, tags: Tags, commodity: Commodity, judge: Judging): Reading | null {
  const { lon, lat } = feature;
  const match = matchOf(feature, tags, commodity);
  if (match === undefined) return null;
  const { rule } = match;
  let judgement: Judgement;
  let waterClass: WaterClass | null = null;
  if (rule.commodity === 'fuel') judgement = judgeFuel(rule, tags, judge.fuelKind, judge.engine);
  else ({ judgement, waterClass } = judgeWater(rule, tags, judge.ropeAndBucket));
  const days = judge.seasonDays ?? (judge.on === null ? [] : [judge.on]);
  const on = judge.on ?? judge.today ?? null;
  judgeUse(match, tags, { days, on, lat, isHeavy: judge.isHeavy === true }, judgement);
  const hours = hoursFacts(judge);
  if (hours !== null && !isWaitTold(feature, judge)) {
    const fuels = FUEL_RULES[judge.fuelKind].keys;
    judgeHours({ tags, commodity, place: { lon, lat }, fuels }, hours, judgement);
  }
  return { rule, evidence: judgement.evidence, waterClass, reasons: judgement.reasons };
}

/** Whether the user said how long one waits there, so that hours no longer decide. */
const isWaitTold = ({ id, alsoIds }: SupplyFeature, { waitsTold }: Judging): boolean =>
  waitsTold !== undefined && [id, ...alsoIds].some((one) => waitsTold.has(one));

/** Of several readings of one object the worst in everything. */
function worstOf(readings: readonly Reading[]): Reading | null {
  const [first, ...rest] = readings;
  if (first === undefined) return null;
  return rest.reduce<Reading>(
    (worst, next) => ({
      rule: worst.rule,
      evidence: weakerOf(worst.evidence, next.evidence),
      waterClass:
        worst.waterClass !== null && next.waterClass !== null
          ? lessFit(worst.waterClass, next.waterClass)
          : null,
      reasons: [...worst.reasons, ...next.reasons],
    }),
    first,
  );
}

/** Takes a level off where the tags are old or nobody knows how old, all where a newer map has it not; says which check dates were not believed. */
function age(reading: Reading, feature: SupplyFeature, on: string | null): void {
  gone(reading, feature);
  enclosed(reading, feature);
  if (on === null) return;
  const { seenOn, stale, ahead } = ageOf(feature.tags, feature.editedAt, on, feature.mapOn);
  for (const tag of ahead) reading.reasons.push(found('check-date-ahead', { tags: [tag] }));
  if (seenOn === null && feature.undated === true) {
    reading.reasons.push(found('undated', {}));
    reading.evidence = ONE_DOWN[reading.evidence];
  }
  if (!stale || seenOn === null) return;
  reading.reasons.push(found('stale', { on: seenOn }));
  reading.evidence = ONE_DOWN[reading.evidence];
}

/** The last day on which somebody edited it, or looked at it; a check ahead of the file or the day judged for is not believed. */
const seenOn = ({ tags, editedAt, mapOn }: SupplyFeature, on: string | null): string | null =>
  ageOf(tags, editedAt, mapOn ?? on ?? LAST_DAY).seenOn;

const LAST_DAY = '9999-12-31';

/** What a newer map has dropped is doubtful. */
function gone(reading: Reading, { goneIn }: SupplyFeature): void {
  if (goneIn === undefined) return;
  reading.reasons.push(found('gone-in-newer', { source: goneIn }));
  reading.evidence = 'doubtful';
}

/** What lies on closed ground is doubtful. */
function enclosed(reading: Reading, { closedGround = [] }: SupplyFeature): void {
  for (const { what, name, id } of closedGround)
    reading.reasons.push(found('on-closed-ground', { land: what, name, id }));
  if (closedGround.length > 0) reading.evidence = 'doubtful';
}

/** The reading under a fresh confirmation: what that answers is told, and no longer stands against the supply. */
function confirm(reading: Reading, reports: readonly FoundReason[]): void {
  const answered = reading.reasons.filter(({ code }) => isAnswered(code));
  const against = reasonsFrom(answered);
  reading.reasons = reading.reasons.filter(({ code }) => !isAnswered(code));
  if (against.length > 0) reading.reasons.push(found('confirmed-against-tags', { against }));
  if (reading.waterClass !== null && reading.waterClass !== 'drinking')
    reading.reasons.push(found('class-by-tags', {}));
  reading.reasons.push(...reports);
  reading.evidence = 'confirmed';
}

function nameOf(tags: Tags, commodity: Commodity): string | null {
  const names = commodity === 'fuel' ? [tags.name, tags.brand, tags.operator] : [tags.name];
  return names.find((name) => name !== undefined && name.trim() !== '') ?? null;
}

/** What is to be said of where the tags come from. */
const readingReasons = ({ corrections = [], otherReadings = [] }: SupplyFeature): FoundReason[] => [
  ...corrections.map((correction) => found('corrected', correction)),
  ...otherReadings.map(({ id, keys }) => found('tags-differ', { id, keys })),
];

/** All that is known of one object and one commodity; null where it is no supply of that. */
function judgedReading(
  feature: SupplyFeature,
  commodity: Commodity,
  reports: readonly Confirmation[],
  judge: Judging,
): Reading | null {
  const tagSets = [feature.tags, ...(feature.otherReadings ?? []).map((other) => other.tags)];
  const readings = tagSets.map((tags) => read(feature, inCurrentForm(tags), commodity, judge));
  const reading = worstOf(readings.filter((one) => one !== null));
  if (reading === null) return null;
  if (commodity === 'water' && readings.includes(null)) {
    // One of the merged objects says outright that it has no drinking water.
    reading.reasons.push(found('tags-contradict', { between: 'mappings' }));
    reading.evidence = 'doubtful';
    reading.waterClass = lessFit(reading.waterClass ?? 'none', 'washing');
  }
  reading.reasons.push(...readingReasons(feature));

  const report = reportOn(reports, commodity, reportDaysOf(judge));
  if (report.state === 'works') confirm(reading, report.reasons);
  else {
    age(reading, feature, judge.on ?? judge.today ?? null);
    reading.reasons.push(...report.reasons);
    if (report.state === 'out') reading.evidence = 'doubtful';
  }

  if (commodity === 'water' && judge.treats !== undefined) {
    const ids = [feature.id, ...feature.alsoIds];
    treat(reading, judge.treats({ ids, ruleKey: reading.rule.key, tags: inCurrentForm(feature.tags) }));
  }

  const level = judge.counting[commodity];
  if (!reaches(reading.evidence, level)) {
    reading.reasons.push(found('evidence-below', { evidence: reading.evidence, commodity, from: level }));
  }
  return reading;
}

function kindOf(feature: SupplyFeature, rule: KindRule): SupplyKind {
  if (isNotedPoint(feature)) return { phrase: 'own-point', facts: {} };
  return rule === ANY_WITH_WATER ? hostKind(feature.tags) : rule.kind;
}

function judgeOne(
  feature: SupplyFeature,
  commodity: Commodity,
  reports: readonly Confirmation[],
  judge: Judging,
): SupplyPoint | null {
  const reading = judgedReading(feature, commodity, reports, judge);
  if (reading === null) return null;
  return {
    id: feature.id,
    alsoIds: [...feature.alsoIds],
    name: nameOf(feature.tags, commodity),
    commodity,
    kind: kindOf(feature, reading.rule),
    lon: feature.lon,
    lat: feature.lat,
    evidence: reading.evidence,
    counts: reading.reasons.every(({ code }) => effectOf(code) !== 'blocks'),
    reasons: reasonsFrom(reading.reasons),
    ...(reading.waterClass === null ? {} : { waterClass: reading.waterClass }),
    seenOn: seenOn(feature, judge.on ?? judge.today ?? null),
    tags: feature.tags,
    ...(feature.mappedTags === undefined ? {} : { mappedTags: feature.mappedTags }),
  };
}

/**
 * Judges every feature for a rig and a trip: one point for each commodity that it may supply, fuel first, in the
 * features' order. A point counts when none of its reasons blocks, which takes the evidence asked for, nothing
 * against its use, and for water the class `drinking`. A fresh confirmation makes the evidence `confirmed` and answers what
 * the tags say against its use; which fuel is sold and what the water is fit for still goes by the tags.
 */
export function classify(features: readonly SupplyFeature[], judge: Judging): SupplyPoint[] {
  const reportsById = new Map<string, Confirmation[]>();
  for (const report of judge.confirmations ?? []) {
    const known = reportsById.get(report.id);
    if (known === undefined) reportsById.set(report.id, [report]);
    else known.push(report);
  }
  const points: SupplyPoint[] = [];
  for (const feature of features) {
    const ids = [feature.id, ...feature.alsoIds];
    const reports = reportsById.size === 0 ? [] : ids.flatMap((id) => reportsById.get(id) ?? []);
    for (const commodity of ['fuel', 'water'] as const) {
      const point = judgeOne(feature, commodity, reports, judge);
      if (point !== null) points.push(point);
    }
  }
  return points;
}
