import { AddPart } from '../form/AddPart.tsx';
import { ChoiceField, EitherField, QuantityField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { Cans, Tanks } from './ContainerFields.tsx';
import { FuelFiner } from './FuelFiner.tsx';
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
const TYPICAL_UREA = { litresPer1000Km: 1.5, tankLitres: 15 };

/** What it runs on, uses, holds and must keep. */
export function FuelSection() {
  const { said } = useForm();
  const { kind } = said.rig.fuel;
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
      <FuelFiner />
      <details>
        <summary>What the engine takes</summary>
        <p className="says">Points that sell only what it cannot burn do not count.</p>
        {(kind === 'petrol' || kind === 'e85') && (
          <>
            <QuantityField
              label="Lowest octane (RON)"
              at="/fuel/engine/octane"
              kind="count"
              optional
              hint="from the handbook"
            />
            <QuantityField label="Ethanol at most" at="/fuel/engine/ethanolPercent" kind="percent" optional />
          </>
        )}
        {kind === 'diesel' && (
          <>
            <QuantityField
              label="Biodiesel at most"
              at="/fuel/engine/biodieselPercent"
              kind="percent"
              optional
              hint="from the handbook"
            />
            <AddPart
              at="/fuel/urea"
              what="a urea tank"
              without="No urea solution is reckoned with."
              start={{ ...TYPICAL_UREA }}
            >
              <QuantityField
                label="Urea solution used"
                at="/fuel/urea/litresPer1000Km"
                kind="litresPer1000Km"
                typical={TYPICAL_UREA.litresPer1000Km}
              />
              <QuantityField
                label="Its tank holds"
                at="/fuel/urea/tankLitres"
                kind="volume"
                typical={TYPICAL_UREA.tankLitres}
              />
            </AddPart>
          </>
        )}
        {kind !== 'petrol' && kind !== 'e85' && kind !== 'diesel' && (
          <p className="soft">Nothing further to tell for this fuel.</p>
        )}
      </details>
    </>
  );
}
