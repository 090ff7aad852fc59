import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AnalysisReply } from '../../server/contract/answers/map.ts';
import { buildApp } from '../../server/http/app.ts';
import { demoBytes, demoForm, formOf } from './form.ts';

const TODAY = '2026-05-01';
const faults: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({
    today: () => TODAY,
    webFolder: '/nowhere',
    onFault: (text) => faults.push(text),
    limits: { keptTrips: 2, fileBytes: 3_000_000, requestBytes: 4_000_000, extracts: 2 },
  });
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const post = (form: ReturnType<typeof formOf>) =>
  app.inject({ method: 'POST', url: '/api/analyses', ...form });
const again = (id: string, body: unknown) =>
  app.inject({ method: 'POST', url: `/api/analyses/${id}`, payload: body as object });

describe('the demo over HTTP', { tags: 'slow' }, () => {
  it('fits the contract, names itself and says that it is invented', async () => {
    const response = await app.inject('/api/demo');
    expect(response.statusCode).toBe(200);
    expect(response.headers['content-type']).toBe('application/json; charset=utf-8');
    const reply = response.json<AnalysisReply>();
    expect(Compile(AnalysisReply).Errors(reply)).toEqual([]);
    expect(reply.id).toBe('demo');
    expect(reply.map.notice).toBe('Orrimar is invented. Do not drive by it.');
    expect(reply.map.ground.features.length).toBeGreaterThan(10);
  });

  it('is analysed again with another rig', async () => {
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const before = analysis.fuel.gaps.map((gap) => gap.verdict);
    expect(before).toContain('short');
    const rig = structuredClone(analysis.rig);
    rig.fuel.tanks[0]!.litres = 1000;
    const response = await again('demo', { rig, trip: analysis.trip });
    expect(response.statusCode).toBe(200);
    const after = response.json<AnalysisReply>().analysis;
    expect(after.fuel.gaps.map((gap) => gap.verdict)).not.toContain('short');
    expect(after.fuel.capacityL).toBe(997);
    expect(after.water).toEqual(analysis.water);
  });

  it('comes to a planner of its own, whose refusals are told as they are', async () => {
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const payload = { rig: analysis.rig, trip: { part: 99 } };
    const response = await app.inject({ method: 'POST', url: '/api/analyses/demo/plan', payload });
    expect(response.json()).toMatchObject({ status: 422, code: 'part-unknown' });
  });

  it('gives the same answer for its own files sent by form, in any order of the parts', async () => {
    const demo = (await app.inject('/api/demo')).json<AnalysisReply>();
    const sent = await post(
      formOf([
        { name: 'trip', file: 'trip.yaml', bytes: demoBytes('trip.yaml') },
        { name: 'rig', file: 'rig.yaml', bytes: demoBytes('rig.yaml') },
        { name: 'extract', file: 'any name.osm', bytes: demoBytes('orrimar.osm.pbf') },
        { name: 'route', file: 'C:\\trips\\route.gpx', bytes: demoBytes('route.gpx') },
      ]),
    );
    expect(sent.statusCode).toBe(200);
    const reply = sent.json<AnalysisReply>();
    // The demo's extract has another name; what it says of its age is the same.
    const { extracts } = demo.analysis;
    expect(reply.analysis).toEqual({
      ...demo.analysis,
      extracts: extracts.map((extract) => ({ ...extract, source: 'any name.osm' })),
    });
    const outlines = demo.map.extracts.map((outline) => ({ ...outline, source: 'any name.osm' }));
    expect(outlines.length).toBeGreaterThan(0);
    expect({ ...reply.map, notice: null }).toEqual({ ...demo.map, extracts: outlines, notice: null });
    expect(reply.map.notice).toBeNull();
    const same = await again(reply.id, { rig: reply.analysis.rig, trip: reply.analysis.trip });
    expect(same.json<AnalysisReply>().analysis.fuel.gaps).toEqual(reply.analysis.fuel.gaps);
  });
});

