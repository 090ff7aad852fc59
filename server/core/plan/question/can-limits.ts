import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { TripFile } from '../../../contract/trip.ts';
import { isGas } from '../../fuel/engine/gas.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarrySides } from '../side/carry-side.ts';
import { byCommodity } from '../side/other-of.ts';
import { ownedCans } from './can-kg.ts';

/** Numbers of cans. */
export type Cans = Readonly<Record<Commodity, number>>;

/** How many cans there may be of each commodity: as the trip asks, else as many as are owned; none in the cabin if so asked. */
export function canLimits(rig: RigFile, trip: TripFile): { cans: Cans; cautions: Caution[] } {
  const { mostCans, noneInside = false } = trip.plan ?? {};
  const most = takenCans(
    rig,
    byCommodity((commodity) => mostCans?.[commodity] ?? ownedCans(rig, commodity)),
  );
  if (!noneInside) return { cans: most, cautions: [] };
  const inside = byCommodity((commodity) => areInside(rig, commodity));
  return {
    cans: byCommodity((commodity) => (inside[commodity] === true ? 0 : most[commodity])),
    cautions: COMMODITIES.filter((commodity) => most[commodity] > 0 && inside[commodity] === null).map(
      (commodity) => ({ code: 'can-place-unknown', facts: { commodity } }),
    ),
  };
}

/** Cans as asked for, but for a gas, which goes in none. */
export const takenCans = ({ fuel }: RigFile, { water, ...cans }: Cans): Cans => ({
  fuel: isGas(fuel.kind) ? 0 : cans.fuel,
  water,
});

/** Whether cans of a commodity stand in the room that people sit or sleep in; null where that is not told. */
function areInside(rig: RigFile, commodity: Commodity): boolean | null {
  const position = rig[commodity].cans?.position;
  const cabin = rig.vehicle?.cabin;
  if (position === undefined || cabin === undefined) return null;
  return (
    position.behindFrontAxleM >= cabin.fromM &&
    position.behindFrontAxleM <= cabin.toM &&
    position.heightM >= cabin.floorHeightM &&
    position.heightM <= cabin.roofHeightM
  );
}

/** Of so many cans those that are still to be got. */
export const cansBeyond = (cans: Cans, owned: Cans): Cans =>
  byCommodity((commodity) => Math.max(0, cans[commodity] - owned[commodity]));

/** How many cans there may be of each commodity in a question. */
export const mostCansOf = ({ sides }: { sides: CarrySides }): Cans =>
  byCommodity((commodity) => sides[commodity].mostCans);
