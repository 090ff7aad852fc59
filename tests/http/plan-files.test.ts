import { readFile } from 'node:fs/promises';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { buildApp } from '../../server/http/app.ts';
import type { ProblemReply } from '../../server/http/reply/problem-reply.ts';
import { readRigFile } from '../../server/io/rig-file.ts';
import { readTripFile } from '../../server/io/trip-file.ts';
import { FULL_RIG, FULL_TRIP } from '../helpers/full-plan.ts';
import { demoPath } from './form.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere' });
});
afterAll(() => app.close());

const post = (url: string, payload: string, type = 'text/plain') =>
  app.inject({ method: 'POST', url, headers: { 'content-type': type }, payload });

describe('rig and trip files sent as text', () => {
  it('come back as the command line reads them', async () => {
    const rig = await readRigFile(demoPath('rig.yaml'));
    const trip = await readTripFile(demoPath('trip.yaml'), null);
    if (!rig.ok || !trip.ok) throw new Error('the demo does not read');
    const [rigText, tripText] = await Promise.all([
      readFile(demoPath('rig.yaml'), 'utf8'),
      readFile(demoPath('trip.yaml'), 'utf8'),
    ]);
    expect((await post('/api/rig-files', rigText)).json()).toEqual({ rig: rig.value });
    expect((await post('/api/trip-files', tripText)).json()).toEqual({ trip: trip.value });
  });

  it('keep every field when saved as JSON and opened again', async () => {
    expect((await post('/api/rig-files', JSON.stringify(FULL_RIG, null, 2))).json()).toEqual({
      rig: FULL_RIG,
    });
    expect((await post('/api/trip-files', JSON.stringify(FULL_TRIP, null, 2))).json()).toEqual({
      trip: FULL_TRIP,
    });
  });

  it('name the key and its line when a value will not do', async () => {
    const text = [
      'fuel:',
      '  kind: diesel',
      '  litresPer100Km: 12',
      '  tanks: [{ name: main, litres: -3 }]',
      'water: { litresPerDay: 10, tanks: [{ name: jug, litres: 20 }] }',
      'pace: { hoursPerDay: 6, kmPerHour: 50 }',
    ].join('\n');
    const response = await post('/api/rig-files', text);
    expect(response.statusCode).toBe(422);
    const body = response.json<ProblemReply>();
    expect(body).toMatchObject({ code: 'rig-invalid' });
    expect(body.place).toBe('/fuel/tanks/0/litres (line 4)');
    expect(body.detail).toContain('-3');
  });

  it.each([
    ['/api/rig-files', 'fuel: [unclosed', 'yaml-broken'],
    ['/api/rig-files', '', 'empty-file'],
    ['/api/trip-files', 'corridorKm: 5\nspeed: 4\n', 'trip-invalid'],
    ['/api/trip-files', `name: ${'x'.repeat(600_000)}`, 'too-large'],
  ])('%s refuses what is none', async (url, text, code) => {
    const response = await post(url, text);
    expect(response.json<ProblemReply>().code).toBe(code);
    expect(response.statusCode).toBeLessThan(500);
  });

  it('must come as text', async () => {
    const response = await post('/api/rig-files', '{"rig":{}}', 'application/json');
    expect(response.json<ProblemReply>()).toMatchObject({ code: 'request-invalid', status: 400 });
  });

  it.each(['rig', 'trip'] as const)('say of a %s file how it must come', async (kind) => {
    const own = await buildApp({ webFolder: '/nowhere' });
    const response = await own.inject({ method: 'POST', url: `/api/${kind}-files`, payload: { [kind]: {} } });
    await own.close();
    const { detail, remedy } = response.json<ProblemReply>();
    expect(detail).toContain(`expected the text of a ${kind} file as text/plain`);
    expect(remedy).toBe(`Send the ${kind} file's text.`);
  });
});

describe('an analysis', { tags: 'slow' }, () => {
  it('gives rig and trip back as they were sent, so that the page saves what was said and no more', async () => {
    const response = await app.inject({
      method: 'POST',
      url: '/api/analyses/demo',
      payload: { rig: FULL_RIG, trip: FULL_TRIP },
    });
    const reply = response.json<AnalysisReply>();
    expect(response.statusCode, response.body.slice(0, 300)).toBe(200);
    expect(reply.said).toEqual({ rig: FULL_RIG, trip: FULL_TRIP });
  });
});
