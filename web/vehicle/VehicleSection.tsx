import type { RigFile } from '../../server/contract/rig.ts';
import { AddPart } from '../form/AddPart.tsx';
import { ChoiceField, QuantityField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { useRefocus } from '../kit/use-refocus.ts';
import { KerbIncludesField } from './KerbIncludesField.tsx';
import { TYPICAL_VEHICLE, withVehicle } from './vehicle-start.ts';

const EMPTYING = [
  { value: '', words: 'not told: the worse is taken' },
  { value: 'in-order', words: 'in the order listed' },
  { value: 'together', words: 'all alike' },
];
const LIFTED = [
  { value: 'front', words: 'front axle lifted' },
  { value: 'rear', words: 'rear axle lifted' },
];

/** The vehicle as it stands: what it weighs, how it is measured, what it may weigh. */
export function VehicleSection() {
  const { said, onEdit } = useForm();
  const { place, soon } = useRefocus<HTMLDivElement>('input, button');
  const { vehicle, ...withoutVehicle } = said.rig;
  const set = (rig: RigFile) => {
    soon();
    onEdit({ ...said, rig });
  };
  return (
    <div ref={place}>
      {vehicle === undefined ? (
        <p className="add-part">
          <span className="soft">Without it nothing is said of masses and axle loads.</span>{' '}
          <button type="button" onClick={() => set(withVehicle(said.rig))}>
            Add the vehicle
          </button>
        </p>
      ) : (
        <>
          <VehicleFields />
          <button type="button" className="quiet" onClick={() => set(withoutVehicle)}>
            Leave out the vehicle
          </button>
        </>
      )}
    </div>
  );
}

function VehicleFields() {
  return (
    <>
      <QuantityField
        label="Kerb mass"
        at="/vehicle/kerbKg"
        kind="mass"
        typical={TYPICAL_VEHICLE.kerbKg}
        hint="papers or weighbridge"
      />
      <KerbIncludesField />
      <AddPart
        at="/vehicle/axleKg"
        what="the axle loads"
        without="Axle loads at kerb mass not told: none can be reckoned."
        start={{ ...TYPICAL_VEHICLE.axleKg }}
      >
        <QuantityField
          label="of it on the front axle"
          at="/vehicle/axleKg/front"
          kind="mass"
          typical={TYPICAL_VEHICLE.axleKg.front}
        />
        <QuantityField
          label="on the rear axle"
          at="/vehicle/axleKg/rear"
          kind="mass"
          typical={TYPICAL_VEHICLE.axleKg.rear}
        />
      </AddPart>
      <fieldset>
        <legend>Measures</legend>
        <QuantityField
          label="Wheelbase"
          at="/vehicle/wheelbaseM"
          kind="length"
          optional
          typical={TYPICAL_VEHICLE.wheelbaseM}
          hint="from axle to axle"
        />
        <QuantityField
          label="Track"
          at="/vehicle/trackM"
          kind="length"
          optional
          typical={TYPICAL_VEHICLE.trackM}
          hint="from tyre middle to tyre middle"
        />
        <QuantityField
          label="Body behind the rear axle"
          at="/vehicle/bodyRearOverhangM"
          kind="length"
          optional
          typical={TYPICAL_VEHICLE.bodyRearOverhangM}
        />
        <AddPart
          at="/vehicle/cabin"
          what="the cabin"
          without="Cabin not told: no caution on roof loads or fuel inside."
          start={{ ...TYPICAL_VEHICLE.cabin }}
        >
          <QuantityField
            label="Cabin from"
            at="/vehicle/cabin/fromM"
            kind="length"
            typical={TYPICAL_VEHICLE.cabin.fromM}
            hint="behind the front axle"
          />
          <QuantityField
            label="Cabin to"
            at="/vehicle/cabin/toM"
            kind="length"
            typical={TYPICAL_VEHICLE.cabin.toM}
            hint="behind the front axle"
          />
          <QuantityField
            label="Its floor above the ground"
            at="/vehicle/cabin/floorHeightM"
            kind="length"
            typical={TYPICAL_VEHICLE.cabin.floorHeightM}
          />
          <QuantityField
            label="Its roof above the ground"
            at="/vehicle/cabin/roofHeightM"
            kind="length"
            typical={TYPICAL_VEHICLE.cabin.roofHeightM}
          />
        </AddPart>
      </fieldset>
      <fieldset>
        <legend>What it may weigh</legend>
        <p className="says">From the plate or the papers. Left empty, nothing is held against a limit.</p>
        <QuantityField label="In all" at="/vehicle/permitted/totalKg" kind="mass" optional />
        <QuantityField label="on the front axle" at="/vehicle/permitted/frontKg" kind="mass" optional />
        <QuantityField label="on the rear axle" at="/vehicle/permitted/rearKg" kind="mass" optional />
        <QuantityField label="on the roof" at="/vehicle/permitted/roofKg" kind="mass" optional />
      </fieldset>
      <CentreOfGravity />
      <ChoiceField label="Several tanks empty" at="/vehicle/tanksEmpty" choices={EMPTYING} />
    </>
  );
}

/** How high the kerb mass sits, told or measured by lifting an axle, and how far from the middle. */
function CentreOfGravity() {
  const { said } = useForm();
  const lifted = said.rig.vehicle?.axleLift !== undefined;
  return (
    <fieldset>
      <legend>Centre of gravity at kerb mass</legend>
      {!lifted && (
        <QuantityField
          label="Above the ground"
          at="/vehicle/cgHeightM"
          kind="length"
          optional
          typical={TYPICAL_VEHICLE.cgHeightM}
          hint="from the maker, or measured by lifting an axle"
        />
      )}
      {(lifted || said.rig.vehicle?.cgHeightM === undefined) && (
        <AddPart
          at="/vehicle/axleLift"
          what="a lifting test"
          without="Height not told: no word on stability."
          start={{ lifted: 'front', wheelRadiusM: 0.38, steps: [{ degrees: 10, groundAxleKg: 1300 }] }}
        >
          <ChoiceField label="Measured with the" at="/vehicle/axleLift/lifted" choices={LIFTED} />
          <QuantityField
            label="Wheel's radius"
            at="/vehicle/axleLift/wheelRadiusM"
            kind="length"
            typical={0.38}
            hint="axle to ground"
          />
          <ListFields
            legend="Steps: springs blocked, wheels free, tank full"
            one="step"
            at={{ in: 'rig', path: '/vehicle/axleLift/steps' }}
            fresh={() => ({ degrees: 15, groundAxleKg: 1300 })}
            least={1}
          >
            {(entry) => (
              <>
                <QuantityField label="Tilted by" at={`${entry}/degrees`} kind="degrees" />
                <QuantityField label="rests on the other axle" at={`${entry}/groundAxleKg`} kind="mass" />
              </>
            )}
          </ListFields>
        </AddPart>
      )}
      <QuantityField
        label="Right of the middle"
        at="/vehicle/cgSideM"
        kind="length"
        optional
        hint="negative on the left"
      />
    </fieldset>
  );
}
