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
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
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
  legend: t('People'),
  one: t('person'),
  at: '/crew/people',
  fresh: () => ({ ...TYPICAL_PERSON, count: 1 }),
  least: 1,
  items: [
    text(t('Who'), '/name'),
    optional(t('How many alike'), '/count', 'count', t('empty: one')),
    choice(t('Uses water'), '/level', [
      { value: 'emergency', words: t('emergency: drinking only') },
      { value: 'basic', words: t('basic: no shower, few dishes') },
      { value: 'careful', words: t('careful: away from water') },
      { value: 'plenty', words: t('plenty: with a short shower') },
    ]),
    {
      item: 'fold',
      summary: t('Own figures, litres a day of one person'),
      items: OWN_FIGURES.map(([words, at]) => range(words, at, t('empty: that of the level'))),
    },
  ],
};

const PETS: FormItem = {
  item: 'list',
  legend: t('Pets'),
  one: t('pet'),
  at: '/crew/pets',
  fresh: () => ({ ...TYPICAL_PET }),
  items: [
    choice(t('Pet'), '/kind', [
      { value: 'dog', words: t('dog') },
      { value: 'cat', words: t('cat') },
      { value: 'other', words: t('other') },
    ]),
    quantity('weighs', '/kg', 'mass'),
    range(t('Drinks'), '/litresPerDay', t('empty: by body mass')),
  ],
};

const isTypicalHeat = ({ said }: FormState): boolean => {
  const heat = said.rig.crew?.heat;
  return Object.entries(TYPICAL_HEAT).every(([key, value]) => heat?.[key as keyof typeof heat] === value);
};

/** The heat expected by day and the work done in it. */
const HEAT: FormItem = {
  item: 'part',
  what: t('the heat expected'),
  at: '/crew/heat',
  without: t('Heat is not told: mild weather is reckoned with.'),
  start: { ...TYPICAL_HEAT },
  leaveOut: t('Remove the heat'),
  items: [
    group(t('Heat and work'), [
      when(isTypicalHeat, [says(t('Typical values of a hot dry day: change them.'))]),
      HEAT_KNOWN_AS,
      choice(t('Sun'), '/sun', SUN),
      choice(t('Work'), '/work', WORK),
      quantity(t('Hours of it a day'), '/workHoursPerDay', 'hours'),
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
        {...range(t('As observed, all aboard'), at, t('your own figure wins over the sum of the parts'))}
        base={RIG}
      />
      {observed.said !== undefined && (
        <p className="says">{tx`The observed figure wins over the sum of the parts. ${(
          <button type="button" className="quiet" onClick={() => observed.set(undefined)}>
            {t('Reckon from the crew instead')}
          </button>
        )}`}</p>
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
  quantity(t('For the vehicle'), '/crew/vehicleLitresPerDay', 'waterUse', { hint: t('radiator, screen') }),
  quantity(t('Spilled and leaked'), '/crew/lossPercent', 'percent'),
  tick(
    t('Camps are near water that I mark safe for skin: washing water is not carried'),
    '/crew/washingAtSource',
  ),
];

export const HELP_ITEMS: readonly FormItem[] = [
  group(t('Until help comes'), [
    optional(
      t('Somebody raises the alarm after'),
      '/alarmHours',
      'hours',
      t('the reserve lasts at least until help is there'),
    ),
    optional(t('Help is there after another'), '/helpHours', 'hours'),
  ]),
];
