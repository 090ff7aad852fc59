import { Fields } from '../form/Fields.tsx';
import { TRIP } from '../form/form-context.ts';
import { choice, type FormItem, optional, quantity, text } from '../form/items.ts';
import { t } from '../language/t.ts';

const ITEMS: readonly FormItem[] = [
  {
    item: 'list',
    legend: t('Your own supplies: depots, what others bring, a second vehicle'),
    one: t('supply'),
    at: '/laid',
    fresh: (_, { analysis }) => ({
      commodity: 'water',
      litres: 20,
      atKm: Math.round(analysis.route.lengthKm / 2),
    }),
    items: [
      text(t('Supply'), '/name'),
      choice('of', '/commodity', [
        { value: 'fuel', words: t('fuel') },
        { value: 'water', words: t('drinking water') },
      ]),
      quantity(t('so much'), '/litres', 'volume'),
      quantity('at', '/atKm', 'distance'),
      optional(t('off the route, one way'), '/detourKm', 'distance'),
      choice(t('what it is'), '/by', [
        { value: '', words: t('a depot laid beforehand') },
        { value: 'others', words: t('brought by others') },
        { value: 'second-vehicle', words: t('in a second vehicle') },
      ]),
      text(t('There from'), '/from', { type: 'date', hint: t('empty: before the trip begins') }),
    ],
  },
];

/** Supplies of the user's own, which the plan reckons with like any other. */
export const LaidSupplies = () => (
  <div className="form plan-limits">
    <Fields items={ITEMS} at={TRIP} />
  </div>
);
