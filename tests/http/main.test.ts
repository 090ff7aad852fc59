import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reportText } from '../../server/app/text/report-text.ts';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';

const MAIN = fileURLToPath(new URL('../../server/main.ts', import.meta.url));

interface Started {
  child: ChildProcess;
  text: { out: string; err: string };
}

/** Runs in the server's process: on a signal all of its workers end at once, on the next it says how long its thread was held up since. */
const WORKER_KILLER = `
  import { monitorEventLoopDelay } from 'node:perf_hooks';
  const workers = new Set();
  process.on('worker', (worker) => workers.add(worker));
  const delay = monitorEventLoopDelay({ resolution: 5 });
  process.once('SIGUSR2', () => {
    delay.enable();
    console.log('ends ' + workers.size + ' workers');
    for (const worker of workers) worker.terminate();
    process.once('SIGUSR2', () => console.log('held up for ' + Math.round(delay.max / 1e6) + ' ms'));
  });`;

function start(env: Record<string, string>): Started {
  const own = { DRYSTAGE_DATA: mkdtempSync(join(tmpdir(), 'drystage-main-test-')) };
  const killer = `data:text/javascript,${encodeURIComponent(WORKER_KILLER)}`;
  const child = spawn(process.execPath, ['--import', 'tsx', '--import', killer, MAIN], {
    env: { ...process.env, ...own, ...env },
  });
  const text = { out: '', err: '' };
  child.stdout.on('data', (chunk: Buffer) => {
    text.out += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    text.err += chunk.toString();
  });
  return { child, text };
}

/** Resolves with the address when the server says that it serves. */
async function addressOf({ child, text }: Started): Promise<string> {
  for (;;) {
    const address = /Open (http:\S+)/.exec(text.out)?.[1];
    if (address !== undefined) return address;
    if (child.exitCode !== null) throw new Error(`the server ended: ${text.err}`);
    await Promise.race([once(child.stdout!, 'data'), once(child, 'exit')]);
  }
}

async function end({ child, text }: Started): Promise<{ status: number | null; err: string }> {
  if (child.exitCode === null) await once(child, 'close');
  return { status: child.exitCode, err: text.err };
}

describe('the server as a process', { tags: 'slow' }, () => {
  let server: Started;
  let address = '';
  beforeAll(async () => {
    server = start({ PORT: '0', HOST: '' });
    address = await addressOf(server);
  });
  afterAll(() => {
    server.child.kill('SIGKILL');
  });

  it('listens on this machine alone, and prints the answer that it serves', async () => {
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    const { analysis, map } = (await (await fetch(`${address}/api/demo`)).json()) as AnalysisReply;
    expect(server.text.out).toContain(reportText(analysis, map.notice));
    expect(server.text.out.startsWith('Orrimar is invented. Do not drive by it.')).toBe(true);
    expect(server.text.err).toBe('');
  });

  it('answers on where its workers are killed: the request at work is told, the next one is done', async () => {
    const { id, said } = (await (await fetch(`${address}/api/demo`)).json()) as AnalysisReply;
    const body = JSON.stringify(said);
    const headers = { 'content-type': 'application/json' };
    const plan = () => fetch(`${address}/api/analyses/${id}/plan`, { method: 'POST', headers, body });
    const health = async () => (await (await fetch(`${address}/api/health`)).json()) as { planning: number };
    const told = async (word: RegExp) => {
      server.child.kill('SIGUSR2');
      await expect.poll(() => server.text.out).toMatch(word);
      return word.exec(server.text.out)?.[0];
    };
    const planned = plan();
    await expect.poll(async () => (await health()).planning).toBe(1);
    await told(/ends [1-9]\d* workers\n/);
    const refusal = await planned;
    expect(await refusal.json()).toMatchObject({ status: 500, code: 'internal', remedy: expect.any(String) });
    expect((await health()).planning).toBe(0);
    const again = await Promise.all([plan(), fetch(`${address}/api/demo`), health()]);
    expect(again.slice(0, 2).map((reply) => (reply as Response).status)).toEqual([200, 200]);
    console.info(`the server's thread, after its workers were killed: ${await told(/held up for \d+ ms/)}`);
    expect(server.text.err).toContain('a worker ended in the middle of');
  });

  it('ends in order when it is told to', async () => {
    server.child.kill('SIGTERM');
    expect(await end(server)).toMatchObject({ status: 0 });
  });
});

describe('a server that cannot start', () => {
  it('says that the port is taken, in one line', { tags: 'slow' }, async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const { status, err } = await end(start({ PORT: String(port), HOST: '127.0.0.1' }));
    other.close();
    expect(status).toBe(2);
    expect(err).toMatch(
      new RegExp(
        `^PORT: port ${port} on 127\\.0\\.0\\.1 is taken by another program; expected a free port\\. .*PORT=\\d+ npm start\\.\\n$`,
      ),
    );
  });

  it.each([
    [{ PORT: 'eighty', HOST: '' }, 'PORT: "eighty"; expected a whole number from 0 to 65535.'],
    [{ PORT: '70000', HOST: '' }, 'PORT: "70000"; expected'],
    [
      { PORT: '0', HOST: '0.0.0.0' },
      'HOST: "0.0.0.0", which others can reach, and no secret; expected DRYSTAGE_SECRET',
    ],
    [
      { PORT: '0', HOST: '192.0.2.1', DRYSTAGE_SECRET: 'a long enough secret' },
      'HOST: "192.0.2.1"; expected an address of this machine.',
    ],
  ])('refuses %j in one line', { tags: 'slow' }, async (env, line) => {
    const { status, err } = await end(start(env));
    expect(status).toBe(2);
    expect(err).toContain(line);
    expect(err.trimEnd()).not.toContain('\n');
  });
});
