import type { AddressInfo } from 'node:net';
import { setImmediate } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../server/http/app.ts';
import { demoBytes, demoForm } from './form.ts';

interface Health {
  reading: number;
  analysing: number;
  kept: number;
}

/** An extract that takes a worker a while: many nodes that concern nobody. */
function slowExtract(): string {
  const lines = [
    '<?xml version="1.0"?><osm version="0.6"><bounds minlat="-36" minlon="86" maxlat="-35" maxlon="87"/>',
  ];
  for (let id = 1; id <= 400_000; id += 1) {
    lines.push(
      `<node id="${id}" version="1" lat="-35.${id % 1000}" lon="86.${id % 997}"><tag k="a" v="b"/></node>`,
    );
  }
  lines.push('</osm>');
  return lines.join('\n');
}

const faults: string[] = [];
const extract = slowExtract();
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere', onFault: (text) => faults.push(text) });
  await app.inject('/api/demo');
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const health = async () => (await app.inject('/api/health')).json<Health>();
async function untilHealth(fits: (state: Health) => boolean): Promise<Health> {
  for (;;) {
    const state = await health();
    if (fits(state)) return state;
    await setImmediate();
  }
}

describe('while a worker reads a large extract', () => {
  it('others are answered, analyses among them', { tags: 'slow' }, async () => {
    const order: string[] = [];
    const reading = app
      .inject({ method: 'POST', url: '/api/analyses', ...demoForm({ extract }) })
      .then((response) => order.push(`upload ${response.statusCode}`));
    await untilHealth((state) => state.reading === 1);
    order.push('health');
    const { analysis } = (await app.inject('/api/demo')).json<{ analysis: { rig: object } }>();
    const again = await app.inject({
      method: 'POST',
      url: '/api/analyses/demo',
      payload: { rig: analysis.rig },
    });
    order.push(`analysis ${again.statusCode}`);
    await reading;
    expect(order).toEqual(['health', 'analysis 200', 'upload 200']);
  });

  it('a rig that is slow to read is read where it holds up nobody', async () => {
    const rig = `name: [${'1,'.repeat(32_000)}]`;
    let answer: number | null = null;
    const asked = app
      .inject({ method: 'POST', url: '/api/analyses', ...demoForm({ rig }) })
      .then(({ statusCode }) => {
        answer = statusCode;
      });
    const meanwhile = await untilHealth(({ analysing }) => analysing === 1 || answer !== null);
    await asked;
    expect([meanwhile.analysing, answer]).toEqual([1, 422]);
  });

  it('a client that goes away takes its job with it', { tags: 'slow' }, async () => {
    await app.listen({ host: '127.0.0.1', port: 0 });
    const { port } = app.server.address() as AddressInfo;
    const { kept } = await health();
    const form = new FormData();
    form.set('route', new Blob([demoBytes('route.gpx')]), 'route.gpx');
    form.set('extract', new Blob([extract]), 'slow.osm');
    form.set('rig', demoBytes('rig.yaml').toString());
    const controller = new AbortController();
    const sent = fetch(`http://127.0.0.1:${port}/api/analyses`, {
      method: 'POST',
      body: form,
      signal: controller.signal,
    });
    const refused = expect(sent).rejects.toThrow('abort');
    await untilHealth((state) => state.reading === 1);
    controller.abort();
    await refused;
    const after = await untilHealth((state) => state.reading === 0 && state.analysing === 0);
    expect(after.kept).toBe(kept);
  });
});