describe('a request that cannot be used', () => {
  const route = { name: 'route', file: 'route.gpx', bytes: '<gpx' } as const;
  const extract = { name: 'extract', file: 'a.osm', bytes: 'x' } as const;
  const rig = { name: 'rig', text: '{}' } as const;

  it.each([
    ['no route', [extract, rig], 400, 'request-invalid', 'route'],
    ['no extract', [route, rig], 400, 'request-invalid', 'extract'],
    ['no rig', [route, extract], 400, 'request-invalid', 'rig'],
    ['two routes', [route, route, extract, rig], 400, 'request-invalid', 'route'],
    ['two rigs', [route, extract, rig, rig], 400, 'request-invalid', 'rig'],
    ['too many extracts', [route, extract, extract, extract, rig], 400, 'request-invalid', 'extract'],
    [
      'an unknown field',
      [route, extract, rig, { name: 'colour', text: 'sand' }],
      400,
      'request-invalid',
      'colour',
    ],
    ['a route as text', [{ name: 'route', text: '<gpx/>' }, extract, rig], 400, 'request-invalid', 'route'],
    ['an empty form', [], 400, 'request-invalid', 'route'],
    ['a huge rig', [route, extract, { name: 'rig', text: 'a'.repeat(600_000) }], 413, 'too-large', 'rig'],
  ] as const)('has %s', async (_name, parts, status, code, place) => {
    const response = await post(formOf(parts));
    expect(response.headers['content-type']).toBe('application/problem+json');
    expect(response.json()).toMatchObject({ status, code, place });
    expect(response.statusCode).toBe(status);
  });

  it('has a file or a whole over the limit', async () => {
    const big = new Uint8Array(3_500_000);
    const file = await post(demoForm({ extract: big }));
    expect(file.json()).toMatchObject({ status: 413, code: 'too-large' });
    const whole = await post(
      formOf([
        { name: 'extract', file: 'a', bytes: new Uint8Array(2_500_000) },
        { name: 'extract', file: 'b', bytes: new Uint8Array(2_500_000) },
      ]),
    );
    expect(whole.json()).toMatchObject({ status: 413, code: 'too-large', place: 'the request' });
  });

  it('is no form, no JSON, or of no known type', async () => {
    const url = '/api/analyses';
    const json = await app.inject({ method: 'POST', url, payload: { route: 'x' } });
    expect(json.json()).toMatchObject({ status: 400, code: 'request-invalid', place: 'content-type' });
    const headers = { 'content-type': 'application/json' };
    const broken = await app.inject({ method: 'POST', url: `${url}/demo`, headers, payload: '{"rig":' });
    expect(broken.json()).toMatchObject({ status: 400, code: 'request-invalid' });
    const type = await app.inject({
      method: 'POST',
      url,
      headers: { 'content-type': 'text/csv' },
      payload: 'a,b',
    });
    expect(type.json()).toMatchObject({ status: 400, code: 'request-invalid' });
    const cut = demoForm();
    const half = await post({ ...cut, payload: cut.payload.subarray(0, cut.payload.length / 2) });
    expect(half.json()).toMatchObject({ status: 400, code: 'request-invalid' });
  });

  it('names the key of a rig or trip that is wrong', { tags: 'slow' }, async () => {
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const rigged = structuredClone(analysis.rig);
    rigged.fuel.tanks[0]!.litres = -3;
    expect((await again('demo', { rig: rigged })).json()).toMatchObject({
      status: 422,
      code: 'rig-invalid',
      source: 'rig',
      place: '/fuel/tanks/0/litres',
      detail: 'rig, /fuel/tanks/0/litres: -3; expected a number above 0 and at most 5000, in litres.',
    });
    const trip = { ...analysis.trip, corridor: 4 };
    expect((await again('demo', { rig: analysis.rig, trip })).json()).toMatchObject({
      code: 'trip-invalid',
      source: 'trip',
      place: '/corridor',
      remedy: 'Did you mean "corridorKm".',
    });
    expect((await again('demo', { trip })).json()).toMatchObject({ code: 'request-invalid', place: '/rig' });
    expect((await again('demo', { rig: analysis.rig, trips: 1 })).json()).toMatchObject({ place: '/trips' });
    expect((await post(demoForm({ rig: 'fuel: [' }))).json()).toMatchObject({
      code: 'yaml-broken',
      source: 'rig',
    });
  });

  it('asks for what is not there', async () => {
    expect((await app.inject('/api/nothing')).json()).toMatchObject({ status: 404, code: 'not-found' });
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const gone = await again('no-such-id', { rig: analysis.rig });
    expect(gone.json()).toMatchObject({ status: 404, code: 'not-found', remedy: 'Send the files again.' });
  });

  it('asks for a part that the route has not', async () => {
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const response = await again('demo', { rig: analysis.rig, trip: { part: 99 } });
    expect(response.json()).toMatchObject({ status: 422, code: 'part-unknown' });
  });
});

