import { Fields } from '../form/Fields.tsx';
import { below, TRIP } from '../form/form-context.ts';
import { optional } from '../form/items.ts';
import { t } from '../language/t.ts';

const ITEMS = [
  optional(t('Waiting'), '/waitDays', 'days', t('empty: 2 days')),
  optional(t('Hotter by'), '/hotterByC', 'warming', t('empty: 5 °C, or 9 °F')),
  optional(t('Turning round at'), '/turnRoundAtKm', 'distance', t('empty: the worst place')),
];

/** What of the what-ifs can be chosen; the hints name the defaults of the reckoning. */
export function Choices() {
  return (
    <fieldset className="form">
      <legend>{t('What is tried')}</legend>
      <Fields items={ITEMS} at={below(TRIP, '/whatIf')} />
    </fieldset>
  );
}
