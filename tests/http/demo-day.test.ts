import { expect, it } from 'vitest';
import { buildApp } from '../../server/http/app.ts';
import { AnalysisService } from '../../server/http/service/analysis-service.ts';
import { DEFAULT_LIMITS } from '../../server/http/service/limits.ts';
import { memoryStore } from '../../server/store/open-store.ts';

it('the demo is reckoned once a day, from the first request on', { tags: 'slow' }, async () => {
  let day = '2026-05-01';
  const service = new AnalysisService({
    limits: DEFAULT_LIMITS,
    today: () => day,
    onFault: () => {},
    store: memoryStore(),
  });
  try {
    const first = await service.demo();
    expect(await service.demo()).toBe(first);
    day = '2026-05-02';
    expect(await service.demo()).not.toBe(first);
  } finally {
    await service.close();
  }
});

it('a server that has just started answers in JSON', async () => {
  const app = await buildApp({ webFolder: '/nowhere' });
  try {
    const response = await app.inject('/api/health');
    expect(response.headers['content-type']).toContain('application/json');
    expect(JSON.parse(response.body)).toMatchObject({ ok: true });
  } finally {
    await app.close();
  }
});
