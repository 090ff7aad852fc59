import { hostname } from 'node:os';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../server/http/app.ts';
import { foreignness } from '../../server/http/own-requests.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere', names: ['map.example'] });
});
afterAll(() => app.close());

const get = (headers: Record<string, string>, url = '/api/health') => app.inject({ url, headers });
const HERE = { host: '127.0.0.1:8460' };

describe('a request', () => {
  it.each([
    ['by an address in figures', { host: '192.168.1.5:8460' }],
    ['by one of the sixth version', { host: '[::1]:8460' }],
    ['by the name of this machine', { host: `${hostname()}:8460` }],
    ['by localhost', { host: 'LOCALHOST' }],
    ['by the name that the configuration gives', { host: 'map.example' }],
    ['of the own page', { ...HERE, origin: 'http://127.0.0.1:8460', 'sec-fetch-site': 'same-origin' }],
    ['typed into the browser', { ...HERE, 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate' }],
  ])('%s is answered, and the answer is kept nowhere on the way', async (_what, headers) => {
    const reply = await get(headers);
    expect([reply.statusCode, reply.headers['cache-control']]).toEqual([200, 'no-store']);
  });

  it.each([
    ['under a name that leads here', { host: 'evil.example:8460' }],
    ['under a name that begins like this machine’s', { host: 'localhost.evil.example' }],
    ['of another site’s page', { ...HERE, origin: 'http://evil.example' }],
    ['of a page on another port', { ...HERE, origin: 'http://127.0.0.1:9999' }],
    ['of a page without a site', { ...HERE, origin: 'null' }],
    [
      'of another site, without saying which',
      { ...HERE, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
    ],
    [
      'of another site that leads to the API',
      { ...HERE, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' },
    ],
  ])('%s is refused, with headers that keep a browser from using it', async (_what, headers) => {
    const reply = await get(headers);
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([403, 'application/problem+json']);
    expect(reply.json()).toMatchObject({ code: 'not-from-here' });
    expect(reply.headers['content-security-policy']).toContain("default-src 'self'");
    const sent = await app.inject({ method: 'PUT', url: '/api/rigs/Wagon', headers, payload: {} });
    expect(sent.statusCode).toBe(403);
  });

  it('that follows a link of another site to the page is answered', async () => {
    const followed = { ...HERE, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' };
    expect((await get(followed, '/')).statusCode).toBe(200);
    const sender = { host: 'localhost', origin: undefined, site: 'same-site', mode: 'cors', isApi: false };
    expect(foreignness(sender, [])).toBe('a page of another site');
  });

  it('of the API alone has its answer kept nowhere, but where the answer says otherwise', async () => {
    expect((await get(HERE, '/')).headers['cache-control']).not.toBe('no-store');
    const script = await get(HERE, '/api/docs/static/swagger-ui.css');
    expect([script.statusCode, script.headers['cache-control']]).toEqual([200, 'public, max-age=0']);
  });

  it.each(['/%E0%A4%A', '/api/%', '/api/trips/%ff%'])(
    'to an address that cannot be read (%s) is refused as any other',
    async (url) => {
      const reply = await get(HERE, url);
      expect([reply.statusCode, reply.headers['content-type']]).toEqual([400, 'application/problem+json']);
      expect(reply.json()).toMatchObject({ code: 'request-invalid' });
      expect(reply.headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-store',
      });
    },
  );
});
