import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import { KeptTripReply, PICTURE_PIECES, TripChanges, TripList } from '../../../server/contract/kept.ts';
import { buildApp } from '../../../server/http/app.ts';
import { memoryStore } from '../../../server/store/open-store.ts';
import { demoBytes, formOf } from '../form.ts';

const TODAY = '2026-05-01';
const faults: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({
    today: () => TODAY,
    webFolder: '/nowhere',
    store: memoryStore('a test'),
    onFault: (text) => faults.push(text),
    limits: { keptTrips: 1 },
  });
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const send = async (method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE', url: string, payload?: object) => {
  const response = await app.inject({ method, url, ...(payload !== undefined && { payload }) });
  return { status: response.statusCode, body: response.json() };
};
const trip = async (id: string) => (await app.inject(`/api/trips/${id}`)).json<KeptTripReply>();

const demoParts = (name?: string) =>
  formOf([
    { name: 'route', file: 'C:\\trips\\across.gpx', bytes: demoBytes('route.gpx') },
    { name: 'extract', file: 'orrimar.osm.pbf', bytes: demoBytes('orrimar.osm.pbf') },
    { name: 'rig', text: String(demoBytes('rig.yaml')) },
    { name: 'trip', text: String(demoBytes('trip.yaml')) },
    ...(name === undefined ? [] : [{ name: 'name', text: name }]),
  ]);

async function added(name?: string): Promise<KeptTripReply> {
  const response = await app.inject({ method: 'POST', url: '/api/trips', ...demoParts(name) });
  expect(response.statusCode).toBe(201);
  return response.json();
}

describe('kept trips over HTTP', { tags: 'slow' }, () => {
  it('begin with the demo, and say where they are kept', async () => {
    const list = (await app.inject('/api/trips')).json<TripList>();
    expect(Compile(TripList).Errors(list)).toEqual([]);
    expect(list.store).toEqual({ keeps: 'memory', folder: null, why: 'a test' });
    expect(list.trips).toMatchObject([{ id: 'demo', isDemo: true, revision: 1, results: null }]);
    expect(list.trips[0]?.notice).toContain('invented');
  });

  it('are made of an upload and answered under their id, also when memory has let them go', async () => {
    const { analysis } = (await app.inject('/api/demo')).json<AnalysisReply>();
    const mine = await added('Mine');
    const other = await added();
    expect(Compile(KeptTripReply).Errors(mine)).toEqual([]);
    expect([mine.name, other.name]).toEqual(['Mine', 'across']);
    expect(mine).toMatchObject({
      route: { fileName: 'across.gpx', bytes: demoBytes('route.gpx').length },
      extracts: [{ id: null, name: 'orrimar.osm.pbf' }],
      revision: 1,
    });
    for (const { id, rig, trip: said } of [mine, other, mine]) {
      const { status, body } = await send('POST', `/api/analyses/${id}`, { rig, trip: said });
      expect(status).toBe(200);
      expect(body.id).toBe(id);
      expect(body.analysis).toEqual(analysis);
      expect(body.map.notice).toBeNull();
    }
    const { body } = await send('POST', `/api/analyses/${mine.id}/compare`, { rigs: [mine.rig] });
    expect(body.rigs).toHaveLength(1);
  });

  it('take changes one after the other, and tell both versions where one comes too late', async () => {
    const { id, rig, trip: said } = await added();
    const change = { revision: 1, rig, trip: { ...said, corridorKm: 7 }, change: 'Corridor 7 km' };
    const { status, body } = await send('PUT', `/api/trips/${id}`, change);
    expect([status, body.revision, body.trip.corridorKm, body.standsAt]).toEqual([200, 2, 7, 1]);
    const late = await send('PUT', `/api/trips/${id}`, { ...change, change: 'Corridor 8 km' });
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({ code: 'changed-elsewhere', status: 409, kept: { revision: 2 } });
    expect(late.body.detail).toContain('A change of revision 1 of a trip that is at 2');
    expect(late.body.kept).toEqual(await trip(id));
    const changes = (await app.inject(`/api/trips/${id}/changes`)).json<TripChanges>();
    expect(Compile(TripChanges).Errors(changes)).toEqual([]);
    expect(changes.changes.map((entry) => entry.change)).toEqual(['Corridor 7 km', 'Read from across.gpx']);
    const undone = await send('POST', `/api/trips/${id}/stand`, { revision: 2, seq: 0 });
    expect(undone.body).toMatchObject({ revision: 3, standsAt: 0, trip: said });
    expect((await send('POST', `/api/trips/${id}/stand`, { revision: 3, seq: 5 })).status).toBe(404);
  });

  it('are renamed, noted, copied, deleted and restored', async () => {
    const { id } = await added('One');
    const name = `Two ${randomUUID()}`;
    const named = await send('PATCH', `/api/trips/${id}`, { revision: 1, name, notes: 'dry' });
    expect(named.body).toMatchObject({ name, notes: 'dry', revision: 2 });
    const copy = await send('POST', `/api/trips/${id}/duplicate`, {});
    expect([copy.status, copy.body.name, copy.body.notes]).toEqual([201, `${name} (2)`, 'dry']);
    expect((await send('DELETE', `/api/trips/${id}`)).body.deletedAt).not.toBeNull();
    const ids = async (query = '') =>
      (await app.inject(`/api/trips${query}`)).json<TripList>().trips.map((entry) => entry.id);
    expect(await ids()).not.toContain(id);
    expect(await ids()).toContain(copy.body.id);
    expect(await ids('?deleted=true')).toEqual([id]);
    expect((await send('POST', `/api/trips/${id}/restore`, {})).body.deletedAt).toBeNull();
    // The address says all: no body is as good as an empty one.
    await send('DELETE', `/api/trips/${id}`);
    expect((await send('POST', `/api/trips/${id}/restore`)).body.deletedAt).toBeNull();
    expect(await ids()).toContain(id);
  });

  it('keep what their last analysis came to, whichever comes first, the analysis or the write', async () => {
    const { id, rig, trip: said } = await added();
    const analyse = (corridorKm: number) =>
      send('POST', `/api/analyses/${id}`, { rig, trip: { ...said, corridorKm } });
    await send('POST', `/api/analyses/${id}`, { rig, trip: said });
    const { results } = await trip(id);
    expect(results?.fuel.verdict).toBe('short');
    expect(results?.fuel.shares).toHaveLength(PICTURE_PIECES);
    expect(new Set(results?.fuel.verdicts)).toContain('short');
    expect(Math.max(...(results?.water.shares ?? []))).toBeLessThanOrEqual(1);
    await analyse(6);
    expect((await trip(id)).results).toEqual(results);
    const change = { rig, trip: { ...said, corridorKm: 6 }, change: 'Corridor 6 km' };
    const { body } = await send('PUT', `/api/trips/${id}`, { ...change, revision: 1 });
    expect(body.results.lengthKm).toBeCloseTo(results?.lengthKm ?? 0, 6);
    const next = { ...change, trip: { ...said, corridorKm: 8 }, revision: 2 };
    expect((await send('PUT', `/api/trips/${id}`, next)).body.results).toBeNull();
    await analyse(8);
    expect((await trip(id)).results).not.toBeNull();
  });

  it('have the demo among them, which is set back to its first state', async () => {
    const { rig, trip: said, revision } = await trip('demo');
    const change = { revision, rig, trip: { ...said, corridorKm: 9 }, change: 'Corridor 9 km' };
    const isChanged = async () => {
      const { body } = await send('GET', '/api/trips');
      return body.trips.find(({ id }: { id: string }) => id === 'demo').isChanged;
    };
    expect(await isChanged()).toBe(false);
    expect((await send('PUT', '/api/trips/demo', change)).status).toBe(200);
    expect(await isChanged()).toBe(true);
    const copy = (await send('POST', '/api/trips/demo/duplicate', { name: 'Demo at 9 km' })).body;
    expect(copy).toMatchObject({ isDemo: false, notice: 'Orrimar is invented. Do not drive by it.' });
    const { body } = await send('POST', `/api/analyses/${copy.id}`, { rig, trip: said });
    expect([body.id, body.map.notice]).toEqual([copy.id, copy.notice]);
    expect((await send('POST', '/api/trips/demo/reset', {})).body).toMatchObject({
      isDemo: true,
      trip: said,
    });
    expect((await trip('demo')).trip).toEqual(said);
    // It has another revision now, and is as it was.
    expect(await isChanged()).toBe(false);
    const late = await send('PUT', '/api/trips/demo', { ...change, revision: revision + 1 });
    expect(late.status).toBe(409);
  });
});

