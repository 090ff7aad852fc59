import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/map.ts';
import { PlanReply } from '../../server/contract/whatif.ts';
import { buildApp } from '../../server/http/app.ts';

const faults: string[] = [];
let app: FastifyInstance;
let demo: AnalysisReply;
beforeAll(async () => {
  app = await buildApp({
    today: () => '2026-05-01',
    webFolder: '/nowhere',
    onFault: (text) => faults.push(text),
  });
  demo = (await app.inject('/api/demo')).json<AnalysisReply>();
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const plan = (payload: object, id = 'demo') =>
  app.inject({ method: 'POST', url: `/api/analyses/${id}/plan`, payload });

describe('carry plan over HTTP', () => {
  it('fits the contract, with and without its extras, and is the same each time', async () => {
    const { rig, trip } = demo.analysis;
    const more = { ...trip, plan: { mostCans: { fuel: 6, water: 12 } } };
    for (const extras of [true, false]) {
      const response = await plan({ rig, trip: more, extras });
      expect(response.statusCode).toBe(200);
      expect(Compile(PlanReply).Errors(response.json())).toEqual([]);
      expect(response.json<PlanReply>().plan.status).toBe('found');
      expect((await plan({ rig, trip: more, extras })).body).toBe(response.body);
    }
  });

  it('refuses unknown keys, no rig, a bad rig and a trip that is gone', async () => {
    const { rig } = demo.analysis;
    expect((await plan({ rig, wishes: 1 })).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({})).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({ rig, extras: 3 })).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({ rig: { ...rig, fuel: 3 } })).json()).toMatchObject({ code: 'rig-invalid' });
    expect((await plan({ rig, trip: { plan: { mostCans: { fuel: -1 } } } })).json()).toMatchObject({
      code: 'trip-invalid',
    });
    expect((await plan({ rig }, 'none')).statusCode).toBe(404);
  });
});
