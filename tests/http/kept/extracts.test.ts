import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import {
  ExtractList,
  ExtractsForTrip,
  type KeptExtract,
  type KeptTripReply,
} from '../../../server/contract/kept.ts';
import { buildApp } from '../../../server/http/app.ts';
import { demoBytes, formOf } from '../form.ts';

const faults: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({
    today: () => '2026-05-01',
    webFolder: '/nowhere',
    onFault: (text) => faults.push(text),
  });
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const keep = (bytes: Uint8Array | string, name?: string) =>
  app.inject({
    method: 'POST',
    url: '/api/extracts',
    ...formOf([
      { name: 'extract', file: 'land.osm.pbf', bytes },
      ...(name === undefined ? [] : [{ name: 'name', text: name }]),
    ]),
  });
const post = async (url: string, payload: object) => {
  const response = await app.inject({ method: 'POST', url, payload });
  return { status: response.statusCode, body: response.json() };
};
/** One tap in another part of the world. */
const FAR =
  '<osm version="0.6"><bounds minlat="10" minlon="10" maxlat="11" maxlon="11"/><node id="1" lat="10.5" lon="10.5"><tag k="amenity" v="drinking_water"/></node></osm>';
const listed = async () => (await app.inject('/api/extracts')).json<ExtractList>();

/** A trip on the demo's route with kept extracts. */
async function tripWith(...kept: string[]): Promise<KeptTripReply> {
  const form = formOf([
    { name: 'route', file: 'route.gpx', bytes: demoBytes('route.gpx') },
    { name: 'rig', text: String(demoBytes('rig.yaml')) },
    { name: 'trip', text: String(demoBytes('trip.yaml')) },
    ...kept.map((text) => ({ name: 'kept', text })),
  ]);
  return (await app.inject({ method: 'POST', url: '/api/trips', ...form })).json();
}

describe('kept extracts over HTTP', { tags: 'slow' }, () => {
  it('are sent once and used by trips, with the same answer as from the file', async () => {
    const demo = (await app.inject('/api/demo')).json<AnalysisReply>();
    const sent = await keep(demoBytes('orrimar.osm.pbf'), 'Orrimar');
    expect(sent.statusCode).toBe(201);
    const extract = sent.json<KeptExtract>();
    expect(extract).toMatchObject({ name: 'Orrimar', fileName: 'land.osm.pbf', format: 'pbf' });
    const list = await listed();
    expect(Compile(ExtractList).Errors(list)).toEqual([]);
    expect(list).toMatchObject({ extracts: [extract], reading: [], store: { keeps: 'memory' } });

    const trip = await tripWith(extract.id);
    expect(trip.extracts).toEqual([{ id: extract.id, name: 'Orrimar' }]);
    const { rig, trip: said } = trip;
    const { body } = await post(`/api/analyses/${trip.id}`, { rig, trip: said });
    const sources = demo.analysis.extracts.map((one) => ({ ...one, source: 'Orrimar' }));
    expect(body.analysis).toEqual({ ...demo.analysis, extracts: sources });
    const extracts = demo.map.extracts.map((one) => ({ ...one, source: 'Orrimar' }));
    expect({ ...body.map, notice: null }).toEqual({ ...demo.map, extracts, notice: null });
  });

  it('are recognised, named each for itself, and refused where they cannot be read', async () => {
    const again = await keep(demoBytes('orrimar.osm.pbf'), 'Another name');
    expect(again.json()).toMatchObject({ name: 'Orrimar' });
    expect((await keep(demoBytes('orrimar.osm'), 'Orrimar')).json()).toMatchObject({
      code: 'name-taken',
      status: 409,
    });
    expect((await keep('nonsense')).json()).toMatchObject({ code: 'unknown-format', source: 'land.osm.pbf' });
    expect((await keep('')).json()).toMatchObject({ code: 'empty-file' });
    expect((await listed()).extracts.map(({ name }) => name)).toEqual(['Orrimar']);
  });

  it('are added to a trip that has none, or others, and only once', async () => {
    const { id } = (await keep(demoBytes('orrimar.osm.pbf'), 'Orrimar')).json<KeptExtract>();
    const bare = await tripWith();
    expect(bare.extracts).toEqual([]);
    const analyse = async ({ id: of, rig, trip }: KeptTripReply) =>
      (await post(`/api/analyses/${of}`, { rig, trip })).body as AnalysisReply;
    expect((await analyse(bare)).analysis.passings.filter((one) => !one.id.startsWith('own/'))).toEqual([]);
    const far = (await keep(FAR, 'Far away')).json<KeptExtract>();
    const forTrip = async () => (await app.inject(`/api/trips/${bare.id}/extracts`)).json<ExtractsForTrip>();
    const before = await forTrip();
    expect(Compile(ExtractsForTrip).Errors(before)).toEqual([]);
    const [away, near] = before.extracts;
    expect(away).toMatchObject({ id: far.id, name: 'Far away', isUsed: false, supplies: 0 });
    expect(away?.offRouteKm).toBeGreaterThan(1_000);
    expect(near).toMatchObject({ id, isUsed: false, offRouteKm: 0 });
    expect(near?.supplies).toBeGreaterThan(10);
    await app.inject({ method: 'DELETE', url: `/api/extracts/${far.id}` });
    const added = await post(`/api/trips/${bare.id}/extracts`, { revision: 1, extract: id });
    expect((await forTrip()).extracts).toEqual([{ ...near, isUsed: true }]);
    expect(added).toMatchObject({ status: 200, body: { revision: 2, extracts: [{ id, name: 'Orrimar' }] } });
    const reply = await analyse(bare);
    expect(reply.analysis.passings.length).toBeGreaterThan(10);
    const twice = await post(`/api/trips/${bare.id}/extracts`, { revision: 2, extract: id });
    expect(twice.body.extracts).toHaveLength(1);
    const late = await post(`/api/trips/${bare.id}/extracts`, { revision: 1, extract: id });
    expect(late).toMatchObject({ status: 409, body: { code: 'changed-elsewhere' } });
    const off = (revision: number, name: string) =>
      post(`/api/trips/${bare.id}/extracts/remove`, { revision, name });
    expect((await off(3, 'Far away')).body).toMatchObject({ code: 'not-found' });
    expect((await off(2, 'Orrimar')).body).toMatchObject({ code: 'changed-elsewhere' });
    expect((await off(3, 'Orrimar')).body).toMatchObject({ revision: 4, extracts: [] });
    const without = await analyse(bare);
    expect(without.analysis.passings.filter((one) => !one.id.startsWith('own/'))).toEqual([]);
    expect([without.analysis.extracts, without.analysis.water.cover]).toEqual([[], []]);
    await post(`/api/trips/${bare.id}/extracts`, { revision: 4, extract: id });
    expect((await analyse(bare)).analysis).toEqual(reply.analysis);
    const none = await post(`/api/trips/${bare.id}/extracts`, { revision: 5, extract: 'none' });
    expect(none.body).toMatchObject({ code: 'not-found' });
    // Trips stay as they are when an extract goes.
    expect((await app.inject({ method: 'DELETE', url: `/api/extracts/${id}` })).statusCode).toBe(204);
    expect((await app.inject({ method: 'DELETE', url: `/api/extracts/${id}` })).statusCode).toBe(404);
    expect(await analyse(bare)).toEqual(reply);
    expect((await listed()).extracts).toEqual([]);
  });

  it('refuse a trip with one that is not kept', async () => {
    expect(await tripWith('none')).toMatchObject({ code: 'not-found' });
  });
});
