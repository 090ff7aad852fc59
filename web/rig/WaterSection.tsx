import { EitherField, QuantityField, TickField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { Cans, Tanks } from './ContainerFields.tsx';
import { WATER_WAYS } from './reserve-ways.ts';
import { UseFields } from './UseFields.tsx';

/** What is used in a day, held and kept. */
export function WaterSection() {
  const { said } = useForm();
  return (
    <>
      {said.rig.crew === undefined ? (
        <UseFields of="All aboard use" base="/water/litresPerDay" kind="waterUse" />
      ) : (
        <p className="says">What all aboard use stands under “Crew and heat”, below.</p>
      )}
      <Tanks commodity="water" />
      <Cans commodity="water" />
      <EitherField label="Reserve" at={{ in: 'rig', path: '/water/reserve' }} ways={WATER_WAYS} none="none" />
      <QuantityField
        label="and of each stretch's need"
        at="/water/reserve/shareOfNeed"
        kind="share"
        optional
      />
      <TickField label="Rope and bucket aboard, for wells without a pump" at="/equipment/ropeAndBucket" />
    </>
  );
}
