import type { FormState } from '../form/form-context.ts';
import { RIG, useField, useForm } from '../form/form-context.ts';
import {
  choice,
  type FormItem,
  group,
  optional,
  own,
  quantity,
  range,
  says,
  text,
  tick,
  when,
} from '../form/items.ts';
import { RangeField } from '../form/RangeField.tsx';
import { TYPICAL_HEAT, TYPICAL_PERSON, TYPICAL_PET } from './crew-start.ts';
import { HEAT_KNOWN_AS, SUN, WORK } from './heat-items.ts';

const OWN_FIGURES = [
  ['Drinking', '/drinking'],
  ['Cooking', '/cooking'],
  ['Washing up', '/washingUp'],
  ['Washing', '/washing'],
  ['Shower', '/shower'],
] as const;

const PEOPLE: FormItem = {
  item: 'list',
  legend: 'People',
  one: 'person',
  at: '/crew/people',
  fresh: () => ({ ...TYPICAL_PERSON, count: 1 }),
  least: 1,
  items: [
    text('Who', '/name'),
    optional('How many alike', '/count', 'count', 'empty: one'),
    choice('Uses water', '/level', [
      { value: 'emergency', words: 'emergency: drinking only' },
      { value: 'basic', words: 'basic: no shower, few dishes' },
      { value: 'careful', words: 'careful: away from water' },
      { value: 'plenty', words: 'plenty: with a short shower' },
    ]),
    {
      item: 'fold',
      summary: 'Own figures, litres a day of one person',
      items: OWN_FIGURES.map(([words, at]) => range(words, at, 'empty: that of the level')),
    },
  ],
};

const PETS: FormItem = {
  item: 'list',
  legend: 'Pets',
  one: 'pet',
  at: '/crew/pets',
  fresh: () => ({ ...TYPICAL_PET }),
  items: [
    choice('Pet', '/kind', [
      { value: 'dog', words: 'dog' },
      { value: 'cat', words: 'cat' },
      { value: 'other', words: 'other' },
    ]),
    quantity('weighs', '/kg', 'mass'),
    range('Drinks', '/litresPerDay', 'empty: by body mass'),
  ],
};

const isTypicalHeat = ({ said }: FormState): boolean => {
  const heat = said.rig.crew?.heat;
  return Object.entries(TYPICAL_HEAT).every(([key, value]) => heat?.[key as keyof typeof heat] === value);
};

/** The heat expected by day and the work done in it. */
const HEAT: FormItem = {
  item: 'part',
  what: 'the heat expected',
  at: '/crew/heat',
  without: 'Heat is not told: mild weather is reckoned with.',
  start: { ...TYPICAL_HEAT },
  leaveOut: 'Remove the heat',
  items: [
    group('Heat and work', [
      when(isTypicalHeat, [says('Typical values of a hot dry day: change them.')]),
      HEAT_KNOWN_AS,
      choice('Sun', '/sun', SUN),
      choice('Work', '/work', WORK),
      quantity('Hours of it a day', '/workHoursPerDay', 'hours'),
    ]),
  ],
};

/** A figure of all aboard. A file may keep it in either of two places; it means the same. */
function ObservedField() {
  const { said } = useForm();
  const at = said.rig.water.litresPerDay === undefined ? '/crew/observedLitresPerDay' : '/water/litresPerDay';
  const observed = useField({ in: 'rig', path: at });
  return (
    <>
      <RangeField
        {...range('As observed, all aboard', at, 'your own figure wins over the sum of the parts')}
        base={RIG}
      />
      {observed.said !== undefined && (
        <p className="says">
          The observed figure wins over the sum of the parts.{' '}
          <button type="button" className="quiet" onClick={() => observed.set(undefined)}>
            Reckon from the crew instead
          </button>
        </p>
      )}
    </>
  );
}

/** Who drinks from the tanks, and in what heat. */
export const CREW_ITEMS: readonly FormItem[] = [
  PEOPLE,
  PETS,
  HEAT,
  own('observed', ObservedField),
  quantity('For the vehicle', '/crew/vehicleLitresPerDay', 'waterUse', { hint: 'radiator, screen' }),
  quantity('Spilled and leaked', '/crew/lossPercent', 'percent'),
  tick(
    'Camps are near water that I mark safe for skin: washing water is not carried',
    '/crew/washingAtSource',
  ),
];

export const HELP_ITEMS: readonly FormItem[] = [
  group('Until help comes', [
    optional(
      'Somebody raises the alarm after',
      '/alarmHours',
      'hours',
      'the reserve lasts at least until help is there',
    ),
    optional('Help is there after another', '/helpHours', 'hours'),
  ]),
];
