import type { Position } from '../../server/contract/vehicle.ts';
import type { FormState } from '../form/form-context.ts';
import { type FormItem, quantity, text, when } from '../form/items.ts';
import { t } from '../language/t.ts';
import { positionItem } from './position-items.ts';
import { PERSON_KG, PLACES } from './vehicle-start.ts';

const rider = (kg: number, place: Position): FormItem[] => [
  text(t('Name'), '/name'),
  quantity('weighs', '/kg', 'mass', { typical: kg }),
  positionItem(place, 'its'),
];

const hasVehicle = ({ said }: FormState): boolean => said.rig.vehicle !== undefined;

/** Who and what rides in it, with what it weighs and where it is. */
export const GEAR_ITEMS: readonly FormItem[] = [
  when(
    (form) => !hasVehicle(form),
    [
      {
        item: 'note',
        words: t('Add the vehicle first: people and gear weigh on its axles.'),
        tone: 'soft',
      },
    ],
  ),
  when(hasVehicle, [
    {
      item: 'list',
      legend: t('People, the driver first'),
      one: t('person'),
      at: '/vehicle/people',
      fresh: (count) => ({
        name: count === 0 ? 'driver' : t`person ${count + 1}`,
        kg: PERSON_KG,
        position: { ...PLACES.driver },
      }),
      items: rider(PERSON_KG, PLACES.driver),
    },
    {
      item: 'list',
      legend: t('Pets'),
      one: t('pet'),
      at: '/vehicle/pets',
      fresh: () => ({ name: 'dog', kg: 25, position: { ...PLACES.pet } }),
      items: rider(25, PLACES.pet),
    },
    {
      item: 'list',
      legend: t('Gear'),
      one: t('thing'),
      at: '/vehicle/gear',
      fresh: (count) => ({ name: t`thing ${count + 1}`, kg: 20, position: { ...PLACES.gear } }),
      items: rider(20, PLACES.gear),
    },
  ]),
];
