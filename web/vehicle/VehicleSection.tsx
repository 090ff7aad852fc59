import { Fields } from '../form/Fields.tsx';
import { below, RIG, useForm } from '../form/form-context.ts';
import { Part } from '../form/Part.tsx';
import { t } from '../language/t.ts';
import { VEHICLE_ITEMS } from './vehicle-items.ts';
import { withVehicle } from './vehicle-start.ts';

const VEHICLE = below(RIG, '/vehicle');

/** The vehicle: adding it gives tanks and cans their places as well. */
export function VehicleSection() {
  const { said, onEdit } = useForm();
  const { vehicle, ...withoutVehicle } = said.rig;
  return (
    <Part
      told={vehicle !== undefined}
      without={t('Without it nothing is said of masses and axle loads.')}
      add={{ words: t('Add the vehicle'), onClick: () => onEdit({ ...said, rig: withVehicle(said.rig) }) }}
      leaveOut={{
        words: t('Leave out the vehicle'),
        onClick: () => onEdit({ ...said, rig: withoutVehicle }),
      }}
    >
      <Fields items={VEHICLE_ITEMS} at={VEHICLE} />
    </Part>
  );
}
