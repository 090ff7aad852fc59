import { named } from '../form/either.ts';
import type { FormState } from '../form/form-context.ts';
import { choice, type FormItem, group, optional, quantity, says, when } from '../form/items.ts';
import { TYPICAL_VEHICLE } from './vehicle-start.ts';

const { axleKg, cabin } = TYPICAL_VEHICLE;

/** What the kerb mass has in it already, so that nothing is weighed twice. */
const KERB_INCLUDES = named(
  'It includes',
  '/includes',
  [
    { value: 'running-order', words: 'tanks at 90 % and a driver of 75 kg (EU papers)' },
    { value: 'full-fuel-no-driver', words: 'full fuel, nobody (US papers)' },
  ],
  {
    words: 'something else',
    // As weighed: full tank, nobody in it.
    becomes: () => ({ fuelPercent: 100, driverKg: 0 }),
    items: [
      quantity('Fuel tanks full to', '/fuelPercent', 'percent'),
      quantity('Driver', '/driverKg', 'mass', { hint: '0: nobody in it' }),
      optional('Water tanks full to', '/waterPercent', 'percent', 'empty: without water'),
    ],
  },
);

const MEASURES = group('Measures', [
  quantity('Wheelbase', '/wheelbaseM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.wheelbaseM,
    hint: 'from axle to axle',
  }),
  quantity('Track', '/trackM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.trackM,
    hint: 'from tyre middle to tyre middle',
  }),
  quantity('Body behind the rear axle', '/bodyRearOverhangM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.bodyRearOverhangM,
  }),
  {
    item: 'part',
    what: 'the cabin',
    at: '/cabin',
    without: 'Cabin not told: no caution on roof loads or fuel inside.',
    start: { ...cabin },
    items: [
      quantity('Cabin from', '/fromM', 'length', { typical: cabin.fromM, hint: 'behind the front axle' }),
      quantity('Cabin to', '/toM', 'length', { typical: cabin.toM, hint: 'behind the front axle' }),
      quantity('Its floor above the ground', '/floorHeightM', 'length', { typical: cabin.floorHeightM }),
      quantity('Its roof above the ground', '/roofHeightM', 'length', { typical: cabin.roofHeightM }),
    ],
  },
]);

const PERMITTED = group(
  'What it may weigh',
  [
    says('From the plate or the papers. Left empty, nothing is held against a limit.'),
    optional('In all', '/totalKg', 'mass'),
    optional('on the front axle', '/frontKg', 'mass'),
    optional('on the rear axle', '/rearKg', 'mass'),
    optional('on the roof', '/roofKg', 'mass'),
  ],
  '/permitted',
);

const isLifted = ({ said }: FormState): boolean => said.rig.vehicle?.axleLift !== undefined;

/** How high the kerb mass sits, told or measured by lifting an axle, and how far from the middle. */
const CENTRE_OF_GRAVITY = group('Centre of gravity at kerb mass', [
  when(
    (form) => !isLifted(form),
    [
      quantity('Above the ground', '/cgHeightM', 'length', {
        optional: true,
        typical: TYPICAL_VEHICLE.cgHeightM,
        hint: 'from the maker, or measured by lifting an axle',
      }),
    ],
  ),
  when(
    (form) => isLifted(form) || form.said.rig.vehicle?.cgHeightM === undefined,
    [
      {
        item: 'part',
        what: 'a lifting test',
        at: '/axleLift',
        without: 'Height not told: no word on stability.',
        start: { lifted: 'front', wheelRadiusM: 0.38, steps: [{ degrees: 10, groundAxleKg: 1300 }] },
        items: [
          choice('Measured with the', '/lifted', [
            { value: 'front', words: 'front axle lifted' },
            { value: 'rear', words: 'rear axle lifted' },
          ]),
          quantity("Wheel's radius", '/wheelRadiusM', 'length', { typical: 0.38, hint: 'axle to ground' }),
          {
            item: 'list',
            legend: 'Steps: springs blocked, wheels free, tank full',
            one: 'step',
            at: '/steps',
            fresh: () => ({ degrees: 15, groundAxleKg: 1300 }),
            least: 1,
            items: [
              quantity('Tilted by', '/degrees', 'degrees'),
              quantity('rests on the other axle', '/groundAxleKg', 'mass'),
            ],
          },
        ],
      },
    ],
  ),
  optional('Right of the middle', '/cgSideM', 'length', 'negative on the left'),
]);

/** The vehicle as it stands: what it weighs, how it is measured, what it may weigh. */
export const VEHICLE_ITEMS: readonly FormItem[] = [
  quantity('Kerb mass', '/kerbKg', 'mass', {
    typical: TYPICAL_VEHICLE.kerbKg,
    hint: 'papers or weighbridge',
  }),
  KERB_INCLUDES,
  {
    item: 'part',
    what: 'the axle loads',
    at: '/axleKg',
    without: 'Axle loads at kerb mass not told: none can be reckoned.',
    start: { ...axleKg },
    items: [
      quantity('of it on the front axle', '/front', 'mass', { typical: axleKg.front }),
      quantity('on the rear axle', '/rear', 'mass', { typical: axleKg.rear }),
    ],
  },
  MEASURES,
  PERMITTED,
  CENTRE_OF_GRAVITY,
  choice('Several tanks empty', '/tanksEmpty', [
    { value: '', words: 'not told: the worse is taken' },
    { value: 'in-order', words: 'in the order listed' },
    { value: 'together', words: 'all alike' },
  ]),
];
