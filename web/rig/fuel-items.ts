import type { FuelKind } from '../../server/contract/rig.ts';
import { choice, type FormItem, fold, optional, quantity, says, when } from '../form/items.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';
import { FUEL_WORDS } from '../words/words.ts';
import { cans, tanks } from './container-items.tsx';
import { ratesOfUse, reserve, shareOfNeed } from './use-items.ts';

const FUELS = Object.entries(FUEL_WORDS).map(([value, words]) => ({ value, words }));
const TYPICAL_UREA = { litresPer1000Km: 1.5, tankLitres: 15 };

const OBSERVED = fold('Where and how loaded that use was observed', [
  says('Surfaces and load count from here, so that a rate learned in sand is not raised for sand again.'),
  choice('Observed on', '/fuel/observed/surface', [{ value: '', words: 'not told' }, ...SURFACE_CHOICES]),
  optional(
    'with a whole mass of',
    '/fuel/observed/massKg',
    'mass',
    'vehicle, people and load; climb needs it',
  ),
  optional(
    'Rises with load by',
    '/fuel/loadPercentPer100Kg',
    'percentPer100Kg',
    "empty: by the vehicle's mass",
  ),
]);

const BY_SURFACE = fold('Use by surface', [
  says('As a multiple of the use on sealed road. Empty: ours, as listed under Range.'),
  ...SURFACE_CHOICES.map(({ value, words }) => optional(words, `/fuel/surfaceFactors/${value}`, 'factor')),
]);

const BY_THE_HOUR = fold('Use by the hour: standing, crawling, heating', [
  says('On slow stretches the larger of distance and hours counts.'),
  optional('Engine idling', '/fuel/perHour/idling', 'hourUse', 'empty: published rate of the fuel'),
  optional('Idling for', '/fuel/hours/idlingPerDay', 'hours', 'in a day of driving'),
  optional('Crawling along', '/fuel/perHour/crawling', 'hourUse'),
  optional('Standing with air conditioning', '/fuel/perHour/airConditioning', 'hourUse'),
  optional('Air conditioning for', '/fuel/hours/airConditioningPerDay', 'hours', 'in any day'),
  optional('Heater or generator', '/fuel/perHour/heater', 'hourUse'),
  optional('Heater or generator for', '/fuel/hours/heaterPerNight', 'hours', 'in a night'),
]);

const CLIMB = fold('Climb and the estimate from physics', [
  says("Climb is reckoned from the route's heights once the mass is told; ours where left empty."),
  optional("Of the fuel's energy lifts", '/fuel/climb/efficiency', 'share'),
  optional('Given back downhill', '/fuel/climb/giveBack', 'share'),
  optional('Rises up to this are noise', '/fuel/climb/thresholdM', 'length'),
  optional('Drag area', '/fuel/physics/dragAreaM2', 'area', 'drag coefficient × frontal area'),
  optional('Tyre pressure on sealed road', '/fuel/physics/tyreBar', 'tyrePressure'),
]);

const runsOn = (kinds: readonly FuelKind[], items: readonly FormItem[]): FormItem =>
  when(({ said }) => kinds.includes(said.rig.fuel.kind), items);

const ENGINE = fold('What the engine takes', [
  says('Points that sell only what it cannot burn do not count.'),
  runsOn(
    ['petrol', 'e85'],
    [
      optional('Lowest octane (RON)', '/fuel/engine/octane', 'count', 'from the handbook'),
      optional('Ethanol at most', '/fuel/engine/ethanolPercent', 'percent'),
    ],
  ),
  runsOn(
    ['diesel'],
    [
      optional('Biodiesel at most', '/fuel/engine/biodieselPercent', 'percent', 'from the handbook'),
      {
        item: 'part',
        what: 'a urea tank',
        at: '/fuel/urea',
        without: 'No urea solution is reckoned with.',
        start: { ...TYPICAL_UREA },
        items: [
          quantity('Urea solution used', '/litresPer1000Km', 'litresPer1000Km', {
            typical: TYPICAL_UREA.litresPer1000Km,
          }),
          quantity('Its tank holds', '/tankLitres', 'volume', { typical: TYPICAL_UREA.tankLitres }),
        ],
      },
    ],
  ),
  runsOn(
    ['lpg', 'cng', 'lng', 'kerosene'],
    [{ item: 'note', words: 'Nothing further to tell for this fuel.', tone: 'soft' }],
  ),
]);

/** What it runs on, uses, holds and must keep. */
export const FUEL_ITEMS: readonly FormItem[] = [
  choice('Runs on', '/fuel/kind', FUELS),
  ...ratesOfUse('Uses', '/fuel/litresPer100Km', 'fuelUse'),
  tanks('fuel'),
  cans('fuel'),
  reserve('fuel', { key: 'km', words: 'a distance', kind: 'distance', start: 100 }),
  shareOfNeed('fuel'),
  OBSERVED,
  BY_SURFACE,
  BY_THE_HOUR,
  CLIMB,
  ENGINE,
];
