import { Fields } from '../form/Fields.tsx';
import { TRIP } from '../form/form-context.ts';
import { choice, type FormItem, optional, quantity, text } from '../form/items.ts';

const ITEMS: readonly FormItem[] = [
  {
    item: 'list',
    legend: 'Your own supplies: depots, what others bring, a second vehicle',
    one: 'supply',
    at: '/laid',
    fresh: (_, { analysis }) => ({
      commodity: 'water',
      litres: 20,
      atKm: Math.round(analysis.route.lengthKm / 2),
    }),
    items: [
      text('Supply', '/name'),
      choice('of', '/commodity', [
        { value: 'fuel', words: 'fuel' },
        { value: 'water', words: 'drinking water' },
      ]),
      quantity('so much', '/litres', 'volume'),
      quantity('at', '/atKm', 'distance'),
      optional('off the route, one way', '/detourKm', 'distance'),
      choice('what it is', '/by', [
        { value: '', words: 'a depot laid beforehand' },
        { value: 'others', words: 'brought by others' },
        { value: 'second-vehicle', words: 'in a second vehicle' },
      ]),
      text('There from', '/from', { type: 'date', hint: 'empty: before the trip begins' }),
    ],
  },
];

/** Supplies of the user's own, which the plan reckons with like any other. */
export const LaidSupplies = () => (
  <div className="form plan-limits">
    <Fields items={ITEMS} at={TRIP} />
  </div>
);
