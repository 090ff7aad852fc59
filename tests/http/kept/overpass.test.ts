import { once } from 'node:events';
import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../../server/contract/analysis.ts';
import { OverpassQuestion } from '../../../server/contract/answers/overpass.ts';
import type { ExtractList, KeptExtract, KeptTripReply } from '../../../server/contract/kept.ts';
import { buildApp } from '../../../server/http/app.ts';
import { SmallOverpass } from '../../io/overpass/small-overpass.ts';
import { demoBytes, formOf } from '../form.ts';

/** A road of some 60 km along a parallel. */
const GPX = `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Short</name><trkseg>${Array.from(
  { length: 61 },
  (_, at) => `<trkpt lat="-35" lon="${(85 + at * 0.01).toFixed(2)}"/>`,
).join('')}</trkseg></trk></gpx>`;

/** One tap, kept under a name. */
const TAP =
  '<osm version="0.6"><node id="9" lat="-35" lon="85"><tag k="amenity" v="drinking_water"/></node></osm>';

const overpass = new SmallOverpass([
  {
    id: 1,
    lat: -35.01,
    lon: 85.2,
    tags: { amenity: 'fuel', 'fuel:diesel': 'yes', name: 'Pump of the ford' },
  },
  { id: 2, lat: -35.01, lon: 85.5, tags: { amenity: 'drinking_water' } },
]);
const faults: string[] = [];
let app: FastifyInstance;
let address = '';
let trip: KeptTripReply;
let corridorKm = 6;
/** A trip on the road, with no map. */
async function bareTrip(): Promise<KeptTripReply> {
  const form = formOf([
    { name: 'route', file: 'short.gpx', bytes: GPX },
    { name: 'rig', text: String(demoBytes('rig.yaml')) },
  ]);
  return (await app.inject({ method: 'POST', url: '/api/trips', ...form })).json();
}
beforeAll(async () => {
  const interpreter = { ...(await overpass.start()), pauseMs: 0 };
  const onFault = (text: string) => void faults.push(text);
  app = await buildApp({ today: () => '2026-05-01', webFolder: '/nowhere', interpreter, onFault });
  address = await app.listen({ port: 0, host: '127.0.0.1' });
  trip = await bareTrip();
});
afterAll(async () => {
  await app.close();
  overpass.stop();
  expect(faults).toEqual([]);
});

const url = () => `/api/trips/${trip.id}/overpass`;
const questionOf = async (query = '') => (await app.inject(url() + query)).json<OverpassQuestion>();
const ask = (payload: object) => app.inject({ method: 'POST', url: url(), payload });
const analysisWith = async (extract: string) => {
  const { id, rig, trip: said } = await bareTrip();
  await app.inject({ method: 'POST', url: `/api/trips/${id}/extracts`, payload: { revision: 1, extract } });
  const reply = await app.inject({
    method: 'POST',
    url: `/api/analyses/${id}`,
    payload: { rig, trip: said },
  });
  return reply.json<{ analysis: Analysis }>().analysis;
};

