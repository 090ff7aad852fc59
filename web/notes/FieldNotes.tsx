import { Fields } from '../form/Fields.tsx';
import { TRIP } from '../form/form-context.ts';
import { type FormItem, quantity, text } from '../form/items.ts';
import { today } from '../words/local-time.ts';
import { NotedPoints } from './NotedPoints.tsx';
import { NotesFiles } from './NotesFiles.tsx';
import { OwnPoints } from './OwnPoints.tsx';

const CLOSED: readonly FormItem[] = [
  {
    item: 'list',
    legend: 'Closed stretches',
    one: 'stretch',
    at: '/closed',
    fresh: () => ({ fromKm: 0, toKm: 1, on: today() }),
    items: [
      quantity('from', '/fromKm', 'distance'),
      quantity('to', '/toKm', 'distance'),
      text('Closed from', '/from', { type: 'date', hint: 'empty: closed already' }),
      text('until', '/until', { type: 'date', hint: 'empty: without an end' }),
      text('Who said it', '/by'),
      text('What they said', '/words'),
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
    </div>
    <NotesFiles />
  </>
);
