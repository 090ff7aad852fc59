import { expect, it } from 'vitest';
import { Reading } from '../../../server/http/service/reading.ts';

it('a reading tells rate and time left of the stage that it is in', () => {
  let ms = 1_000;
  const reading = new Reading('land.osm', 'coming', 1_000, () => ms);
  expect(reading.told()).toMatchObject({
    name: 'land.osm',
    stage: 'coming',
    doneBytes: 0,
    totalBytes: 1_000,
  });
  ms += 100;
  reading.came(200);
  expect(reading.told()).toMatchObject({ doneBytes: 200, perSecond: null, leftSeconds: null });
  ms += 1_900;
  reading.came(200);
  expect(reading.told()).toMatchObject({ doneBytes: 400, perSecond: 200, leftSeconds: 3 });

  reading.stage = 'reading';
  expect(reading.told()).toMatchObject({ stage: 'reading', doneBytes: 0, totalBytes: null, perSecond: null });
  new Float64Array(reading.progress).set([500, 900]);
  ms += 2_000;
  expect(reading.told()).toMatchObject({ doneBytes: 500, totalBytes: 900, perSecond: 250, leftSeconds: 1.6 });

  reading.wrote(0, 300);
  ms += 1_000;
  reading.wrote(200, 300);
  expect(reading.told()).toMatchObject({
    stage: 'keeping',
    objects: 200,
    totalObjects: 300,
    perSecond: 200,
    leftSeconds: 0.5,
  });
});

it('a reading tells what is asked of a server, and until when nothing is', () => {
  let ms = 0;
  const reading = new Reading('Corridor', 'asking', null, () => ms);
  expect(reading.told().asking).toBeNull();
  ms = 10_000;
  reading.asked({ done: 5, chunks: 25, waiting: { seconds: 30, why: 'busy', detail: 'status 429' } });
  expect(reading.told()).toMatchObject({
    perSecond: 0.5,
    leftSeconds: 40,
    asking: {
      done: 5,
      requests: 25,
      waiting: { until: '1970-01-01T00:00:40.000Z', why: 'busy', detail: 'status 429' },
    },
  });
});
