import type { Commodity } from '../../../contract/common.ts';
import type { PlanStopAsk } from '../../../contract/plan.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { daysOfStanding } from '../../gaps/course/standing.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { NamedStop } from '../../phrases/plan/plan.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { askOf, waitHoursAt } from '../../supply/points/stop-asks.ts';
import { timeToFill } from '../../treatment/line/flow/time-to-fill.ts';
import { drinkingFlow } from '../../treatment/source/treatment-report.ts';
import { noted } from '../../treatment/source/water-notes.ts';
import { placeName, type SupplyEdge, type SupplyTerms } from '../side/supply-edge.ts';

/** Later than any note. */
const WHENEVER = '9999-12-31';

/** Cautions that name the stops which they concern. */
type StopCode =
  | 'plan-stop-unknown'
  | 'plan-must-stop-uncounted'
  | 'plan-stop-shut'
  | 'plan-treats-too-little'
  | 'plan-flow-unknown'
  | 'plan-flows-too-little'
  | 'plan-untreated-water';

interface Remark {
  readonly code: StopCode;
  readonly stop: NamedStop;
}

/** What all supplies of a commodity are judged by. */
interface TermFacts {
  readonly analysis: Reckoned['analysis'];
  readonly commodity: Commodity;
  readonly passings: readonly Passing[];
  /** By `placeName`. */
  readonly passingAt: ReadonlyMap<string, Passing>;
  readonly asks: readonly PlanStopAsk[];
  /** What the treatment line gives; null where the flow is not known. */
  readonly flowLPerMin: number | null;
  /** Of water, at the rate that verdicts use. */
  readonly litresPerDay: number;
}

/** A supply with its terms, and what is to be said of it. */
interface Judgement {
  readonly edge: SupplyEdge;
  readonly remarks: readonly Remark[];
}

/**
 * The supplies of a commodity with what is known of them: litres that are to be had, waiting, how fast they flow, and
 * whether their water may go into cans. Water that is treated only at the tap stays out of cans kept for drinking water.
 * The supplies are those that count in gaps, all of them.
 */
export function withTerms(
  reckoned: Reckoned,
  commodity: Commodity,
  edges: readonly SupplyEdge[],
): { edges: SupplyEdge[]; cautions: Caution[] } {
  const facts = factsOf(reckoned, commodity);
  const judgements = edges.map((edge) => judge(facts, edge));
  const remarks = [
    ...unknownStops(facts),
    ...uncountedStops(facts),
    ...leftOut(facts),
    ...judgements.flatMap((judgement) => judgement.remarks),
  ];
  return {
    edges: judgements.map(({ edge }) => edge),
    cautions: cautionsOf(remarks),
  };
}

function factsOf({ analysis, sides }: Reckoned, commodity: Commodity): TermFacts {
  const { trip, treatment } = analysis;
  const passings = analysis.passings.filter((passing) => passing.commodity === commodity);
  return {
    analysis,
    commodity,
    passings,
    passingAt: new Map(passings.map((passing) => [placeName(passing), passing])),
    asks: trip.plan?.stops ?? [],
    flowLPerMin: treatment === null ? null : drinkingFlow(treatment.taps),
    litresPerDay: mostWaterPerDay(sides.water.course.rig),
  };
}

/** Stops of which the user says something and that the route does not come by. */
function unknownStops({ analysis, asks }: TermFacts): Remark[] {
  const ids = new Set(analysis.passings.flatMap(({ id, alsoIds }) => [id, ...alsoIds]));
  const mustStop = analysis.trip.plan?.mustStop ?? [];
  return [...asks.map(({ id }) => id), ...mustStop]
    .filter((id) => !ids.has(id))
    .map((id) => ({ code: 'plan-stop-unknown', stop: { name: id } }));
}

/** Stops that must be made and that count for nothing: no plan can stop there. */
function uncountedStops({ analysis }: TermFacts): Remark[] {
  const mustStop = new Set(analysis.trip.plan?.mustStop ?? []);
  const counting = new Set(analysis.passings.flatMap(({ id, counts }) => (counts ? [id] : [])));
  return analysis.passings
    .filter(({ id }) => mustStop.has(id) && !counting.has(id))
    .map((passing) => ({ code: 'plan-must-stop-uncounted', stop: stopOf(passing) }));
}

const stopOf = ({ name, kind, atM }: Passing): NamedStop => (name === null ? { kind, atM } : { name });

