import type { Commodity } from '../../../contract/common.ts';
import { pairsOf } from '../../lists/pairs.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type Leg, mostCansAt } from '../legs/leg.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { MassLimit, MassRoom } from '../question/mass-room.ts';
import { type CarrySide, drawableOf, edgeAt, endsOf } from '../side/carry-side.ts';
import type { LegColumns } from './columns.ts';
import type { MipBuilder, MipEntry } from './mip.ts';
import { mostShortL } from './most-short.ts';

interface MassFacts {
  readonly question: CarryQuestion;
  readonly room: MassRoom;
  readonly legs: LegColumns;
  /** Columns of the cans that are aboard. */
  readonly aboard: Readonly<Record<Commodity, number>>;
}

/** Adds a row for each stretch between two places and each permitted mass. */
export function addMassRows(builder: MipBuilder, { question, room, legs, aboard }: MassFacts): void {
  const shortL = new Map<Leg, number>();
  for (const commodity of COMMODITIES)
    for (const { leg } of legs[commodity]) shortL.set(leg, mostShortL(question, commodity, leg));
  for (const stretchM of stretchesOf(question)) {
    for (const limit of room.limits) {
      const entries = COMMODITIES.flatMap((commodity): MipEntry[] => {
        const side = question.sides[commodity];
        const covering = legs[commodity].filter(({ leg }) => covers(side, leg, stretchM));
        return [
          [aboard[commodity], limit.canKg[commodity].empty],
          ...covering.map(({ leg, column }): MipEntry => {
            const lessL = lessAtStartL(side, leg, stretchM) + (shortL.get(leg) ?? 0);
            const cans = mostCansAt(side, leg, stretchM);
            return [column, cans * limit.canKg[commodity].filling - lessL * kgPerLitre(limit, side, leg)];
          }),
        ];
      });
      builder.atMost(
        limit.leftKg,
        entries.filter(([, kg]) => kg !== 0),
      );
    }
  }
}

/**
 * What a litre less in the tanks takes off a limit all along a leg; a limit that it would add to is not reckoned with. Where
 * cans are poured the tanks fill up again, and it is the cans that hold a litre less: cans behind the rear axle may be
 * lighter for the front one than what is in the tanks.
 */
export function kgPerLitre(
  { perLitreKg, canKg }: MassLimit,
  { commodity, canL }: Pick<CarrySide, 'commodity' | 'canL'>,
  { hops }: Pick<Leg, 'hops'>,
): number {
  const inTanks = Math.max(0, perLitreKg[commodity]);
  const isPoured = hops.some(({ cans }) => cans > 0);
  return isPoured ? Math.min(inTanks, canKg[commodity].filling / canL) : inTanks;
}

/** The middles of the stretches between any two places where a leg may begin or end, metres along. */
export function stretchesOf({ sides }: CarryQuestion): number[] {
  const places = COMMODITIES.flatMap((commodity) => sides[commodity].edges.map(({ atM }) => atM));
  const cuts = [...new Set(places)].sort((a, b) => a - b);
  return pairsOf(cuts).map(([fromM, toM]) => (fromM + toM) / 2);
}

/** Whether a place lies strictly inside a leg. */
export function covers(side: CarrySide, leg: Leg, atM: number): boolean {
  const [from, to] = endsOf(side, leg);
  return from.atM < atM && to.atM > atM;
}

/** Litres by which the tanks are not full at a place because they were not at the start: till something is filled in. */
export function lessAtStartL(side: CarrySide, { from, hops }: Leg, atM: number): number {
  const untilM = edgeAt(side, hops[0].to).atM;
  return from === 0 && atM < untilM ? Math.max(0, drawableOf(side) - side.startL) : 0;
}
