import { named } from '../form/either.ts';
import type { FormState } from '../form/form-context.ts';
import { choice, type FormItem, group, optional, quantity, says, when } from '../form/items.ts';
import { t } from '../language/t.ts';
import { TYPICAL_VEHICLE } from './vehicle-start.ts';

const { axleKg, cabin } = TYPICAL_VEHICLE;

/** What the kerb mass has in it already, so that nothing is weighed twice. */
const KERB_INCLUDES = named(
  t('It includes'),
  '/includes',
  [
    { value: 'running-order', words: t('tanks at 90 % and a driver of 75 kg (EU papers)') },
    { value: 'full-fuel-no-driver', words: t('full fuel, nobody (US papers)') },
  ],
  {
    words: t('something else'),
    // As weighed: full tank, nobody in it.
    becomes: () => ({ fuelPercent: 100, driverKg: 0 }),
    items: [
      quantity(t('Fuel tanks full to'), '/fuelPercent', 'percent'),
      quantity(t('Driver'), '/driverKg', 'mass', { hint: t('0: nobody in it') }),
      optional(t('Water tanks full to'), '/waterPercent', 'percent', t('empty: without water')),
    ],
  },
);

const MEASURES = group(t('Measures'), [
  quantity(t('Wheelbase'), '/wheelbaseM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.wheelbaseM,
    hint: t('from axle to axle'),
  }),
  quantity(t('Track'), '/trackM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.trackM,
    hint: t('from tyre middle to tyre middle'),
  }),
  quantity(t('Body behind the rear axle'), '/bodyRearOverhangM', 'length', {
    optional: true,
    typical: TYPICAL_VEHICLE.bodyRearOverhangM,
  }),
  {
    item: 'part',
    what: t('the cabin'),
    at: '/cabin',
    without: t('Cabin not told: no caution on roof loads or fuel inside.'),
    start: { ...cabin },
    items: [
      quantity(t('Cabin from'), '/fromM', 'length', {
        typical: cabin.fromM,
        hint: t('behind the front axle'),
      }),
      quantity(t('Cabin to'), '/toM', 'length', { typical: cabin.toM, hint: t('behind the front axle') }),
      quantity(t('Its floor above the ground'), '/floorHeightM', 'length', { typical: cabin.floorHeightM }),
      quantity(t('Its roof above the ground'), '/roofHeightM', 'length', { typical: cabin.roofHeightM }),
    ],
  },
]);

const PERMITTED = group(
  t('What it may weigh'),
  [
    says(t('From the plate or the papers. Left empty, nothing is held against a limit.')),
    optional(t('In all'), '/totalKg', 'mass'),
    optional(t('on the front axle'), '/frontKg', 'mass'),
    optional(t('on the rear axle'), '/rearKg', 'mass'),
    optional(t('on the roof'), '/roofKg', 'mass'),
  ],
  '/permitted',
);

const isLifted = ({ said }: FormState): boolean => said.rig.vehicle?.axleLift !== undefined;

/** How high the kerb mass sits, told or measured by lifting an axle, and how far from the middle. */
const CENTRE_OF_GRAVITY = group(t('Centre of gravity at kerb mass'), [
  when(
    (form) => !isLifted(form),
    [
      quantity(t('Above the ground'), '/cgHeightM', 'length', {
        optional: true,
        typical: TYPICAL_VEHICLE.cgHeightM,
        hint: t('from the maker, or measured by lifting an axle'),
      }),
    ],
  ),
  when(
    (form) => isLifted(form) || form.said.rig.vehicle?.cgHeightM === undefined,
    [
      {
        item: 'part',
        what: t('a lifting test'),
        at: '/axleLift',
        without: t('Height not told: no word on stability.'),
        start: { lifted: t('front'), wheelRadiusM: 0.38, steps: [{ degrees: 10, groundAxleKg: 1300 }] },
        items: [
          choice(t('Measured with the'), '/lifted', [
            { value: 'front', words: t('front axle lifted') },
            { value: 'rear', words: t('rear axle lifted') },
          ]),
          quantity(t("Wheel's radius"), '/wheelRadiusM', 'length', {
            typical: 0.38,
            hint: t('axle to ground'),
          }),
          {
            item: 'list',
            legend: t('Steps: springs blocked, wheels free, tank full'),
            one: t('step'),
            at: '/steps',
            fresh: () => ({ degrees: 15, groundAxleKg: 1300 }),
            least: 1,
            items: [
              quantity(t('Tilted by'), '/degrees', 'degrees'),
              quantity(t('rests on the other axle'), '/groundAxleKg', 'mass'),
            ],
          },
        ],
      },
    ],
  ),
  optional(t('Right of the middle'), '/cgSideM', 'length', t('negative on the left')),
]);

/** The vehicle as it stands: what it weighs, how it is measured, what it may weigh. */
export const VEHICLE_ITEMS: readonly FormItem[] = [
  quantity(t('Kerb mass'), '/kerbKg', 'mass', {
    typical: TYPICAL_VEHICLE.kerbKg,
    hint: t('papers or weighbridge'),
  }),
  KERB_INCLUDES,
  {
    item: 'part',
    what: t('the axle loads'),
    at: '/axleKg',
    without: t('Axle loads at kerb mass not told: none can be reckoned.'),
    start: { ...axleKg },
    items: [
      quantity(t('of it on the front axle'), '/front', 'mass', { typical: axleKg.front }),
      quantity(t('on the rear axle'), '/rear', 'mass', { typical: axleKg.rear }),
    ],
  },
  MEASURES,
  PERMITTED,
  CENTRE_OF_GRAVITY,
  choice(t('Several tanks empty'), '/tanksEmpty', [
    { value: '', words: t('not told: the worse is taken') },
    { value: 'in-order', words: t('in the order listed') },
    { value: 'together', words: t('all alike') },
  ]),
];
