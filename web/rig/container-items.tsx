import type { Commodity } from '../../server/contract/common.ts';
import { below, type FieldPath, useField, useForm } from '../form/form-context.ts';
import {
  choice,
  type FoldItem,
  type FormItem,
  fold,
  group,
  optional,
  quantity,
  text,
  tick,
} from '../form/items.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatLength } from '../units/units.ts';
import { positionItem } from '../vehicle/position-items.ts';
import { PLACES } from '../vehicle/vehicle-start.ts';

const KEPT_FOR = choice(t('Kept for'), '/grade', [
  { value: '', words: t('drinking and washing') },
  { value: 'drinking', words: t('drinking only') },
  { value: 'washing', words: t('washing only') },
]);
const FILLED_TO = optional(t('Filled to'), '/fillPercent', 'percent', t('empty: to the brim'));

/** The fixed tanks of a commodity. */
export const tanks = (commodity: Commodity): FormItem => ({
  item: 'list',
  legend: t('Fixed tanks'),
  one: t('tank'),
  at: `/${commodity}/tanks`,
  fresh: (count) => ({ name: t`tank ${count + 1}`, litres: 40, unusableLitres: 0 }),
  least: 1,
  items: [
    text(t('Tank'), '/name'),
    quantity(t('Holds'), '/litres', 'volume'),
    optional(t('of it unusable'), '/unusableLitres', 'volume'),
    FILLED_TO,
    ...(commodity === 'water'
      ? [KEPT_FOR, tick(t('Apart: no pipe, pump or tap joins it to another tank'), '/apart')]
      : []),
    massAndPlace('tank', [
      optional(t('Empty tank weighs'), '/emptyKg', 'mass', t('empty: part of the kerb mass')),
      positionItem(commodity === 'fuel' ? PLACES.fuelTank : PLACES.waterTank, t("the tank's")),
    ]),
  ],
});

/** The portable cans of a commodity, all alike. */
export const cans = (commodity: Commodity): FormItem =>
  group(
    t('Portable cans'),
    [
      quantity(t('Cans owned'), '/owned', 'count', { hint: t('empty until filled') }),
      quantity(t('Each can holds'), '/litres', 'volume'),
      FILLED_TO,
      ...(commodity === 'water' ? [KEPT_FOR] : []),
      massAndPlace('cans', [
        optional(t('An empty can weighs'), '/emptyKg', 'mass'),
        positionItem(commodity === 'fuel' ? PLACES.fuelCans : PLACES.waterCans, t("the cans'")),
      ]),
    ],
    `/${commodity}/cans`,
  );

/** Mass, place and marking of a container, folded away until they are wanted. */
function massAndPlace(of: string, items: readonly FormItem[]): FoldItem {
  return fold(PlaceSummary, [
    ...items,
    text(t('Marking'), '/marking', { hint: t`approval, age, grade, as written on the ${of}` }),
  ]);
}

function PlaceSummary({ at }: { at: FieldPath }) {
  const { units } = useForm();
  const x = useField(below(at, '/position/behindFrontAxleM')).value;
  return tx`Mass and place ${<span className="soft">{typeof x === 'number' ? t`${formatLength(x, units)} behind the front axle` : t('place not told')}</span>}`;
}