/** Supplies that count in no stretch because no opening is found for them, or the line is too slow for their water. */
const leftOut = ({ passings }: TermFacts): Remark[] =>
  passings.flatMap((passing) =>
    passing.reasons.flatMap((reason): Remark[] => {
      const stop = stopOf(passing);
      if (reason.code === 'no-opening-found') return [{ code: 'plan-stop-shut', stop }];
      const isSlow =
        reason.code === 'line-lacks' &&
        reason.facts.findings.some(({ detail }) => detail.phrase === 'treats-too-little');
      return isSlow ? [{ code: 'plan-treats-too-little', stop }] : [];
    }),
  );

function judge(facts: TermFacts, edge: SupplyEdge): Judgement {
  const passing = facts.passingAt.get(placeName(edge));
  if (edge.kind !== 'passing' || passing === undefined) return { edge, remarks: [] };
  const stop = stopOf(passing);
  const ask = askOf(facts.asks, passing);
  const waitHours = waitHoursAt(passing, ask);
  const { terms, codes } = termsOf(facts, passing);
  const plain = terms.mostL === null && terms.fillsCans && terms.daysPerLitre === 0;
  const waitDays = daysOfStanding(waitHours);
  return {
    edge: {
      ...edge,
      ...(waitDays === 0 ? {} : { waitDays }),
      ...(waitDays === 0 || ask?.waitHours !== undefined ? {} : { opensInHours: waitHours }),
      ...(plain ? {} : { terms }),
      ...(facts.commodity === 'water' && terms.mostL === null ? { givesAll: true } : {}),
      ...(ask === undefined ? {} : { ofUser: true }),
    },
    remarks: codes.map((code) => ({ code, stop })),
  };
}

const isUntreated = ({ waterClass }: Passing): boolean => waterClass === 'treatable';

function termsOf(facts: TermFacts, passing: Passing): { terms: SupplyTerms; codes: StopCode[] } {
  const { commodity, flowLPerMin, analysis } = facts;
  const { rig, treatment } = analysis;
  const goesThrough =
    commodity === 'water' && (isUntreated(passing) || rig.treatment?.treatEverything === true);
  const isTreatedFilling = goesThrough && treatment?.at === 'filling';
  const fillsCans = !(
    isUntreated(passing) &&
    treatment?.at === 'tap' &&
    rig.water.cans?.grade === 'drinking'
  );
  const asNotedMinutes = fillMinutesPerL(facts, passing);
  const minutesPerL =
    isTreatedFilling && flowLPerMin !== null ? Math.max(asNotedMinutes, 1 / flowLPerMin) : asNotedMinutes;
  const daysPerLitre = daysOfStanding(minutesPerL / 60);
  const mostL = passing.mostL ?? null;
  // What is used while filling is drawn as well; a source that gives no more than that fills nothing.
  const usedShare = mostL === null ? daysPerLitre * facts.litresPerDay : 0;
  const fillsNothing = usedShare >= 1;
  return {
    terms: {
      mostL: fillsNothing ? 0 : mostL,
      fillsCans,
      daysPerLitre: fillsNothing ? 0 : daysPerLitre / (1 - usedShare),
    },
    codes: [
      ...(fillsNothing ? (['plan-flows-too-little'] as const) : []),
      ...(isTreatedFilling && flowLPerMin === null ? (['plan-flow-unknown'] as const) : []),
      ...(fillsCans ? [] : (['plan-untreated-water'] as const)),
    ],
  };
}

/** Minutes a litre by what the user noted of the source; none where nothing was. */
function fillMinutesPerL({ analysis }: TermFacts, { id, alsoIds, commodity }: Passing): number {
  if (commodity === 'fuel') return 0;
  const { rig, trip } = analysis;
  const notes = (trip.waterNotes ?? []).filter((note) => note.id === id || alsoIds.includes(note.id));
  const { latest } = noted(notes, trip.departure ?? WHENEVER);
  if (latest === null) return 0;
  return timeToFill(1, latest, rig.equipment?.ropeAndBucket ?? false)?.minutes ?? 0;
}

/** One caution for each code, with all the stops that it concerns. */
function cautionsOf(remarks: readonly Remark[]): Caution[] {
  const codes = [...new Set(remarks.map(({ code }) => code))];
  return codes.map((code) => {
    const stops = remarks.filter((remark) => remark.code === code).map(({ stop }) => stop);
    return { code, facts: { stops } };
  });
}
