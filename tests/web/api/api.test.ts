import { afterEach, describe, expect, it, vi } from 'vitest';
import { ApiProblem, detailsOf, getDemo, problemFrom, reanalyse } from '../../../web/api/api.ts';
import { sampleReply } from '../sample-reply.ts';

afterEach(() => vi.unstubAllGlobals());

const refusal = {
  type: 'about:blank',
  title: 'Rig not usable',
  status: 422,
  detail: 'rig, /fuel/tanks/0/litres: -5; expected a number above 0. Give the litres.',
  code: 'rig-invalid',
  source: 'rig',
  place: '/fuel/tanks/0/litres',
  remedy: 'Give the litres',
};

describe('the client', () => {
  it('keeps code, place and remedy of a refusal', async () => {
    vi.stubGlobal('fetch', async () => new Response(JSON.stringify(refusal), { status: 422 }));
    const { analysis } = sampleReply();
    const asked = reanalyse('demo', analysis.rig, analysis.trip, new AbortController().signal);
    await expect(asked).rejects.toBeInstanceOf(ApiProblem);
    const details = await asked.catch(detailsOf);
    expect(details).toMatchObject({ code: 'rig-invalid', place: '/fuel/tanks/0/litres', status: 422 });
  });

  it('says so when a page came instead of a problem document', () => {
    const details = problemFrom(502, '<html>Bad gateway</html>');
    expect(details.detail).toContain('502');
    expect(details.place).toBeNull();
  });

  it('says what to do when the server does not answer', async () => {
    vi.stubGlobal('fetch', async () => {
      throw new TypeError('failed to fetch');
    });
    const details = await getDemo(new AbortController().signal).catch(detailsOf);
    expect(details).toMatchObject({ code: 'no-answer', remedy: expect.stringContaining('running') });
  });

  it('asks under the id, however it is written', async () => {
    const asked: string[] = [];
    vi.stubGlobal('fetch', async (path: string) => {
      asked.push(path);
      return new Response(JSON.stringify(sampleReply()));
    });
    const { analysis } = sampleReply();
    await reanalyse('a/b', analysis.rig, analysis.trip, new AbortController().signal);
    expect(asked).toEqual(['/api/analyses/a%2Fb']);
  });
});