describe('requests for kept trips that cannot be used', () => {
  it.each([
    ['GET', '/api/trips/nobody', undefined, 404, 'not-found'],
    ['GET', '/api/trips/nobody/changes', undefined, 404, 'not-found'],
    ['DELETE', '/api/trips/nobody', undefined, 404, 'not-found'],
    ['POST', '/api/trips/nobody/duplicate', {}, 404, 'not-found'],
    ['POST', '/api/trips/nobody/stand', { revision: 1, seq: 0 }, 404, 'not-found'],
    ['PATCH', '/api/trips/nobody', { revision: 1, name: 'a' }, 404, 'not-found'],
    ['PATCH', '/api/trips/demo', { name: 'a' }, 400, 'request-invalid'],
    ['PATCH', '/api/trips/demo', { revision: 1, name: ' ' }, 400, 'request-invalid'],
    ['PUT', '/api/trips/demo', { revision: 1, rig: {}, trip: {}, change: 'c' }, 422, 'rig-invalid'],
    ['GET', '/api/trips?deleted=perhaps', undefined, 400, 'request-invalid'],
  ] as const)('%s %s %j: %i %s', async (method, url, payload, status, code) => {
    const { body } = await send(method, url, payload);
    expect(body).toMatchObject({ status, code });
  });

  it('is an upload without a route', async () => {
    const form = formOf([{ name: 'rig', text: String(demoBytes('rig.yaml')) }]);
    const response = await app.inject({ method: 'POST', url: '/api/trips', ...form });
    expect(response.json()).toMatchObject({ status: 400, code: 'request-invalid', place: 'route' });
  });
});

describe('kept rigs over HTTP', () => {
  it('are put, listed and taken away', async () => {
    const { rig } = await trip('demo');
    const url = '/api/rigs/Old%20wagon';
    expect((await send('PUT', url, { rig })).body).toMatchObject({ name: 'Old wagon', rig });
    expect((await send('GET', '/api/rigs')).body.rigs).toMatchObject([{ name: 'Old wagon' }]);
    expect((await app.inject({ method: 'DELETE', url })).statusCode).toBe(204);
    expect((await app.inject({ method: 'DELETE', url })).json()).toMatchObject({ code: 'not-found' });
    expect((await send('PUT', url, { rig: {} })).body).toMatchObject({ code: 'rig-invalid' });
  });
});
