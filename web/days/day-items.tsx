import { below, type FieldPath, useField, useForm } from '../form/form-context.ts';
import { choice, type FormItem, fold, optional, quantity, text } from '../form/items.ts';
import { SurfaceSwatch } from '../marks/SurfacePattern.tsx';
import { formatAtKm } from '../units/units.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** When it sets out, and for how long it drives. */
export const TIMES: readonly FormItem[] = [
  text('Departure', '/departure', { type: 'date' }),
  {
    item: 'clock',
    label: "Each day's driving begins at",
    at: '/departureHour',
    hint: 'with it days have hours of arrival; empty: the trip starts with a driving day',
  },
  optional('Camp after driving for', '/campAfterHours', 'hours', "empty: as long as the rig's day"),
];

/** Where it stops, and what is under the wheels by stretch; the strip's road shows the same as patterns. */
export const PLACES: readonly FormItem[] = [
  {
    item: 'list',
    legend: 'Camps',
    one: 'camp',
    at: '/camps',
    fresh: (_, { analysis }) => ({ atKm: Math.round(analysis.route.lengthKm / 2) }),
    items: [text('Camp', '/name'), quantity('at', '/atKm', 'distance')],
  },
  {
    item: 'list',
    legend: 'Rest days and waiting',
    one: 'halt',
    at: '/stays',
    fresh: () => ({ atKm: 0, days: 1 }),
    items: [text('Halt', '/name'), quantity('at', '/atKm', 'distance'), quantity('for', '/days', 'days')],
  },
  {
    item: 'list',
    legend: 'What is under the wheels',
    one: 'stretch',
    at: '/surfaces',
    fresh: (_, { analysis }) => ({
      fromKm: 0,
      toKm: Math.round(analysis.route.lengthKm * 100) / 100,
      surface: 'gravel',
    }),
    items: [
      fold(StretchSummary, [
        choice('Surface', '/surface', SURFACE_CHOICES),
        quantity('from', '/fromKm', 'distance'),
        quantity('to', '/toKm', 'distance', { hint: 'where stretches overlap the later holds' }),
        optional('Allowance for winding', '/allowancePercent', 'percent', 'empty: that of the surface'),
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
  return (
    <>
      {place(fromKm)} to {place(toKm)}: {surface === 'unknown' ? 'not told' : surface}{' '}
      <SurfaceSwatch surface={surface} />
    </>
  );
}
