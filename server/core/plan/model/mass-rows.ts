import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type Leg, mostCansAt } from '../question/leg.ts';
import type { MassRoom } from '../question/mass-room.ts';
import type { CarryProblem } from '../question/problem.ts';
import { type Mip, MipBuilder } from './mip.ts';
import { mostShortL } from './short-fill.ts';

type Legs<T> = Record<Commodity, readonly (T & { leg: Leg })[]>;

/** Adds a row for each stretch between two places and each permitted mass. */
export function addMassRows(
  builder: MipBuilder,
  problem: CarryProblem,
  room: MassRoom,
  legs: Legs<{ column: number }>,
  owned: Record<Commodity, number>,
): void {
  const shortL = new Map<Leg, number>();
  for (const commodity of COMMODITIES)
    for (const { leg } of legs[commodity]) shortL.set(leg, mostShortL(problem, commodity, leg));
  for (const stretchM of stretchesOf(problem)) {
    for (const { leftKg, canKg, perLitreKg } of room.limits) {
      const entries: [number, number][] = [];
      for (const commodity of COMMODITIES) {
        const perLitre = Math.max(0, perLitreKg[commodity]);
        entries.push([owned[commodity], canKg[commodity].empty]);
        for (const { leg, column } of covering(problem, commodity, legs[commodity], stretchM)) {
          const lessL = lessAtStartL(problem, commodity, leg, stretchM) + shortL.get(leg)!;
          const cans = mostCansAt(problem.sides[commodity].edges, leg, stretchM);
          entries.push([column, cans * canKg[commodity].filling - lessL * perLitre]);
        }
      }
      builder.row(
        Number.NEGATIVE_INFINITY,
        leftKg,
        entries.filter(([, kg]) => kg !== 0),
      );
    }
  }
}

/** The middles of the stretches between any two places where a leg may begin or end, metres along. */
function stretchesOf({ sides }: CarryProblem): number[] {
  const places = COMMODITIES.flatMap((commodity) => sides[commodity].edges.map((edge) => edge.atM));
  const cuts = [...new Set(places)].sort((a, b) => a - b);
  return cuts.slice(1).map((cut, index) => (cuts[index]! + cut) / 2);
}

function covering<T>(
  { sides }: CarryProblem,
  commodity: Commodity,
  legs: readonly (T & { leg: Leg })[],
  atM: number,
): (T & { leg: Leg })[] {
  const { edges } = sides[commodity];
  return legs.filter(({ leg }) => edges[leg.from]!.atM < atM && edges[leg.to]!.atM > atM);
}

/** Litres by which the tanks are not full at a place because they were not at the start: till something is filled in. */
function lessAtStartL({ sides }: CarryProblem, commodity: Commodity, leg: Leg, atM: number): number {
  const { course, edges, startL } = sides[commodity];
  const untilM = edges[leg.hops[0].to]!.atM;
  return leg.from === 0 && atM < untilM ? Math.max(0, course.rig[commodity].drawableL - startL) : 0;
}

/**
 * What the chosen legs leave out of the tanks, as a model: one column for each leg, minimised together. Null where the
 * permitted masses hold with full tanks.
 */
export function shortFillModel(
  problem: CarryProblem,
  room: MassRoom,
  legs: Record<Commodity, readonly Leg[]>,
  cans: Record<Commodity, number>,
): { mip: Mip; columns: Map<Leg, number> } | null {
  const builder = new MipBuilder();
  const columns = new Map<Leg, number>();
  const wrapped: Record<Commodity, { leg: Leg }[]> = { fuel: [], water: [] };
  for (const commodity of COMMODITIES) {
    for (const leg of legs[commodity]) {
      columns.set(leg, builder.column(0, mostShortL(problem, commodity, leg), false));
      wrapped[commodity].push({ leg });
    }
  }
  let tight = false;
  for (const stretchM of stretchesOf(problem)) {
    for (const { leftKg, canKg, perLitreKg } of room.limits) {
      const entries: [number, number][] = [];
      let kg = 0;
      for (const commodity of COMMODITIES) {
        const perLitre = Math.max(0, perLitreKg[commodity]);
        kg += cans[commodity] * canKg[commodity].empty;
        for (const { leg } of covering(problem, commodity, wrapped[commodity], stretchM)) {
          const full = mostCansAt(problem.sides[commodity].edges, leg, stretchM);
          kg += full * canKg[commodity].filling - lessAtStartL(problem, commodity, leg, stretchM) * perLitre;
          if (perLitre > 0) entries.push([columns.get(leg)!, -perLitre]);
        }
      }
      if (kg <= leftKg) continue;
      tight = true;
      builder.row(Number.NEGATIVE_INFINITY, leftKg - kg, entries);
    }
  }
  return tight ? { mip: builder, columns } : null;
}
