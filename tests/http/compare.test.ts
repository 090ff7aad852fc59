import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Comparison } from '../../server/contract/answers/compare.ts';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { buildApp } from '../../server/http/app.ts';

const faults: string[] = [];
let app: FastifyInstance;
let demo: AnalysisReply;
let larger: RigFile;
beforeAll(async () => {
  app = await buildApp({
    today: () => '2026-05-01',
    webFolder: '/nowhere',
    onFault: (text) => faults.push(text),
  });
  demo = (await app.inject('/api/demo')).json<AnalysisReply>();
  larger = structuredClone(demo.analysis.rig);
  larger.name = 'Long range';
  larger.fuel.tanks[0]!.litres = 300;
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const compare = (payload: unknown, id = 'demo') =>
  app.inject({ method: 'POST', url: `/api/analyses/${id}/compare`, payload: payload as object });

describe('rigs compared over HTTP', { tags: 'slow' }, () => {
  it('fits the contract, keeps the order and the notice', async () => {
    const { rig, trip } = demo.analysis;
    const response = await compare({ rigs: [larger, rig], trip });
    expect(response.statusCode).toBe(200);
    const comparison = response.json<Comparison>();
    expect(Compile(Comparison).Errors(comparison)).toEqual([]);
    expect(comparison.rigs.map((row) => row.name)).toEqual(['Long range', rig.name]);
    expect(comparison.notice).toBe('Orrimar is invented. Do not drive by it.');
  });

  it('gives each rig the figures of its own analysis', async () => {
    const { trip } = demo.analysis;
    const [row] = (await compare({ rigs: [larger], trip })).json<Comparison>().rigs;
    const alone = await app.inject({
      method: 'POST',
      url: '/api/analyses/demo',
      payload: { rig: larger, trip },
    });
    const { analysis } = alone.json<AnalysisReply>();
    for (const commodity of ['fuel', 'water'] as const) {
      const { gaps } = analysis[commodity];
      expect(row?.[commodity].gaps).toEqual(
        gaps.map((gap) => ({
          fromKm: gap.from.atKm,
          toKm: gap.to.atKm,
          verdict: gap.verdict,
          acrossNoData: gap.acrossNoData,
          marginL: gap.marginL,
        })),
      );
      expect(row?.[commodity].extraL).toBe(Math.max(...gaps.map((gap) => gap.extraL)));
    }
    expect(row?.days).toEqual(analysis.days.elapsedDays);
  });

  it.each([
    ['no rigs', {}, 400, 'request-invalid', '/rigs'],
    ['an empty list', { rigs: [] }, 400, 'request-invalid', '/rigs'],
    ['no list', { rigs: 'A' }, 400, 'request-invalid', '/rigs'],
    ['too many', { rigs: Array.from({ length: 13 }, () => ({})) }, 400, 'request-invalid', '/rigs'],
    ['an unknown key', { rigs: [], rig: {} }, 400, 'request-invalid', '/rig'],
  ] as const)('refuses %s', async (_name, payload, status, code, place) => {
    expect((await compare(payload)).json()).toMatchObject({ status, code, place });
  });

  it('names the rig and the key that is wrong, or the rig that the trip does not fit', async () => {
    const { rig, trip } = demo.analysis;
    const wrong = { ...rig, colour: 'sand' };
    expect((await compare({ rigs: [rig, wrong] })).json()).toMatchObject({
      code: 'rig-invalid',
      source: 'rig 2',
      place: '/colour',
    });
    const misfit = { ...trip, aboard: { fuelLitres: 200 } };
    const refused = (await compare({ rigs: [larger, rig], trip: misfit })).json<{ detail: string }>();
    expect(refused).toMatchObject({ code: 'trip-invalid', place: '/aboard/fuelLitres' });
    expect(refused.detail).toContain('200 l aboard with rig 2');
  });

  it('asks for what is no longer kept', async () => {
    const gone = await compare({ rigs: [demo.analysis.rig] }, 'no-such-id');
    expect(gone.json()).toMatchObject({ status: 404, code: 'not-found' });
  });
});
