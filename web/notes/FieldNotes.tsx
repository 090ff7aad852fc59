import { Fields } from '../form/Fields.tsx';
import { TRIP } from '../form/form-context.ts';
import { choice, type FormItem, optional, quantity, text } from '../form/items.ts';
import { t } from '../language/t.ts';
import { TYPICAL_HEAT } from '../water/crew-start.ts';
import { HEAT_KNOWN_AS, SUN, WORK } from '../water/heat-items.ts';
import { today } from '../words/local-time.ts';
import { NotedPoints } from './NotedPoints.tsx';
import { NotesFiles } from './NotesFiles.tsx';
import { OwnPoints } from './OwnPoints.tsx';

const CLOSED: readonly FormItem[] = [
  {
    item: 'list',
    legend: t('Closed stretches'),
    one: t('stretch'),
    at: '/closed',
    fresh: () => ({ fromKm: 0, toKm: 1, on: today() }),
    items: [
      quantity('from', '/fromKm', 'distance'),
      quantity('to', '/toKm', 'distance'),
      text(t('Closed from'), '/from', { type: 'date', hint: t('empty: closed already') }),
      text('until', '/until', { type: 'date', hint: t('empty: without an end') }),
      text(t('Who said it'), '/by'),
      text(t('What they said'), '/words'),
    ],
  },
];

const AS_THE_CREW = { value: '', words: t('as the crew told') };

/** Added with the typical heat, which is to be changed. */
const HEAT: readonly FormItem[] = [
  {
    item: 'list',
    legend: t('Heat on a stretch, where it is hotter than the crew told: more water is reckoned there'),
    one: t('hot stretch'),
    at: '/heat',
    fresh: () => {
      const { temperatureC, humidityPercent } = TYPICAL_HEAT;
      return { fromKm: 0, toKm: 1, temperatureC, humidityPercent, on: today() };
    },
    items: [
      quantity('from', '/fromKm', 'distance'),
      quantity('to', '/toKm', 'distance'),
      HEAT_KNOWN_AS,
      choice(t('Sun'), '/sun', [AS_THE_CREW, ...SUN]),
      choice(t('Work'), '/work', [AS_THE_CREW, ...WORK]),
      optional(t('Hours of it a day'), '/workHoursPerDay', 'hours', t('empty: as the crew told')),
      text(t('Who said it'), '/by'),
      text(t('What they said'), '/words'),
    ],
  },
];

/** All that the reader noted of supplies and of the road, and the way in and out for it. */
export const FieldNotes = ({ place }: { place: { lon: number; lat: number } | null }) => (
  <>
    <OwnPoints place={place} today={today()} />
    <NotedPoints />
    <div className="form">
      <Fields items={CLOSED} at={TRIP} />
      <Fields items={HEAT} at={TRIP} />
    </div>
    <NotesFiles />
  </>
);
