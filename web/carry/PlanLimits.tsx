import { Fields } from '../form/Fields.tsx';
import { below, TRIP } from '../form/form-context.ts';
import { optional, text, tick } from '../form/items.ts';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';

const ITEMS = [
  ...(['fuel', 'water'] as const).map((commodity) =>
    text(t`Most ${worded(commodity)} cans`, `/mostCans/${commodity}`, {
      wholeNumbers: true,
      hint: t('empty: those owned, more if it takes them'),
    }),
  ),
  ...(['fuel', 'water'] as const).map((commodity) =>
    optional(
      t`Price of ${worded(commodity)}`,
      `/pricePerLitre/${commodity}`,
      'price',
      t('for what the plan costs'),
    ),
  ),
  text(t('Currency'), '/currency'),
  optional(
    t('Stop at every supply within'),
    '/stopWithinKm',
    'distance',
    t('of driving off the route; empty: as it needs'),
  ),
  tick(t('No cans where people sit or sleep'), '/noneInside'),
  tick(t('When a stop fails, the reserve may be spent to get away from it'), '/spendReserveOnFailure'),
];

/** What the plan is held to. */
export function PlanLimits() {
  return (
    <fieldset className="form plan-limits">
      <legend>{t('What the plan is held to')}</legend>
      <Fields items={ITEMS} at={below(TRIP, '/plan')} />
    </fieldset>
  );
}
