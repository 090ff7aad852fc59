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
import { formatLength } from '../units/units.ts';
import { positionItem } from '../vehicle/position-items.ts';
import { PLACES } from '../vehicle/vehicle-start.ts';

const KEPT_FOR = choice('Kept for', '/grade', [
  { value: '', words: 'drinking and washing' },
  { value: 'drinking', words: 'drinking only' },
  { value: 'washing', words: 'washing only' },
]);
const FILLED_TO = optional('Filled to', '/fillPercent', 'percent', 'empty: to the brim');

/** The fixed tanks of a commodity. */
export const tanks = (commodity: Commodity): FormItem => ({
  item: 'list',
  legend: 'Fixed tanks',
  one: 'tank',
  at: `/${commodity}/tanks`,
  fresh: (count) => ({ name: `tank ${count + 1}`, litres: 40, unusableLitres: 0 }),
  least: 1,
  items: [
    text('Tank', '/name'),
    quantity('Holds', '/litres', 'volume'),
    optional('of it unusable', '/unusableLitres', 'volume'),
    FILLED_TO,
    ...(commodity === 'water'
      ? [KEPT_FOR, tick('Apart: no pipe, pump or tap joins it to another tank', '/apart')]
      : []),
    massAndPlace('tank', [
      optional('Empty tank weighs', '/emptyKg', 'mass', 'empty: part of the kerb mass'),
      positionItem(commodity === 'fuel' ? PLACES.fuelTank : PLACES.waterTank, "the tank's"),
    ]),
  ],
});

/** The portable cans of a commodity, all alike. */
export const cans = (commodity: Commodity): FormItem =>
  group(
    'Portable cans',
    [
      quantity('Cans owned', '/owned', 'count', { hint: 'empty until filled' }),
      quantity('Each can holds', '/litres', 'volume'),
      FILLED_TO,
      ...(commodity === 'water' ? [KEPT_FOR] : []),
      massAndPlace('cans', [
        optional('An empty can weighs', '/emptyKg', 'mass'),
        positionItem(commodity === 'fuel' ? PLACES.fuelCans : PLACES.waterCans, "the cans'"),
      ]),
    ],
    `/${commodity}/cans`,
  );

/** Mass, place and marking of a container, folded away until they are wanted. */
function massAndPlace(of: string, items: readonly FormItem[]): FoldItem {
  return fold(PlaceSummary, [
    ...items,
    text('Marking', '/marking', { hint: `approval, age, grade, as written on the ${of}` }),
  ]);
}

function PlaceSummary({ at }: { at: FieldPath }) {
  const { units } = useForm();
  const x = useField(below(at, '/position/behindFrontAxleM')).value;
  return (
    <>
      Mass and place{' '}
      <span className="soft">
        {typeof x === 'number' ? `${formatLength(x, units)} behind the front axle` : 'place not told'}
      </span>
    </>
  );
}
