import { type Choice, type FormItem, quantity } from '../form/items.ts';
import type { Json } from '../state/json-path.ts';
import { TYPICAL_HEAT } from './crew-start.ts';

export const SUN: readonly Choice[] = [
  { value: 'shade', words: 'in the shade' },
  { value: 'some', words: 'some sun' },
  { value: 'full', words: 'full sun' },
];

export const WORK: readonly Choice[] = [
  { value: 'easy', words: 'easy: driving, walking about' },
  { value: 'moderate', words: 'moderate: making camp, walking' },
  { value: 'hard', words: 'hard: digging out, pushing' },
];

type Heat = { [key: string]: Json };
const heatOf = (told: Json | undefined): Heat =>
  typeof told === 'object' && told !== null && !Array.isArray(told) ? told : {};
/** About the WBGT of the typical heat in full sun (ours). */
const TYPICAL_WBGT_C = 29;

/** The heat by day is known as one figure, or as two that it is estimated from. */
export const HEAT_KNOWN_AS: FormItem = {
  item: 'switch',
  label: 'Known as',
  at: '',
  options: [
    {
      value: 'air',
      words: 'temperature and humidity',
      holds: (told) => heatOf(told).wbgtC === undefined,
      becomes: (told) => {
        const { wbgtC: _, ...rest } = heatOf(told);
        const { temperatureC, humidityPercent } = TYPICAL_HEAT;
        return { ...rest, temperatureC, humidityPercent };
      },
      items: [
        quantity('Hottest by day, in the shade', '/temperatureC', 'celsius'),
        quantity('Humidity then', '/humidityPercent', 'percent', {
          hint: 'in a dry desert often 10 to 25 %',
        }),
        quantity('Wind then', '/windKmPerHour', 'speed', {
          hint: 'empty: a light air, as of walking about; 0 where it is still',
        }),
      ],
    },
    {
      value: 'wbgt',
      words: 'WBGT, measured or forecast',
      holds: (told) => heatOf(told).wbgtC !== undefined,
      becomes: (told) => {
        const { temperatureC: _, humidityPercent: _h, windKmPerHour: _w, ...rest } = heatOf(told);
        return { ...rest, wbgtC: TYPICAL_WBGT_C };
      },
      items: [quantity('WBGT', '/wbgtC', 'celsius')],
    },
  ],
};
