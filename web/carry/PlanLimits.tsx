import { Fields } from '../form/Fields.tsx';
import { below, TRIP } from '../form/form-context.ts';
import { optional, text, tick } from '../form/items.ts';

const ITEMS = [
  ...(['fuel', 'water'] as const).map((commodity) =>
    text(`Most ${commodity} cans`, `/mostCans/${commodity}`, {
      wholeNumbers: true,
      hint: 'empty: those owned, more if it takes them',
    }),
  ),
  ...(['fuel', 'water'] as const).map((commodity) =>
    optional(`Price of ${commodity}`, `/pricePerLitre/${commodity}`, 'price', 'for what the plan costs'),
  ),
  text('Currency', '/currency'),
  optional(
    'Stop at every supply within',
    '/stopWithinKm',
    'distance',
    'of driving off the route; empty: as it needs',
  ),
  tick('No cans where people sit or sleep', '/noneInside'),
  tick('When a stop fails, the reserve may be spent to get away from it', '/spendReserveOnFailure'),
];

/** What the plan is held to. */
export function PlanLimits() {
  return (
    <fieldset className="form plan-limits">
      <legend>What the plan is held to</legend>
      <Fields items={ITEMS} at={below(TRIP, '/plan')} />
    </fieldset>
  );
}
