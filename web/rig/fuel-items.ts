import type { FuelKind } from '../../server/contract/rig.ts';
import { choice, type FormItem, fold, optional, quantity, says, when } from '../form/items.ts';
import { t } from '../language/t.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';
import { FUEL_WORDS } from '../words/words.ts';
import { cans, tanks } from './container-items.tsx';
import { ratesOfUse, reserve, shareOfNeed } from './use-items.ts';

const FUELS = Object.entries(FUEL_WORDS).map(([value, words]) => ({ value, words }));
const TYPICAL_UREA = { litresPer1000Km: 1.5, tankLitres: 15 };

const OBSERVED = fold(t('Where and how loaded that use was observed'), [
  says(t('Surfaces and load count from here, so that a rate learned in sand is not raised for sand again.')),
  choice(t('Observed on'), '/fuel/observed/surface', [
    { value: '', words: t('not told') },
    ...SURFACE_CHOICES,
  ]),
  optional(
    t('with a whole mass of'),
    '/fuel/observed/massKg',
    'mass',
    t('vehicle, people and load; climb needs it'),
  ),
  optional(
    t('Rises with load by'),
    '/fuel/loadPercentPer100Kg',
    'percentPer100Kg',
    t("empty: by the vehicle's mass"),
  ),
]);

const BY_SURFACE = fold(t('Use by surface'), [
  says(t('As a multiple of the use on sealed road. Empty: ours, as listed under Range.')),
  ...SURFACE_CHOICES.map(({ value, words }) => optional(words, `/fuel/surfaceFactors/${value}`, 'factor')),
]);

const BY_THE_HOUR = fold(t('Use by the hour: standing, crawling, heating'), [
  says(t('On slow stretches the larger of distance and hours counts.')),
  optional(t('Engine idling'), '/fuel/perHour/idling', 'hourUse', t('empty: published rate of the fuel')),
  optional(t('Idling for'), '/fuel/hours/idlingPerDay', 'hours', t('in a day of driving')),
  optional(t('Crawling along'), '/fuel/perHour/crawling', 'hourUse'),
  optional(t('Standing with air conditioning'), '/fuel/perHour/airConditioning', 'hourUse'),
  optional(t('Air conditioning for'), '/fuel/hours/airConditioningPerDay', 'hours', t('in any day')),
  optional(t('Heater or generator'), '/fuel/perHour/heater', 'hourUse'),
  optional(t('Heater or generator for'), '/fuel/hours/heaterPerNight', 'hours', t('in a night')),
]);

const CLIMB = fold(t('Climb and the estimate from physics'), [
  says(t("Climb is reckoned from the route's heights once the mass is told; ours where left empty.")),
  optional(t("Of the fuel's energy lifts"), '/fuel/climb/efficiency', 'share'),
  optional(t('Given back downhill'), '/fuel/climb/giveBack', 'share'),
  optional(t('Rises up to this are noise'), '/fuel/climb/thresholdM', 'length'),
  optional(t('Drag area'), '/fuel/physics/dragAreaM2', 'area', t('drag coefficient × frontal area')),
  optional(t('Tyre pressure on sealed road'), '/fuel/physics/tyreBar', 'tyrePressure'),
]);

const runsOn = (kinds: readonly FuelKind[], items: readonly FormItem[]): FormItem =>
  when(({ said }) => kinds.includes(said.rig.fuel.kind), items);

const ENGINE = fold(t('What the engine takes'), [
  says(t('Points that sell only what it cannot burn do not count.')),
  runsOn(
    ['petrol', 'e85'],
    [
      optional(t('Lowest octane (RON)'), '/fuel/engine/octane', 'count', t('from the handbook')),
      optional(t('Ethanol at most'), '/fuel/engine/ethanolPercent', 'percent'),
    ],
  ),
  runsOn(
    ['diesel'],
    [
      optional(t('Biodiesel at most'), '/fuel/engine/biodieselPercent', 'percent', t('from the handbook')),
      {
        item: 'part',
        what: t('a urea tank'),
        at: '/fuel/urea',
        without: t('No urea solution is reckoned with.'),
        start: { ...TYPICAL_UREA },
        items: [
          quantity(t('Urea solution used'), '/litresPer1000Km', 'litresPer1000Km', {
            typical: TYPICAL_UREA.litresPer1000Km,
          }),
          quantity(t('Its tank holds'), '/tankLitres', 'volume', { typical: TYPICAL_UREA.tankLitres }),
        ],
      },
    ],
  ),
  runsOn(
    ['lpg', 'cng', 'lng', 'kerosene'],
    [{ item: 'note', words: t('Nothing further to tell for this fuel.'), tone: 'soft' }],
  ),
]);

/** What it runs on, uses, holds and must keep. */
export const FUEL_ITEMS: readonly FormItem[] = [
  choice(t('Runs on'), '/fuel/kind', FUELS),
  ...ratesOfUse(t('Uses'), '/fuel/litresPer100Km', 'fuelUse'),
  tanks('fuel'),
  cans('fuel'),
  reserve('fuel', { key: 'km', words: t('a distance'), kind: 'distance', start: 100 }),
  shareOfNeed('fuel'),
  OBSERVED,
  BY_SURFACE,
  BY_THE_HOUR,
  CLIMB,
  ENGINE,
];
