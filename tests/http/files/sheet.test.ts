import { describe, expect, it } from 'vitest';
import { demoApp } from './demo-app.ts';

const server = demoApp('2026-11-30');

const sheet = (payload: object, { id = 'demo', query = '' } = {}) =>
  server.app.inject({ method: 'POST', url: `/api/analyses/${id}/sheet${query}`, payload });

describe('the sheet over HTTP', { tags: 'slow' }, () => {
  it('is a whole page of the trip that is sent, of the paper that is asked for', async () => {
    const { rig, trip } = server.demo.analysis;
    const page = await sheet({ rig, trip });
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.body).toContain('size: A4');
    expect(page.body).toContain('With this plan the reserve is kept all the way.');
    // That the land is invented comes with what was read.
    expect(page.body).toContain('invented');
    const letter = await sheet(
      { rig, trip: { ...trip, plan: { mostCans: { fuel: 0, water: 0 } } } },
      { query: '?paper=letter' },
    );
    expect(letter.body).toContain('size: letter');
    expect(letter.body).toContain('No plan keeps the reserve.');
    expect(letter.body).toContain('What would help, each computed again');
  });

  it.each([
    ['without a rig', () => sheet({ trip: server.demo.analysis.trip }), 'rig'],
    [
      'on a paper that is none',
      () => sheet({ rig: server.demo.analysis.rig }, { query: '?paper=a5' }),
      'letter',
    ],
    [
      'of a trip that is gone',
      () => sheet({ rig: server.demo.analysis.rig }, { id: 'none' }),
      'Send the files again',
    ],
  ])('is refused in words %s', async (_, ask, words) => {
    const { statusCode, headers, body } = await ask();
    expect(statusCode).toBeGreaterThanOrEqual(400);
    expect(statusCode).toBeLessThan(500);
    expect(headers['content-type']).toContain('application/problem+json');
    expect(body).toContain(words);
  });
});
