import { QuantityField, TextField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { PositionFields } from './PositionFields.tsx';
import { PERSON_KG, PLACES } from './vehicle-start.ts';

/** Who and what rides in it, with what it weighs and where it is. */
export function GearSection() {
  const { said } = useForm();
  if (said.rig.vehicle === undefined) {
    return <p className="soft">Add the vehicle first: people and gear weigh on its axles.</p>;
  }
  return (
    <>
      <ListFields
        legend="People, the driver first"
        one="person"
        at={{ in: 'rig', path: '/vehicle/people' }}
        fresh={(count) => ({
          name: count === 0 ? 'driver' : `person ${count + 1}`,
          kg: PERSON_KG,
          position: { ...PLACES.driver },
        })}
      >
        {(entry) => <Rider entry={entry} place={PLACES.driver} kg={PERSON_KG} />}
      </ListFields>
      <ListFields
        legend="Pets"
        one="pet"
        at={{ in: 'rig', path: '/vehicle/pets' }}
        fresh={() => ({ name: 'dog', kg: 25, position: { ...PLACES.pet } })}
      >
        {(entry) => <Rider entry={entry} place={PLACES.pet} kg={25} />}
      </ListFields>
      <ListFields
        legend="Gear"
        one="thing"
        at={{ in: 'rig', path: '/vehicle/gear' }}
        fresh={(count) => ({ name: `thing ${count + 1}`, kg: 20, position: { ...PLACES.gear } })}
      >
        {(entry) => <Rider entry={entry} place={PLACES.gear} kg={20} />}
      </ListFields>
    </>
  );
}

function Rider({
  entry,
  place,
  kg,
}: {
  entry: string;
  place: (typeof PLACES)[keyof typeof PLACES];
  kg: number;
}) {
  return (
    <>
      <TextField label="Name" at={{ in: 'rig', path: `${entry}/name` }} />
      <QuantityField label="weighs" at={`${entry}/kg`} kind="mass" typical={kg} />
      <PositionFields at={`${entry}/position`} start={place} whose="its" />
    </>
  );
}
