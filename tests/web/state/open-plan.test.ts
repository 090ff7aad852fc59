import type { FastifyInstance } from 'fastify';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';
import { openPlan } from '../../../web/state/open-plan.ts';
import { FULL_RIG, FULL_TRIP } from '../../helpers/full-plan.ts';
import { sampleReply } from '../sample-reply.ts';

const BEFORE = sampleReply().said;

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere' });
});
afterAll(() => app.close());
afterEach(() => vi.unstubAllGlobals());

/** The page's fetch, answered by the server itself. */
function answerByServer(): void {
  vi.stubGlobal('fetch', async (url: string, init: { headers: Record<string, string>; body: string }) => {
    const { statusCode, body } = await app.inject({
      method: 'POST',
      url,
      headers: init.headers,
      payload: init.body,
    });
    return new Response(body, { status: statusCode });
  });
}

describe('a file that the reader opens', () => {
  it('gives every field back that was saved', async () => {
    answerByServer();
    const rig = new File([JSON.stringify(FULL_RIG, null, 2)], 'wagon-rig.json');
    const trip = new File([JSON.stringify(FULL_TRIP, null, 2)], 'crossing-trip.json');
    expect(await openPlan('rig', rig, BEFORE)).toEqual({ ...BEFORE, rig: FULL_RIG });
    expect(await openPlan('trip', trip, BEFORE)).toEqual({ ...BEFORE, trip: FULL_TRIP });
  });

  it('is named in a refusal, with the key, its line and what was expected', async () => {
    answerByServer();
    const rig = { ...FULL_RIG, vehicle: { ...FULL_RIG.vehicle!, kerbKg: -1 } };
    const file = new File([JSON.stringify(rig, null, 2)], 'wagon.yaml');
    await expect(openPlan('rig', file, BEFORE)).rejects.toThrow(
      /^wagon\.yaml, \/vehicle\/kerbKg \(line \d+\): -1; expected a number/,
    );
    await expect(openPlan('trip', new File(['- a\n- b\n'], 'list.yaml'), BEFORE)).rejects.toThrow(
      /^list\.yaml/,
    );
  });

  it('says so when the server is gone', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('fetch failed')));
    await expect(openPlan('rig', new File(['{}'], 'wagon.yaml'), BEFORE)).rejects.toThrow(
      /wagon\.yaml: .*did not reach/,
    );
  });
});