describe('the server', { tags: 'slow' }, () => {
  it('keeps the last used trips and lets the others go', async () => {
    const ids: string[] = [];
    for (let i = 0; i < 3; i += 1) ids.push((await post(demoForm())).json<AnalysisReply>().id);
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const statuses = [];
    for (const id of ids) statuses.push((await again(id, { rig: analysis.rig })).statusCode);
    expect(statuses).toEqual([404, 200, 200]);
  });

  it('leaves no upload behind on the disk', async () => {
    await post(demoForm());
    await post(demoForm({ route: 'nonsense' }));
    const prefix = `drystage-${process.pid}-`;
    expect(readdirSync(tmpdir()).filter((name) => name.startsWith(prefix))).toEqual([]);
  });

  it('documents every address with the schemas that it uses', async () => {
    const document = (await app.inject('/api/docs/json')).json<{ paths: Record<string, object> }>();
    expect(Object.keys(document.paths).sort()).toEqual([
      '/api/analyses',
      '/api/analyses/{id}',
      '/api/analyses/{id}/compare',
      '/api/analyses/{id}/files/{format}',
      '/api/analyses/{id}/plan',
      '/api/analyses/{id}/sheet',
      '/api/demo',
      '/api/extracts',
      '/api/extracts/readings',
      '/api/extracts/readings/{id}',
      '/api/extracts/{id}',
      '/api/health',
      '/api/logs',
      '/api/notes/export',
      '/api/notes/import',
      '/api/plans/{name}',
      '/api/rig-files',
      '/api/rigs',
      '/api/rigs/{name}',
      '/api/session',
      '/api/trip-files',
      '/api/trips',
      '/api/trips/demo/reset',
      '/api/trips/import',
      '/api/trips/{id}',
      '/api/trips/{id}/changes',
      '/api/trips/{id}/duplicate',
      '/api/trips/{id}/export',
      '/api/trips/{id}/extracts',
      '/api/trips/{id}/extracts/remove',
      '/api/trips/{id}/overpass',
      '/api/trips/{id}/restore',
      '/api/trips/{id}/stand',
    ]);
    expect(JSON.stringify(document)).toContain('unusableLitres');
    expect((await app.inject('/api/docs/')).statusCode).toBe(200);
  });

  it('says how to build the page when it is not built', async () => {
    expect((await app.inject('/')).body).toContain('npm run build');
  });

  it('sends a content security policy and asks no upgrade to HTTPS', async () => {
    const policy = String((await app.inject('/api/health')).headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain('upgrade-insecure-requests');
  });

  it.each([
    ['127.0.0.1', 4],
    ['127.8.9.10', 4],
    ['::1', 4],
    ['::ffff:127.0.0.1', 4],
    ['192.0.2.7', 2],
    ['2001:db8::1', 2],
    // Not this machine, though it looks a little like it.
    ['12.7.0.1', 2],
    ['::11', 2],
  ])('counts the requests of %s for itself: %i in a minute', async (remoteAddress, allowed) => {
    const limits = { requestsPerMinuteLocal: 4, requestsPerMinute: 2 };
    const strict = await buildApp({ webFolder: '/nowhere', limits });
    try {
      const ask = async (from: string) =>
        (await strict.inject({ url: '/api/health', remoteAddress: from })).statusCode;
      // Somebody else's requests take nothing away.
      expect(await ask('198.51.100.20')).toBe(200);
      const statuses = [];
      for (let i = 0; i <= allowed; i += 1) statuses.push(await ask(remoteAddress));
      expect(statuses).toEqual([...Array.from({ length: allowed }, () => 200), 429]);
    } finally {
      await strict.close();
    }
  });

  it('allows others 300 requests in a minute, and this machine what it wants', async () => {
    const limitFor = async (remoteAddress: string) =>
      (await app.inject({ url: '/api/health', remoteAddress })).headers['x-ratelimit-limit'];
    expect(await limitFor('192.0.2.7')).toBe('300');
    expect(await limitFor('127.0.0.1')).toBe('60000');
  });

  it('refuses more requests in a minute than allowed', async () => {
    const strict = await buildApp({ webFolder: '/nowhere', limits: { requestsPerMinuteLocal: 2 } });
    try {
      const statuses = [];
      for (let i = 0; i < 3; i += 1) statuses.push((await strict.inject('/api/health')).statusCode);
      expect(statuses).toEqual([200, 200, 429]);
      const refused = await strict.inject('/api/health');
      expect(refused.headers['content-type']).toBe('application/problem+json');
      expect(refused.json()).toMatchObject({ status: 429, code: 'too-many-requests' });
    } finally {
      await strict.close();
    }
  });
});
