import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { AnalysisReply } from '../../../server/contract/answers/map.ts';
import type { KeptTripReply } from '../../../server/contract/kept.ts';
import { buildApp } from '../../../server/http/app.ts';
import { formOf } from '../form.ts';

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
  const left = readdirSync(tmpdir()).filter((name) => name.startsWith(`drystage-${process.pid}-import-`));
  expect(left).toEqual([]);
});

const imported = (bytes: Uint8Array | string, name = 'trip') =>
  app.inject({
    method: 'POST',
    url: '/api/trips/import',
    ...formOf([{ name, file: 'a.drystage.json', bytes }]),
  });

it('a trip goes out as a file and comes back with the same answer', { tags: 'slow' }, async () => {
  const demo = (await app.inject('/api/demo')).json<AnalysisReply>();
  const response = await app.inject('/api/trips/demo/export');
  expect(response.statusCode).toBe(200);
  expect(response.headers['content-disposition']).toBe(
    "attachment; filename*=UTF-8''Orrimar%20the%20demo.drystage.json",
  );
  const sent = await imported(response.rawPayload);
  expect(sent.statusCode).toBe(201);
  const trip = sent.json<KeptTripReply>();
  expect(trip).toMatchObject({ isDemo: false, revision: 1, notice: demo.map.notice, results: null });
  const { rig, trip: said } = trip;
  const url = `/api/analyses/${trip.id}`;
  const again = (
    await app.inject({ method: 'POST', url, payload: { rig, trip: said } })
  ).json<AnalysisReply>();
  expect(again).toEqual({ ...demo, id: trip.id });
  const second = await app.inject(`/api/trips/${trip.id}/export`);
  const plain = (text: string) => ({ ...JSON.parse(text), written: '' });
  expect(plain(second.body)).toEqual(plain(response.body));
});

it('a file of version 1 is taken', { tags: 'slow' }, async () => {
  const old = readFileSync(new URL('../../fixtures/store/version-1.drystage.json', import.meta.url));
  expect((await imported(old)).json()).toMatchObject({
    name: 'Along',
    extracts: [{ id: null, name: 'land.osm' }],
  });
});

it.each([
  ['{"drystage":"trip","version":', 'trip-file-invalid', 422],
  ['{"drystage":"trip","version":99}', 'trip-file-too-new', 422],
  ['', 'trip-file-invalid', 422],
])('a file of %j is refused: %s', { tags: 'slow' }, async (text, code, status) => {
  expect((await imported(text)).json()).toMatchObject({ code, status, source: 'a.drystage.json' });
});

it('a form without the file is refused', async () => {
  expect((await imported('{}', 'file')).json()).toMatchObject({ code: 'request-invalid', place: 'file' });
  const empty = await app.inject({ method: 'POST', url: '/api/trips/import', ...formOf([]) });
  expect(empty.json()).toMatchObject({ code: 'request-invalid', place: 'trip' });
  const json = await app.inject({ method: 'POST', url: '/api/trips/import', payload: {} });
  expect(json.json()).toMatchObject({ code: 'request-invalid', place: 'content-type' });
});
