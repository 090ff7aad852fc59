import type { Passing } from '../../contract/analysis.ts';
import type { Caution, Commodity } from '../../contract/common.ts';
import type { PlanStopAsk } from '../../contract/plan.ts';
import type { Reckoned } from '../analyse.ts';
import { daysOfStanding } from '../gaps/standing.ts';
import { timeToFill } from '../treatment/time-to-fill.ts';
import { drinkingFlow } from '../treatment/treatment-report.ts';
import { noted } from '../treatment/water-notes.ts';
import type { SupplyEdge, SupplyTerms } from './problem.ts';

/** Later than any note. */
const WHENEVER = '9999-12-31';
const MINUTES_PER_DAY = 1440;

export interface Termed {
  edges: SupplyEdge[];
  cautions: Caution[];
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
      .map((passing) => [`${passing.id} ${passing.atKm * 1000}`, passing]),
  );
  const asked = trip.plan?.stops ?? [];
  const cautions = new Map<string, Caution>();
  const caution = (code: string, text: string) => cautions.set(text, { code, text });
  const known = new Set(passings.flatMap(({ id, alsoIds }) => [id, ...alsoIds]));
  for (const { id } of asked) {
    if (!known.has(id))
      caution('plan-stop-unknown', `What was told of ${id} is of no use: the route does not come by it.`);
  }

  const termed = edges.flatMap((edge): SupplyEdge[] => {
    const passing = byKey.get(`${edge.id} ${edge.atM}`);
    if (edge.kind !== 'passing' || passing === undefined) return [edge];
    const told = askOf(asked, passing);
    const waitHours = waitHoursAt(passing, told);
    const waitDays = daysOfStanding(waitHours ?? 0, pace.hoursPerDay);
    const untreated = passing.waterClass === 'treatable';
    const through = commodity === 'water' && (untreated || rig.treatment?.treatEverything === true);
    const name = passing.name ?? `the ${passing.kind}`;
    if (waitHours === null) {
      const text = `${name} is left out: by its mapped hours it does not open in the days after you may come. Ask, and say how long the wait is.`;
      caution('plan-stop-shut', text);
      return [];
    }
    if (told?.waitHours === undefined && waitHours > 0) {
      const text = `Up to ${figure(waitHours)} h of waiting for ${name} to open are reckoned with, by its mapped hours. Ask, and say how long the wait is.`;
      caution('plan-waits-for-opening', text);
    }
    let minutesPerL = fillMinutesPerL(passing, trip.waterNotes ?? [], trip.departure, rig);
    let fillsCans = true;
    if (untreated && flowLPerMin !== null && flowLPerMin * MINUTES_PER_DAY < perDayL) {
      const text = `${name} is left out: the line treats ${figure(flowLPerMin * MINUTES_PER_DAY)} l in a whole day, ${figure(perDayL)} l are drunk.`;
      caution('plan-treats-too-little', text);
      return [];
    }
    if (through && treatment?.at === 'filling') {
      if (flowLPerMin === null)
        caution(
          'plan-flow-unknown',
          'How fast the treatment line runs is not known: treating takes no time here.',
        );
      else minutesPerL = Math.max(minutesPerL, 1 / flowLPerMin);
    }
    if (untreated && treatment?.at === 'tap' && rig.water.cans?.grade === 'drinking') {
      fillsCans = false;
      const text = `Water of ${name} is treated only at the tap: it stays out of the cans kept for drinking water.`;
      caution('plan-untreated-water', text);
    }
    const terms: SupplyTerms = {
      mostL: told?.mostLitres?.[commodity] ?? null,
      fillsCans,
      daysPerLitre: minutesPerL / 60 / pace.hoursPerDay,
    };
    const plain = terms.mostL === null && fillsCans && terms.daysPerLitre === 0;
    return [{ ...edge, ...(waitDays === 0 ? {} : { waitDays }), ...(plain ? {} : { terms }) }];
  });
  return { edges: termed, cautions: [...cautions.values()] };
}

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

/** For texts only. */
const figure = (value: number): string => String(Math.round(value * 10) / 10);
