import { expect, it } from 'vitest';
import type { ExtractReading } from '../../../server/contract/supplies/readings.ts';
import { lastsWords, readingWords } from '../../../web/kept/maps/reading-words.ts';

const reading = (parts: Partial<ExtractReading>): ExtractReading => ({
  id: 'a',
  name: 'land.osm.pbf',
  startedAt: '2026-05-01T10:00:00Z',
  stage: 'reading',
  doneBytes: 0,
  totalBytes: null,
  objects: 0,
  totalObjects: null,
  perSecond: null,
  leftSeconds: null,
  asking: null,
  ...parts,
});
const NOW = new Date('2026-05-01T10:00:00Z');

it.each<[Partial<ExtractReading>, string, number | null]>([
  [{ stage: 'coming', doneBytes: 2_500_000 }, 'Being sent: 2.5 MB', null],
  [
    { doneBytes: 30e6, totalBytes: 120e6, perSecond: 15e6, leftSeconds: 6 },
    'Being read: 30 MB of 120 MB, 15 MB/s, 6 s left',
    0.25,
  ],
  [
    { stage: 'keeping', objects: 400, totalObjects: 1_000, perSecond: 200, leftSeconds: 180 },
    'Being kept: 400 of 1000 objects, 3 min left',
    0.4,
  ],
  [{ stage: 'asking' }, 'Being asked for', null],
  [
    { stage: 'asking', asking: { done: 3, requests: 12, waiting: null }, leftSeconds: 27 },
    'Asked: 3 of 12 queries answered, 27 s left',
    0.25,
  ],
  [
    {
      stage: 'asking',
      asking: {
        done: 3,
        requests: 12,
        waiting: { until: '2026-05-01T10:01:00Z', why: 'busy', detail: 'status 429' },
      },
    },
    'Asked: 3 of 12 queries answered. The server is busy (status 429): again in 60 s',
    0.25,
  ],
])('a reading %j is told', (parts, words, share) => {
  expect(readingWords(reading(parts), NOW)).toEqual({ words, share });
});

it('what lasts is told in seconds, then in minutes', () => {
  expect([0, 40.4, 89, 100, 3_600].map(lastsWords)).toEqual(['1 s', '40 s', '89 s', '2 min', '60 min']);
});
