import { below, type FieldPath, useField, useForm } from '../form/form-context.ts';
import { choice, type FormItem, fold, optional, quantity, text } from '../form/items.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { SurfaceSwatch } from '../marks/SurfacePattern.tsx';
import { formatAtKm } from '../units/units.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** When it sets out, and for how long it drives. */
export const TIMES: readonly FormItem[] = [
  text(t('Departure'), '/departure', { type: 'date' }),
  {
    item: 'clock',
    label: t("Each day's driving begins at"),
    at: '/departureHour',
    hint: t('with it days have hours of arrival; empty: the trip starts with a driving day'),
  },
  optional(t('Camp after driving for'), '/campAfterHours', 'hours', t("empty: as long as the rig's day")),
];

/** Where it stops, and what is under the wheels by stretch; the strip's road shows the same as patterns. */
export const PLACES: readonly FormItem[] = [
  {
    item: 'list',
    legend: t('Camps'),
    one: t('camp'),
    at: '/camps',
    fresh: (_, { analysis }) => ({ atKm: Math.round(analysis.route.lengthKm / 2) }),
    items: [text(t('Camp'), '/name'), quantity('at', '/atKm', 'distance')],
  },
  {
    item: 'list',
    legend: t('Rest days and waiting'),
    one: t('halt'),
    at: '/stays',
    fresh: () => ({ atKm: 0, days: 1 }),
    items: [text(t('Halt'), '/name'), quantity('at', '/atKm', 'distance'), quantity('for', '/days', 'days')],
  },
  {
    item: 'list',
    legend: t('What is under the wheels'),
    one: t('stretch'),
    at: '/surfaces',
    fresh: (_, { analysis }) => ({
      fromKm: 0,
      toKm: Math.round(analysis.route.lengthKm * 100) / 100,
      surface: 'gravel',
    }),
    items: [
      fold(StretchSummary, [
        choice(t('Surface'), '/surface', SURFACE_CHOICES),
        quantity('from', '/fromKm', 'distance'),
        quantity('to', '/toKm', 'distance', { hint: t('where stretches overlap the later holds') }),
        optional(t('Allowance for winding'), '/allowancePercent', 'percent', t('empty: that of the surface')),
      ]),
    ],
  },
];

/** "km 0 to 300: sand", and how that looks along the road. */
function StretchSummary({ at }: { at: FieldPath }) {
  const { units } = useForm();
  const fromKm = useField(below(at, '/fromKm')).value;
  const toKm = useField(below(at, '/toKm')).value;
  const told = useField(below(at, '/surface')).value;
  const surface = SURFACE_CHOICES.find(({ value }) => value === told)?.value ?? 'unknown';
  const place = (km: unknown) => (typeof km === 'number' ? formatAtKm(km, units) : '');
  return tx`${place(fromKm)} to ${place(toKm)}: ${surface === 'unknown' ? t('not told') : surface} ${<SurfaceSwatch surface={surface} />}`;
}
