import type { Position } from '../../server/contract/vehicle.ts';
import { AddPart } from '../form/AddPart.tsx';
import { QuantityField } from '../form/fields.tsx';

/** Where something stands; `at` is the path of its position, `start` where it is put at first, `whose`: "the tank's". */
export function PositionFields({ at, start, whose }: { at: string; start: Position; whose: string }) {
  return (
    <AddPart
      at={at}
      what={`${whose} place`}
      without="Place not told: axle loads cannot be reckoned."
      start={{ ...start }}
    >
      <QuantityField
        label="Behind the front axle"
        at={`${at}/behindFrontAxleM`}
        kind="length"
        typical={start.behindFrontAxleM}
        hint="to its middle; negative ahead"
      />
      <QuantityField
        label="Above the ground"
        at={`${at}/heightM`}
        kind="length"
        typical={start.heightM}
        hint="to its middle"
      />
      <QuantityField
        label="Right of the middle"
        at={`${at}/sideM`}
        kind="length"
        optional
        hint="negative on the left"
      />
    </AddPart>
  );
}
