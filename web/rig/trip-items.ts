import { either } from '../form/either.ts';
import { choice, type FormItem, group, optional, quantity, text, tick } from '../form/items.ts';
import { t } from '../language/t.ts';
import { today } from '../words/local-time.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

const EVIDENCE = [
  { value: 'confirmed', words: t('confirmed by you') },
  { value: 'stated', words: t('listed on the map') },
  { value: 'implied', words: t('likely, by what it is') },
  { value: 'doubtful', words: t('even doubtful') },
];
const COMMODITIES = [
  { value: 'fuel', words: t('fuel') },
  { value: 'water', words: t('water') },
];
const AS_FULL = t('not said: taken as full');

/** What belongs to this journey: what is aboard, what counts, where it halts, what was found out. */
export const TRIP_ITEMS: readonly FormItem[] = [
  text(t('Name of the trip'), '/name'),
  group(t('At the start and past the end'), [
    either(
      t('Fuel aboard'),
      '/aboard',
      [
        { key: 'fuelKmSinceFill', words: t('driven since all was full'), kind: 'distance', start: 0 },
        { key: 'fuelLitres', words: t('fuel that can be used'), kind: 'volume', start: 0 },
      ],
      AS_FULL,
    ),
    either(
      t('Water aboard'),
      '/aboard',
      [
        { key: 'waterDaysSinceFill', words: t('days since all was full'), kind: 'days', start: 0 },
        { key: 'waterLitres', words: t('water that can be used'), kind: 'volume', start: 0 },
      ],
      AS_FULL,
    ),
    quantity(t('From the end to the next supply'), '/onward/km', 'distance', {
      hint: t('0 when it is there'),
    }),
    optional(t('which takes'), '/onward/hours', 'hours'),
    optional(t('Coldest night expected'), '/coldestNightC', 'celsius', t('diesel may not stand it')),
    text(t('Departure'), '/departure', { type: 'date', hint: t('for seasons and the age of tags') }),
  ]),
  group(t('What is relied on'), [
    choice(t('Fuel is relied on from'), '/counting/fuel', EVIDENCE),
    choice(t('Water is relied on from'), '/counting/water', EVIDENCE),
    quantity(t('Looked for within'), '/corridorKm', 'distance', { hint: t('of the route') }),
  ]),
  group(t('How it is reckoned'), [
    quantity(t('Allowance for winding'), '/allowancePercent', 'percent'),
    quantity(t('Detour over straight line'), '/detourFactor', 'factor'),
    quantity(t('A sketch from straight steps of'), '/sparseStepKm', 'distance'),
    tick(t('Long straight steps are straight roads: I vouch for them'), '/routeIsRoad'),
    quantity(t('Days at each camp'), '/campDays', 'days'),
    text(t('Part of the file'), '/part', {
      wholeNumbers: true,
      hint: t("all, a number from 1, or a track's name"),
    }),
  ]),
  {
    item: 'list',
    legend: t('What is under the wheels'),
    one: t('stretch'),
    at: '/surfaces',
    fresh: () => ({ fromKm: 0, toKm: 1, surface: 'track' }),
    items: [
      choice(t('Surface'), '/surface', SURFACE_CHOICES),
      quantity('from', '/fromKm', 'distance'),
      quantity('to', '/toKm', 'distance'),
      optional(t('Allowance for winding'), '/allowancePercent', 'percent', t('empty: that of the surface')),
    ],
  },
  {
    item: 'list',
    legend: t('Further halts'),
    one: t('halt'),
    at: '/stays',
    fresh: () => ({ atKm: 0, days: 1 }),
    items: [text(t('Name'), '/name'), quantity('at', '/atKm', 'distance'), quantity('for', '/days', 'days')],
  },
  {
    item: 'list',
    legend: t('Stretches that cannot be driven back'),
    one: t('stretch'),
    at: '/oneWay',
    fresh: () => ({ fromKm: 0, toKm: 0 }),
    items: [quantity('from', '/fromKm', 'distance'), quantity('to', '/toKm', 'distance')],
  },
  {
    item: 'list',
    legend: t('What you found out about single points'),
    one: t('finding'),
    at: '/confirmations',
    fresh: () => ({ id: 'node/', on: today(), works: true }),
    items: [
      text(t('Point'), '/id', { hint: t('its id, as in Supplies') }),
      text('on', '/on', { type: 'date' }),
      tick(t('It works'), '/works'),
      choice('for', '/commodity', [{ value: '', words: t('fuel and water') }, ...COMMODITIES]),
      text(t('Who said it'), '/by'),
      text(t('Telephone'), '/phone'),
      text(t('What they said'), '/words'),
      text(t('Holds from'), '/from', { type: 'date', hint: t('empty: from that day') }),
      text('until', '/until', { type: 'date', hint: t('empty: 30 days after the departure') }),
    ],
  },
  {
    item: 'list',
    legend: t('Areas you vouch for: the extracts show every supply in them'),
    one: 'area',
    at: '/cover',
    fresh: () => ({ commodity: 'water', bbox: [0, 0, 0, 0] }),
    items: [
      choice(t('For'), '/commodity', COMMODITIES),
      ...[t('West'), t('South'), t('East'), t('North')].map((side, place) =>
        quantity(t`${side} (degrees)`, `/bbox/${place}`, 'count'),
      ),
    ],
  },
];
