import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';
import { operatorSettings } from '../../../server/http/operator.ts';
import { SessionKeeper } from '../../../server/http/session/session-keeper.ts';

const SECRET = 'a long and secret word';
const routes: { method: string; url: string }[] = [];
const lines: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({
    webFolder: '/nowhere',
    secret: SECRET,
    trustProxy: ['loopback'],
    names: ['trips.example'],
    onRoute: (method, url) => routes.push({ method, url }),
    onAccess: (line) => lines.push(line),
  });
});
afterAll(() => app.close());

const signIn = (secret: string, more: object = {}) =>
  app.inject({ method: 'POST', url: '/api/session', payload: { secret }, ...more });
const cookieOf = (reply: { headers: Record<string, unknown> }) =>
  String(reply.headers['set-cookie']).split(';')[0] ?? '';
const from = (remoteAddress: string) => ({ remoteAddress });

describe('a server with a secret', () => {
  it('answers nobody who has not signed in, whatever they ask for, but for the page and signing in', async () => {
    const open: string[] = [];
    for (const { method, url } of routes) {
      if (method === 'HEAD') continue;
      const address = url.replace(/:\w+/g, 'x').replace('*', 'x');
      const reply = await app.inject({ method: method as 'GET', url: address, ...from('10.0.0.9') });
      if (reply.statusCode === 401) {
        expect([reply.headers['content-type'], reply.json().code]).toEqual([
          'application/problem+json',
          'not-signed-in',
        ]);
      } else open.push(`${method} ${url}`);
    }
    expect(open.sort()).toEqual(['DELETE /api/session', 'GET /', 'POST /api/session']);
    expect(routes.length).toBeGreaterThan(40);
    for (const url of ['/%61pi/trips', '//api/trips', '/api//trips', '/api/nowhere', '/api/docs/json'])
      expect((await app.inject(url)).statusCode).toBe(401);
  });

  it('answers whoever has, until they sign out', async () => {
    const reply = await signIn(SECRET, from('10.0.0.1'));
    expect(reply.headers['set-cookie']).toMatch(/^drystage=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    const headers = { cookie: `other=1; ${cookieOf(reply)}` };
    const status = async () => (await app.inject({ url: '/api/trips', headers })).statusCode;
    expect(await status()).toBe(200);
    const out = await app.inject({ method: 'DELETE', url: '/api/session', headers });
    expect(out.headers['set-cookie']).toContain('Max-Age=0');
    expect(await status()).toBe(401);
    for (const cookie of ['drystage=', 'drystage=x', `drystage=${SECRET}`])
      expect((await app.inject({ url: '/api/trips', headers: { cookie } })).statusCode).toBe(401);
  });

  it('sends its cookie over TLS alone where it came so, by the word of a proxy that is trusted', async () => {
    const headers = { 'x-forwarded-proto': 'https', 'x-forwarded-for': '203.0.113.7', host: 'trips.example' };
    const signed = await signIn(SECRET, { headers });
    expect(signed.headers['set-cookie']).toContain('; Secure');
    expect(lines.at(-1)).toMatch(/^\S+Z 203\.0\.113\.7 POST \/api\/session 200 \d+ ms$/);
    const untrusted = await signIn(SECRET, { headers, ...from('198.51.100.1') });
    expect(untrusted.headers['set-cookie']).not.toContain('Secure');
    expect(lines.at(-1)).toContain(' 198.51.100.1 POST');
  });

  it('lets one address try a few times, and says when again', async () => {
    const tries = [];
    for (let time = 0; time < 11; time += 1) tries.push(await signIn('another secret', from('10.0.0.2')));
    expect(tries.slice(0, 10).map(({ statusCode }) => statusCode)).toEqual(Array(10).fill(401));
    const last = tries[10];
    expect([last?.statusCode, last?.json().code]).toEqual([429, 'too-many-requests']);
    expect(Number(last?.headers['retry-after'])).toBeGreaterThan(0);
    expect((await signIn(SECRET, from('10.0.0.2'))).statusCode).toBe(429);
    expect((await signIn(SECRET, from('10.0.0.3'))).statusCode).toBe(200);
    expect(lines.join('\n')).not.toContain('secret word');
  });
});

it('a session holds twelve hours after it was last used', () => {
  let now = 0;
  const sessions = new SessionKeeper(SECRET, () => now);
  const [used, idle] = [sessions.open(), sessions.open()];
  now = 11 * 3_600_000;
  expect(sessions.holds(used)).toBe(true);
  now = 13 * 3_600_000;
  expect([sessions.holds(used), sessions.holds(idle), sessions.holds(idle)]).toEqual([true, false, false]);
  for (let more = 0; more < 1000; more += 1) sessions.open();
  expect(sessions.holds(used)).toBe(false);
});

describe('what the operator sets', () => {
  const of = (env: NodeJS.ProcessEnv, host: string) => operatorSettings(env, host);
  const refusal = (env: NodeJS.ProcessEnv, host: string) => {
    const settings = of(env, host);
    return settings.ok ? null : settings.problem.place;
  };

  it('is a secret wherever others can reach the server', () => {
    for (const host of ['127.0.0.1', '127.8.0.1', 'localhost', '::1']) expect(refusal({}, host)).toBeNull();
    for (const host of ['0.0.0.0', '::', '192.168.1.5', 'map.example', '127.example'])
      expect(refusal({}, host)).toBe('HOST');
    expect(refusal({ DRYSTAGE_SECRET: 'x'.repeat(15) }, '127.0.0.1')).toBe('DRYSTAGE_SECRET');
    expect(of({ DRYSTAGE_SECRET: 'x'.repeat(16) }, '0.0.0.0')).toMatchObject({
      value: { secret: 'x'.repeat(16) },
    });
  });

  it('is names and proxies, each by itself', () => {
    expect(
      of({ DRYSTAGE_NAME: 'a.example, b.example', DRYSTAGE_TRUST_PROXY: 'loopback,10.0.0.0/8' }, '::1'),
    ).toEqual({
      ok: true,
      value: { secret: null, names: ['a.example', 'b.example'], trustProxy: ['loopback', '10.0.0.0/8'] },
    });
    for (const wrong of ['true', '1', 'proxy.example', '10.0.0.0/x'])
      expect(refusal({ DRYSTAGE_TRUST_PROXY: wrong }, '::1')).toBe('DRYSTAGE_TRUST_PROXY');
  });
});
