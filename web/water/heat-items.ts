import { type Choice, type FormItem, quantity } from '../form/items.ts';
import { t } from '../language/t.ts';
import type { Json } from '../state/json-path.ts';
import { TYPICAL_HEAT } from './crew-start.ts';

export const SUN: readonly Choice[] = [
  { value: 'shade', words: t('in the shade') },
  { value: 'some', words: t('some sun') },
  { value: 'full', words: t('full sun') },
];

export const WORK: readonly Choice[] = [
  { value: 'easy', words: t('easy: driving, walking about') },
  { value: 'moderate', words: t('moderate: making camp, walking') },
  { value: 'hard', words: t('hard: digging out, pushing') },
];

type Heat = { [key: string]: Json };
const heatOf = (told: Json | undefined): Heat =>
  typeof told === 'object' && told !== null && !Array.isArray(told) ? told : {};
/** About the WBGT of the typical heat in full sun (ours). */
const TYPICAL_WBGT_C = 29;

/** The heat by day is known as one figure, or as two that it is estimated from. */
export const HEAT_KNOWN_AS: FormItem = {
  item: 'switch',
  label: t('Known as'),
  at: '',
  options: [
    {
      value: 'air',
      words: t('temperature and humidity'),
      holds: (told) => heatOf(told).wbgtC === undefined,
      becomes: (told) => {
        const { wbgtC: _, ...rest } = heatOf(told);
        const { temperatureC, humidityPercent } = TYPICAL_HEAT;
        return { ...rest, temperatureC, humidityPercent };
      },
      items: [
        quantity(t('Hottest by day, in the shade'), '/temperatureC', 'celsius'),
        quantity(t('Humidity then'), '/humidityPercent', 'percent', {
          hint: t('in a dry desert often 10 to 25 %'),
        }),
        quantity(t('Wind then'), '/windKmPerHour', 'speed', {
          hint: t('empty: a light air, as of walking about; 0 where it is still'),
        }),
      ],
    },
    {
      value: 'wbgt',
      words: t('WBGT, measured or forecast'),
      holds: (told) => heatOf(told).wbgtC !== undefined,
      becomes: (told) => {
        const { temperatureC: _, humidityPercent: _h, windKmPerHour: _w, ...rest } = heatOf(told);
        return { ...rest, wbgtC: TYPICAL_WBGT_C };
      },
      items: [quantity('WBGT', '/wbgtC', 'celsius')],
    },
  ],
};