describe('a corridor asked of an Overpass server over HTTP', { tags: 'slow' }, () => {
  it('is shown first, and nothing is sent for that', async () => {
    const question = await questionOf();
    expect(Compile(OverpassQuestion).Errors(question)).toEqual([]);
    expect(question).toMatchObject({ corridorKm: 5, answered: 0, userAgent: 'drystage/test' });
    expect(question.requests).toBe(question.boxes.length);
    expect(question.requests).toBeGreaterThan(2);
    const [[west, south, east, north] = []] = question.boxes;
    expect(question.query).toContain(`(${south},${west},${north},${east})`);
    const wide = await questionOf('?corridorKm=20');
    expect(wide).toMatchObject({ corridorKm: 20, userAgent: 'drystage/test' });
    expect(wide.digest).not.toBe(question.digest);
    for (const km of ['500', '0', 'wide'])
      expect((await app.inject(`${url()}?corridorKm=${km}`)).json()).toMatchObject({
        code: 'request-invalid',
        place: 'corridorKm',
      });
    expect((await app.inject('/api/trips/none/overpass')).statusCode).toBe(404);
    expect(overpass.asked).toEqual([]);
  });

  it('is not asked for where something else was shown', async () => {
    const { digest } = await questionOf();
    const other = await ask({ digest, corridorKm: 20, name: 'Corridor' });
    expect(other.json()).toMatchObject({ code: 'changed-elsewhere', place: '/digest', status: 409 });
    expect(overpass.asked).toEqual([]);
  });

  it('tells how it goes on, goes on where it stopped, and becomes an extract that covers the corridor', async () => {
    // Answers are kept: run once more, it asks of a corridor of another width.
    corridorKm += 1;
    const { digest, requests } = await questionOf(`?corridorKm=${corridorKm}`);
    const before = overpass.asked.length;
    overpass.trick = (_asked, response, number) => {
      if (number !== before + 2) return false;
      response.writeHead(400).end('<html><body>Error: no such thing</body></html>');
      return true;
    };
    const refused = await ask({ digest, corridorKm, name: 'Corridor' });
    expect(refused.json()).toMatchObject({ code: 'overpass-refused', status: 502 });
    expect(refused.json().detail).toContain('no such thing');
    expect((await questionOf(`?corridorKm=${corridorKm}`)).answered).toBe(1);

    let reading: ExtractList['reading'] = [];
    overpass.trick = (asked, response) => {
      void app.inject('/api/extracts').then((list) => {
        reading = list.json<ExtractList>().reading;
        response.end(overpass.answerTo(asked));
      });
      return true;
    };
    const reply = await ask({ digest, corridorKm, name: 'Corridor' });
    expect(reply.statusCode).toBe(201);
    expect(overpass.asked).toHaveLength(before + 1 + requests);
    expect(reading).toMatchObject([
      { name: 'Corridor', stage: 'asking', asking: { done: requests - 1, requests, waiting: null } },
    ]);
    const extract = reply.json<KeptExtract>();
    expect(extract).toMatchObject({
      name: 'Corridor',
      fileName: 'corridor of short.gpx',
      format: 'overpass-json',
    });
    expect(extract).toMatchObject({ asOf: '2026-04-30T06:00:00Z', counts: { supplies: 2 } });
    expect(extract.outline).toHaveLength(requests);

    const { fuel, water, passings, extracts } = await analysisWith(extract.id);
    expect(extracts).toMatchObject([{ source: 'Corridor', asOf: '2026-04-30T06:00:00Z' }]);
    expect(passings.map(({ id, counts }) => [id, counts])).toEqual([
      ['node/1', true],
      ['node/2', true],
    ]);
    for (const { cover } of [fuel, water]) {
      expect(cover).toHaveLength(1);
      // Without roads a file speaks for what lies within 25 km of its objects.
      expect((cover[0]?.toKm ?? 0) - (cover[0]?.fromKm ?? 0)).toBeGreaterThan(30);
    }
    await app.inject({ method: 'DELETE', url: `/api/extracts/${extract.id}` });
  });

  it('is not asked for under a name that is taken', async () => {
    const kept = formOf([
      { name: 'extract', file: 'tap.osm', bytes: TAP },
      { name: 'name', text: 'Corridor' },
    ]);
    expect((await app.inject({ method: 'POST', url: '/api/extracts', ...kept })).statusCode).toBe(201);
    const { digest } = await questionOf();
    const before = overpass.asked.length;
    expect((await ask({ digest, corridorKm: 5, name: ' Corridor ' })).json()).toMatchObject({
      code: 'name-taken',
    });
    expect(overpass.asked).toHaveLength(before);
  });

  it('is called off with the connection', async () => {
    const { digest } = await questionOf('?corridorKm=6');
    const control = new AbortController();
    const gone = new Promise((resolve) => {
      overpass.trick = (_asked, response) => {
        void once(response, 'close').then(resolve);
        control.abort();
        return true;
      };
    });
    const asking = fetch(address + url(), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ digest, corridorKm: 6, name: 'Another' }),
      signal: control.signal,
    });
    await expect(asking).rejects.toThrow();
    await gone;
    const { extracts } = (await app.inject('/api/extracts')).json<ExtractList>();
    expect(extracts.map(({ name }) => name)).not.toContain('Another');
  });
});
