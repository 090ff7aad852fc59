import { Fields } from '../form/Fields.tsx';
import { below, TRIP } from '../form/form-context.ts';
import { optional } from '../form/items.ts';

const ITEMS = [
  optional('Waiting', '/waitDays', 'days', 'empty: 2 days'),
  optional('Hotter by', '/hotterByC', 'warming', 'empty: 5 °C, or 9 °F'),
  optional('Turning round at', '/turnRoundAtKm', 'distance', 'empty: the worst place'),
];

/** What of the what-ifs can be chosen; the hints name the defaults of the reckoning. */
export function Choices() {
  return (
    <fieldset className="form">
      <legend>What is tried</legend>
      <Fields items={ITEMS} at={below(TRIP, '/whatIf')} />
    </fieldset>
  );
}
