import type { Commodity } from '../../../contract/common.ts';
import type { PlanStopAsk } from '../../../contract/plan.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { daysOfStanding } from '../../gaps/standing.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import type { NamedStop } from '../../phrases/plan.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { timeToFill } from '../../treatment/line/time-to-fill.ts';
import { drinkingFlow } from '../../treatment/source/treatment-report.ts';
import { noted } from '../../treatment/source/water-notes.ts';
import type { SupplyEdge, SupplyTerms } from './problem.ts';

/** Later than any note. */
const WHENEVER = '9999-12-31';
const MINUTES_PER_DAY = 1440;

export interface Termed {
  edges: SupplyEdge[];
  cautions: CodedCaution[];
}

/**
 * The supplies of a commodity with what was told of them: litres that are to be had, waiting, how fast they flow, and
 * whether their water may go into cans. Water that is treated only at the tap stays out of cans kept for drinking water;
 * where the line treats less in a day than is drunk, water that needs it is no supply.
 */
export function withTerms(
  { analysis, sides }: Reckoned,
  commodity: Commodity,
  edges: readonly SupplyEdge[],
): Termed {
  const { rig, trip, passings, treatment } = analysis;
  const { pace, water } = sides[commodity].course.rig;
  const flowLPerMin = treatment === null ? null : drinkingFlow(treatment.taps);
  const perDayL = water.grades?.drinkingPerDay.high ?? water.litresPerDay.high;
  const byKey = new Map(
    passings
      .filter((passing) => passing.commodity === commodity)
      .map((passing) => [`${passing.id} ${passing.atM}`, passing]),
  );
  const asked = trip.plan?.stops ?? [];
  const known = new Set(passings.flatMap(({ id, alsoIds }) => [id, ...alsoIds]));
  /** By the code of a caution: whom it concerns. */
  const concerned = new Map<StopCode, NamedStop[]>();
  const note = (code: StopCode, stop: NamedStop) =>
    concerned.set(code, [...(concerned.get(code) ?? []), stop]);
  for (const { id } of asked) if (!known.has(id)) note('plan-stop-unknown', { name: id });

  const termed = edges.flatMap((edge): SupplyEdge[] => {
    const passing = byKey.get(`${edge.id} ${edge.atM}`);
    if (edge.kind !== 'passing' || passing === undefined) return [edge];
    const told = askOf(asked, passing);
    const waitHours = waitHoursAt(passing, told);
    const untreated = passing.waterClass === 'treatable';
    const through = commodity === 'water' && (untreated || rig.treatment?.treatEverything === true);
    const stop = passing.name === null ? { kind: passing.kind, atM: edge.atM } : { name: passing.name };
    if (waitHours === null) {
      note('plan-stop-shut', stop);
      return [];
    }
    if (untreated && flowLPerMin !== null && flowLPerMin * MINUTES_PER_DAY < perDayL) {
      note('plan-treats-too-little', stop);
      return [];
    }
    let minutesPerL = fillMinutesPerL(passing, trip.waterNotes ?? [], trip.departure, rig);
    if (through && treatment?.at === 'filling') {
      if (flowLPerMin === null) note('plan-flow-unknown', stop);
      else minutesPerL = Math.max(minutesPerL, 1 / flowLPerMin);
    }
    const fillsCans = !(untreated && treatment?.at === 'tap' && rig.water.cans?.grade === 'drinking');
    if (!fillsCans) note('plan-untreated-water', stop);
    const terms: SupplyTerms = {
      mostL: told?.mostLitres?.[commodity] ?? null,
      fillsCans,
      daysPerLitre: minutesPerL / 60 / pace.hoursPerDay,
    };
    const plain = terms.mostL === null && fillsCans && terms.daysPerLitre === 0;
    const waitDays = daysOfStanding(waitHours, pace.hoursPerDay);
    return [
      {
        ...edge,
        ...(waitDays === 0 ? {} : { waitDays }),
        ...(waitDays === 0 || told?.waitHours !== undefined ? {} : { opensInHours: waitHours }),
        ...(plain ? {} : { terms }),
        ...(told === undefined ? {} : { told: true }),
      },
    ];
  });
  const cautions = [...concerned].map(([code, stops]) => ({ code, facts: { stops } }));
  return { edges: termed, cautions };
}

/** Cautions that name the stops which they concern. */
type StopCode =
  | 'plan-stop-unknown'
  | 'plan-stop-shut'
  | 'plan-treats-too-little'
  | 'plan-flow-unknown'
  | 'plan-untreated-water';

/** What was asked of a stop, by any of its ids. */
export const askOf = (
  asked: readonly PlanStopAsk[],
  { id, alsoIds }: Pick<Passing, 'id' | 'alsoIds'>,
): PlanStopAsk | undefined => asked.find((one) => one.id === id || alsoIds.includes(one.id));

/**
 * Hours of waiting at a supply: as told, else until it opens by its mapped hours, the longest of all times at which one
 * may come. Null where it does not open at all.
 */
export function waitHoursAt(
  { arrival }: Pick<Passing, 'arrival'>,
  told: PlanStopAsk | undefined,
): number | null {
  if (told?.waitHours !== undefined) return told.waitHours;
  return arrival?.open === false ? arrival.waitHours : 0;
}

/** Minutes a litre by what the user noted of the source; none where nothing was. */
function fillMinutesPerL(
  { id, alsoIds, commodity }: Passing,
  notes: NonNullable<Reckoned['analysis']['trip']['waterNotes']>,
  departure: string | undefined,
  rig: Reckoned['analysis']['rig'],
): number {
  if (commodity === 'fuel') return 0;
  const ours = notes.filter((note) => note.id === id || alsoIds.includes(note.id));
  const { latest } = noted(ours, departure ?? WHENEVER);
  if (latest === null) return 0;
  return timeToFill(1, latest, rig.equipment?.ropeAndBucket ?? false)?.minutes ?? 0;
}
