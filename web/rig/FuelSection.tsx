import { Cans, Tanks } from './ContainerFields.tsx';
import { ChoiceField, EitherField, QuantityField } from './fields.tsx';
import { FUEL_WAYS } from './reserve-ways.ts';
import { UseFields } from './UseFields.tsx';

const FUELS = [
  { value: 'diesel', words: 'diesel' },
  { value: 'petrol', words: 'petrol' },
  { value: 'lpg', words: 'LPG' },
  { value: 'cng', words: 'CNG' },
  { value: 'lng', words: 'LNG' },
  { value: 'e85', words: 'E85' },
];

/** What it runs on, uses, holds and must keep. */
export function FuelSection() {
  return (
    <>
      <ChoiceField label="Runs on" at="/fuel/kind" choices={FUELS} />
      <UseFields of="Uses" base="/fuel/litresPer100Km" kind="fuelUse" />
      <Tanks commodity="fuel" />
      <Cans commodity="fuel" />
      <EitherField label="Reserve" at={{ in: 'rig', path: '/fuel/reserve' }} ways={FUEL_WAYS} none="none" />
      <QuantityField
        label="and of each stretch's need"
        at="/fuel/reserve/shareOfNeed"
        kind="share"
        optional
      />
    </>
  );
}
