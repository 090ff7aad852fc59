import type { Analysis, Gap, Report } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { PlanLeg, PlanLevel } from '../../server/contract/plan.ts';
import type { PlanReply, TurnBack } from '../../server/contract/whatif.ts';
import { type CanSpan, canSpans } from './can-spans.ts';

/** A stretch as the strip draws it: a gap, or a leg of the plan. */
export type StripGap = Pick<
  Gap,
  | 'from'
  | 'to'
  | 'lengthKm'
  | 'departL'
  | 'reserveL'
  | 'arriveL'
  | 'marginL'
  | 'verdict'
  | 'turnBackKm'
  | 'reserveFromKm'
  | 'runsDryKm'
  | 'levels'
>;

/** What the plan does with one commodity. */
export interface HalfPlan {
  levels: readonly PlanLevel[];
  cans: CanSpan[];
  poursKm: number[];
  turnBacks: Pick<TurnBack, 'atKm' | 'first'>[];
  /** Supplies that count, with what becomes of them. */
  stops: { atKm: number; name: string; used: boolean }[];
}

/** One commodity as the strip draws it. */
export interface StripReport extends Pick<Report, 'capacityL' | 'cover'> {
  gaps: readonly StripGap[];
  plan?: HalfPlan;
}

/** All that the strip draws. */
export type StripAnalysis = Omit<Analysis, Commodity> & Record<Commodity, StripReport>;

/** The analysis with the plan's legs in place of its gaps; as it is where there is no plan. */
export function withPlan(analysis: Analysis, reply: PlanReply | null): StripAnalysis {
  if (reply === null || reply.plan.status !== 'found') return analysis;
  return {
    ...analysis,
    fuel: planReport(analysis, reply, 'fuel'),
    water: planReport(analysis, reply, 'water'),
  };
}

function planReport(analysis: Analysis, { plan, whatIf }: PlanReply, commodity: Commodity): StripReport {
  const { capacityL, cover } = analysis[commodity];
  const ours = <T extends { commodity: Commodity }>(rows: readonly T[]): T[] =>
    rows.filter((row) => row.commodity === commodity);
  const carries = ours(plan.carries);
  return {
    capacityL,
    cover,
    gaps: plan.legs[commodity].map(legAsGap),
    plan: {
      levels: plan.levels[commodity],
      cans: carries.flatMap(canSpans),
      poursKm: carries.flatMap(({ pourAtKm }) => pourAtKm),
      turnBacks: ours(whatIf.turnBacks).filter(isInside),
      stops: ours(plan.stops.flatMap(({ passings }) => passings)).map(({ atKm, name, kind, used }) => ({
        atKm,
        name: name ?? kind,
        used,
      })),
    },
  };
}

/** A turn-back point at the supply that lies ahead is no choice to make. */
export const isInside = ({ atKm, towards }: TurnBack): boolean => atKm < towards.atKm;

/** A plan that was found keeps the reserve: it is never eaten into, and nothing runs dry. */
const legAsGap = (leg: PlanLeg): StripGap => ({
  ...leg,
  lengthKm: leg.to.atKm - leg.from.atKm,
  reserveFromKm: null,
  runsDryKm: null,
  levels: [],
});

/** What is aboard by the plan at a place, after what is done there; null without levels. */
export function aboardAt(levels: readonly PlanLevel[], atKm: number): PlanLevel | null {
  const next = levels.findIndex((level) => level.atKm > atKm);
  const from = levels[next < 0 ? levels.length - 1 : Math.max(0, next - 1)];
  const to = levels[next];
  if (from === undefined || to === undefined || next === 0) return from ?? null;
  const share = (atKm - from.atKm) / (to.atKm - from.atKm);
  const between = (a: number, b: number): number => a + share * (b - a);
  return {
    atKm,
    tankL: between(from.tankL, to.tankL),
    cansL: from.cansL.map((litres, i) => between(litres, to.cansL[i] ?? 0)),
    totalL: between(from.totalL, to.totalL),
    ...(from.drinkableL !== undefined &&
      to.drinkableL !== undefined && { drinkableL: between(from.drinkableL, to.drinkableL) }),
    ...(from.washingL !== undefined &&
      to.washingL !== undefined && { washingL: between(from.washingL, to.washingL) }),
  };
}

/** Cans with something in them: a can is whole until it is poured. */
export const cansFull = ({ cansL }: PlanLevel): number => cansL.filter((litres) => litres > 1e-6).length;
