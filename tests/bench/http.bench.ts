import type { AddressInfo } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import fastify, { type FastifyInstance } from 'fastify';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { buildApp } from '../../server/http/app.ts';
import { type Bench, type BenchRow, median, SETTLE_MS } from './measure.ts';

const RUNS = 60;
const WARM_UP = 15;
const TARGET_MS = 30;

/** A fastify that takes the same request and sends the same bytes, having reckoned nothing: the floor of HTTP itself. */
async function bareApp(reply: string): Promise<FastifyInstance> {
  const bare = fastify();
  bare.post('/api/analyses/demo', async (_request, answer) => answer.type('application/json').send(reply));
  return bare;
}

async function addressOf(app: FastifyInstance): Promise<string> {
  await app.listen({ host: '127.0.0.1', port: 0 });
  return `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`;
}

/** One re-analysis with another tank size, from the request to the whole reply read. */
async function oneRun(address: string, rig: AnalysisReply['analysis']['rig'], trip: object, litres: number) {
  rig.fuel.tanks[0]!.litres = litres;
  const body = JSON.stringify({ rig, trip });
  const startMs = performance.now();
  const response = await fetch(`${address}/api/analyses/demo`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
  });
  const bytes = (await response.arrayBuffer()).byteLength;
  const ms = performance.now() - startMs;
  if (response.status !== 200) throw new Error(`status ${response.status}`);
  return { ms, bytes };
}

/** Re-analysis of the demo through HTTP, as the page asks for it at every change; both servers in turn. */
export const bench: Bench = async () => {
  const app = await buildApp();
  const demo = await app.inject('/api/demo');
  const bare = await bareApp(demo.body);
  try {
    if (demo.statusCode !== 200) throw new Error(demo.body);
    const { rig, trip } = demo.json<AnalysisReply>().analysis;
    const address = await addressOf(app);
    await setTimeout(SETTLE_MS);
    const bareAddress = await addressOf(bare);
    const ownMs: number[] = [];
    const bareMs: number[] = [];
    let kilobytes = 0;
    for (let run = 0; run < WARM_UP + RUNS; run += 1) {
      const own = await oneRun(address, rig, trip, 60 + run);
      const peer = await oneRun(bareAddress, rig, trip, 60 + run);
      if (run < WARM_UP) continue;
      ownMs.push(own.ms);
      bareMs.push(peer.ms);
      kilobytes = own.bytes / 1000;
    }
    const what = `POST /api/analyses/demo, reply of ${kilobytes.toFixed(0)} kB`;
    const note = `slowest ${Math.max(...ownMs).toFixed(1)} ms`;
    const rows: BenchRow[] = [
      { what, who: 'drystage', medianMs: median(ownMs), runs: RUNS, note },
      { what, who: 'fastify 5, the same bytes unreckoned', medianMs: median(bareMs), runs: RUNS },
    ];
    const target = `median under ${TARGET_MS} ms`;
    return { title: 'HTTP', target, met: median(ownMs) < TARGET_MS, rows };
  } finally {
    await app.close();
    await bare.close();
  }
};
