import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { PlanReply } from '../../server/contract/whatif.ts';
import { buildApp } from '../../server/http/app.ts';
import { PLAN_SECONDS } from '../helpers/patience.ts';

let app: FastifyInstance;
let demo: AnalysisReply;
beforeAll(async () => {
  app = await buildApp({
    today: () => '2026-05-01',
    webFolder: '/nowhere',
    limits: { planSeconds: PLAN_SECONDS },
    onFault: () => {},
  });
  demo = (await app.inject('/api/demo')).json<AnalysisReply>();
});
afterAll(async () => {
  await app.close();
});

const soFar = (name: string) => app.inject(`/api/plans/${name}`);

/** Supplies that give little: what is best over them is for the solver to tell, which takes longer than a moment. */
const laidFor = (name: string) =>
  [480, 820, 1150].flatMap((atKm) => [
    { name: `Water at ${atKm} for ${name}`, commodity: 'water', litres: 40, atKm },
    { name: `Fuel at ${atKm} for ${name}`, commodity: 'fuel', litres: 60, atKm },
  ]);

describe('a plan that takes longer than a moment', { tags: 'slow' }, () => {
  it('has a good one to be asked for meanwhile, which the one that is sent is no worse than', async () => {
    const { rig, trip } = demo.analysis;
    const name = randomUUID();
    const payload = { rig, trip: { ...trip, laid: laidFor(name) }, extras: false, name };
    const seen: PlanReply[] = [];
    let isMade = false;
    const making = app.inject({ method: 'POST', url: '/api/analyses/demo/plan', payload }).finally(() => {
      isMade = true;
    });
    while (!isMade) {
      const response = await soFar(name);
      expect([200, 204]).toContain(response.statusCode);
      if (response.statusCode === 200) seen.push(response.json<PlanReply>());
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    const last = (await making).json<PlanReply>();
    expect(last.plan.status).toBe('found');
    const [first] = seen;
    if (first === undefined) throw new Error('no plan was told meanwhile');
    expect(Compile(PlanReply).Errors(first)).toEqual([]);
    expect(first.plan.status).toBe('found');
    expect(first.plan.aims.some(({ proven }) => !proven)).toBe(true);
    for (const [index, { value }] of last.plan.aims.entries()) {
      const before = first.plan.aims[index]?.value ?? Number.POSITIVE_INFINITY;
      // The first aim in which they differ is the better one's.
      if (Math.abs(value - before) < 1e-6) continue;
      expect(value).toBeLessThan(before);
      break;
    }
    expect((await soFar(name)).statusCode).toBe(204);
  });

  it('is told to nobody who does not know its name, and a name that is none is refused', async () => {
    expect((await soFar(randomUUID())).statusCode).toBe(204);
    const refused = await soFar('short');
    expect(refused.statusCode).toBe(400);
    const { detail, remedy } = refused.json<{ detail: string; remedy: string }>();
    expect(detail).toContain('"short"; expected a name of 16 to 64');
    expect(remedy).toContain('at random');
  });
});
