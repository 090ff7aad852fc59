import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ today: () => '2026-05-01', webFolder: '/nowhere' });
});
afterAll(() => app.close());

interface Described {
  summary?: string;
  parameters?: { name: string; in: string; example?: string }[];
  requestBody?: { content: Record<string, { example?: object }> };
}

const KEPT = /^\/api\/(trips|rigs|extracts)(\/|$)/;

/** Each way in to what is kept, as the API document tells it. */
async function described() {
  const { paths } = (await app.inject('/api/docs/json')).json<{
    paths: Record<string, Record<string, Described>>;
  }>();
  return Object.entries(paths)
    .filter(([path]) => KEPT.test(path))
    .flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, route]) => ({ path, method: method.toUpperCase(), route })),
    );
}

describe('the API document of what is kept', () => {
  it('has an example of all that a request takes, which is understood', { tags: 'slow' }, async () => {
    const routes = await described();
    expect(routes.length).toBeGreaterThan(15);
    for (const { path, method, route } of routes) {
      const name = `${method} ${path}`;
      let url = path;
      for (const { name: key, in: where, example } of route.parameters ?? []) {
        if (where !== 'path') continue;
        expect(example, `${name}, ${key}`).toBeDefined();
        url = url.replace(`{${key}}`, encodeURIComponent(example ?? ''));
      }
      const json = route.requestBody?.content['application/json'];
      const payload = json?.example;
      if (json !== undefined) expect(payload, `${name}, body`).toBeDefined();
      // Forms are sent in tests of their own.
      if (route.requestBody?.content['multipart/form-data'] !== undefined) continue;
      const response = await app.inject({
        method: method as 'GET',
        url,
        ...(payload !== undefined && { payload }),
      });
      expect(response.statusCode, `${name}: ${response.body.slice(0, 300)}`).toSatisfy(
        (status: number) => status < 300 || status === 404 || status === 409,
      );
      expect(route.summary, name).toBeTruthy();
    }
  });
});
