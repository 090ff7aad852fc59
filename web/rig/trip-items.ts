import { either } from '../form/either.ts';
import { choice, type FormItem, group, optional, quantity, text, tick } from '../form/items.ts';
import { today } from '../words/local-time.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

const EVIDENCE = [
  { value: 'confirmed', words: 'confirmed by you' },
  { value: 'stated', words: 'listed on the map' },
  { value: 'implied', words: 'likely, by what it is' },
  { value: 'doubtful', words: 'even doubtful' },
];
const COMMODITIES = [
  { value: 'fuel', words: 'fuel' },
  { value: 'water', words: 'water' },
];
const AS_FULL = 'not said: taken as full';

/** What belongs to this journey: what is aboard, what counts, where it halts, what was found out. */
export const TRIP_ITEMS: readonly FormItem[] = [
  text('Name of the trip', '/name'),
  group('At the start and past the end', [
    either(
      'Fuel aboard',
      '/aboard',
      [
        { key: 'fuelKmSinceFill', words: 'driven since all was full', kind: 'distance', start: 0 },
        { key: 'fuelLitres', words: 'fuel that can be used', kind: 'volume', start: 0 },
      ],
      AS_FULL,
    ),
    either(
      'Water aboard',
      '/aboard',
      [
        { key: 'waterDaysSinceFill', words: 'days since all was full', kind: 'days', start: 0 },
        { key: 'waterLitres', words: 'water that can be used', kind: 'volume', start: 0 },
      ],
      AS_FULL,
    ),
    quantity('From the end to the next supply', '/onward/km', 'distance', { hint: '0 when it is there' }),
    optional('which takes', '/onward/hours', 'hours'),
    optional('Coldest night expected', '/coldestNightC', 'celsius', 'diesel may not stand it'),
    text('Departure', '/departure', { type: 'date', hint: 'for seasons and the age of tags' }),
  ]),
  group('What is relied on', [
    choice('Fuel is relied on from', '/counting/fuel', EVIDENCE),
    choice('Water is relied on from', '/counting/water', EVIDENCE),
    quantity('Looked for within', '/corridorKm', 'distance', { hint: 'of the route' }),
  ]),
  group('How it is reckoned', [
    quantity('Allowance for winding', '/allowancePercent', 'percent'),
    quantity('Detour over straight line', '/detourFactor', 'factor'),
    quantity('A sketch from straight steps of', '/sparseStepKm', 'distance'),
    tick('Long straight steps are straight roads: I vouch for them', '/routeIsRoad'),
    quantity('Days at each camp', '/campDays', 'days'),
    text('Part of the file', '/part', {
      wholeNumbers: true,
      hint: "all, a number from 1, or a track's name",
    }),
  ]),
  {
    item: 'list',
    legend: 'What is under the wheels',
    one: 'stretch',
    at: '/surfaces',
    fresh: () => ({ fromKm: 0, toKm: 1, surface: 'track' }),
    items: [
      choice('Surface', '/surface', SURFACE_CHOICES),
      quantity('from', '/fromKm', 'distance'),
      quantity('to', '/toKm', 'distance'),
      optional('Allowance for winding', '/allowancePercent', 'percent', 'empty: that of the surface'),
    ],
  },
  {
    item: 'list',
    legend: 'Further halts',
    one: 'halt',
    at: '/stays',
    fresh: () => ({ atKm: 0, days: 1 }),
    items: [text('Name', '/name'), quantity('at', '/atKm', 'distance'), quantity('for', '/days', 'days')],
  },
  {
    item: 'list',
    legend: 'Stretches that cannot be driven back',
    one: 'stretch',
    at: '/oneWay',
    fresh: () => ({ fromKm: 0, toKm: 0 }),
    items: [quantity('from', '/fromKm', 'distance'), quantity('to', '/toKm', 'distance')],
  },
  {
    item: 'list',
    legend: 'What you found out about single points',
    one: 'finding',
    at: '/confirmations',
    fresh: () => ({ id: 'node/', on: today(), works: true }),
    items: [
      text('Point', '/id', { hint: 'its id, as in Supplies' }),
      text('on', '/on', { type: 'date' }),
      tick('It works', '/works'),
      choice('for', '/commodity', [{ value: '', words: 'fuel and water' }, ...COMMODITIES]),
      text('Who said it', '/by'),
      text('Telephone', '/phone'),
      text('What they said', '/words'),
      text('Holds from', '/from', { type: 'date', hint: 'empty: from that day' }),
      text('until', '/until', { type: 'date', hint: 'empty: 30 days after the departure' }),
    ],
  },
  {
    item: 'list',
    legend: 'Areas you vouch for: the extracts show every supply in them',
    one: 'area',
    at: '/cover',
    fresh: () => ({ commodity: 'water', bbox: [0, 0, 0, 0] }),
    items: [
      choice('For', '/commodity', COMMODITIES),
      ...['West', 'South', 'East', 'North'].map((side, place) =>
        quantity(`${side} (degrees)`, `/bbox/${place}`, 'count'),
      ),
    ],
  },
];
