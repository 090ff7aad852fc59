import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { buildApp } from '../../server/http/app.ts';
import type { ProblemReply } from '../../server/http/reply/problem-reply.ts';
import { BAD_INPUTS, EXTRACT_ELSEWHERE } from '../helpers/bad-inputs.ts';
import { demoForm } from './form.ts';

const faults: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere', onFault: (text) => faults.push(text) });
});
afterAll(() => app.close());

const post = (form: ReturnType<typeof demoForm>) =>
  app.inject({ method: 'POST', url: '/api/analyses', ...form });

describe('a bad input over HTTP', () => {
  it.each(BAD_INPUTS)('$name is refused with $code, and the server goes on', async (bad) => {
    const response = await post(demoForm({ [bad.role]: bad.content }));
    const body = response.json<ProblemReply>();
    expect(body).toMatchObject({ code: bad.code, status: response.statusCode });
    expect(response.statusCode).toBeLessThan(500);
    expect(body.source).not.toBeNull();
    if (bad.place !== null) expect(body.place).toMatch(bad.place);
    expect(body.detail).not.toMatch(/\n|\/tmp\/|node_modules/);
    expect(body.remedy.length).toBeGreaterThan(5);
    expect(faults).toEqual([]);
    expect((await app.inject('/api/health')).json()).toMatchObject({ ok: true });
  });

  it('an extract elsewhere is a caution that names it', async () => {
    const response = await post(demoForm({ extract: EXTRACT_ELSEWHERE }));
    expect(response.statusCode).toBe(200);
    const { analysis } = response.json<AnalysisReply>();
    const caution = analysis.cautions.find(({ code }) => code === 'extract-off-route');
    expect(caution?.text).toContain('orrimar.osm.pbf does not touch');
    // Nothing is known of this land then, so no gap may look safe for having data.
    expect(analysis.fuel.cover).toEqual([]);
    expect(analysis.fuel.gaps.every((gap) => gap.acrossNoData || gap.verdict === 'unknown')).toBe(true);
  });

  it('after all of these a good request is answered', { tags: 'slow' }, async () => {
    expect((await post(demoForm())).statusCode).toBe(200);
  });
});
