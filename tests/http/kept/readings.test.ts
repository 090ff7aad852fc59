import { readdirSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExtractList } from '../../../server/contract/kept.ts';
import { type ExtractReading, ExtractReadings } from '../../../server/contract/supplies/readings.ts';
import { buildApp } from '../../../server/http/app.ts';
import { folderStore } from '../../../server/store/open-store.ts';
import { demoBytes, formOf } from '../form.ts';

const faults: string[] = [];
let app: FastifyInstance;
let address = '';
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'drystage-readings-test-'));
  const onFault = (text: string) => void faults.push(text);
  app = await buildApp({ webFolder: '/nowhere', onFault, store: folderStore(folder) });
  address = await app.listen({ port: 0, host: '127.0.0.1' });
});
afterAll(async () => {
  app.server.closeAllConnections();
  await app.close();
  await rm(folder, { recursive: true });
  expect(faults).toEqual([]);
});

/** Listens to the events until one of them is as wanted; gives that one's readings, or all that came before the end. */
async function until(wanted: (reading: ExtractReading) => boolean): Promise<ExtractReading | null> {
  for (;;) {
    const response = await fetch(`${address}/api/extracts/readings`);
    expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    let text = '';
    for await (const piece of response.body ?? []) {
      text += Buffer.from(piece).toString();
      const events = text.split('\n\n').slice(0, -1);
      for (const event of events) {
        const data = /^event: readings\ndata: (.*)$/.exec(event)?.[1];
        if (data === undefined) continue;
        const { reading } = JSON.parse(data) as ExtractReadings;
        expect(Compile(ExtractReadings).Errors({ reading })).toEqual([]);
        const found = reading.find(wanted);
        if (found !== undefined) return found;
      }
    }
    // The stream ends where nothing is on its way; as a browser does, it is asked for again.
  }
}

/** Sends the beginning of a form, and the rest when it is told to. */
function sendSlowly(bytes: Uint8Array) {
  const { payload, headers } = formOf([{ name: 'extract', file: 'land.osm.pbf', bytes }]);
  const sending = request(`${address}/api/extracts`, {
    method: 'POST',
    headers: { ...headers, 'content-length': payload.length },
  });
  const answer = new Promise<{ status: number; body: string }>((resolve, reject) => {
    sending.once('error', reject).once('response', async (response) => {
      let body = '';
      for await (const piece of response) body += String(piece);
      resolve({ status: response.statusCode ?? 0, body });
    });
  });
  answer.catch(() => {});
  sending.write(payload.subarray(0, 20_000));
  return { payload, sending, answer, finish: () => sending.end(payload.subarray(20_000)) };
}

const incoming = () => readdirSync(join(folder, 'incoming'));
const listed = async () => (await app.inject('/api/extracts')).json<ExtractList>();

describe('an extract on its way', { tags: 'slow' }, () => {
  it('is told of by events, from its first bytes to its end', async () => {
    const quiet = await app.inject('/api/extracts/readings');
    expect(quiet.body).toBe('retry: 1000\n\nevent: readings\ndata: {"reading":[]}\n\n');
    const { payload, answer, finish } = sendSlowly(demoBytes('orrimar.osm.pbf'));
    const coming = await until(({ doneBytes }) => doneBytes > 10_000);
    expect(coming).toMatchObject({ name: 'land.osm.pbf', stage: 'coming', totalBytes: payload.length });
    expect((await listed()).reading).toMatchObject([{ id: coming?.id }]);
    finish();
    expect((await answer).status).toBe(201);
    expect((await listed()).reading).toEqual([]);
    expect(incoming()).toEqual([]);
  });

  it('leaves no file and no extract where its sender goes away', async () => {
    const { extracts: before } = await listed();
    const { sending } = sendSlowly(Buffer.alloc(100_000, 1));
    await until(({ doneBytes }) => doneBytes > 0);
    expect(incoming()).toHaveLength(1);
    sending.destroy();
    while ((await listed()).reading.length > 0) await new Promise(setImmediate);
    expect(incoming()).toEqual([]);
    expect(readdirSync(join(folder, 'extracts'))).toHaveLength(before.length);
    expect((await listed()).extracts).toEqual(before);
  });

  it('is called off by another request, which its sender is told', async () => {
    const { extracts: before } = await listed();
    const { answer } = sendSlowly(Buffer.alloc(100_000, 1));
    const coming = await until(({ doneBytes }) => doneBytes > 0);
    const off = () => app.inject({ method: 'DELETE', url: `/api/extracts/readings/${coming?.id}` });
    expect((await off()).statusCode).toBe(204);
    const { status, body } = await answer;
    expect([status, JSON.parse(body).code]).toEqual([409, 'called-off']);
    expect((await off()).statusCode).toBe(404);
    expect(incoming()).toEqual([]);
    expect((await listed()).extracts).toEqual(before);
  });
});
