import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { buildApp } from '../../server/http/app.ts';
import { FULL_RIG, FULL_TRIP } from '../helpers/full-plan.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere' });
});
afterAll(() => app.close());

const QUANTITY = /\bkm \d|\d (?:l\/100 km|km\/h|km|kg|l|m|°C)(?![\p{L}\p{N}²³])/u;
/** What the reader wrote, and tags as mapped: shown as they are. */
const AS_TOLD = ['rig', 'trip', 'tags', 'said'];

/** Texts with quantities that have no parts beside them, each with its place in the answer. */
function partless(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => {
    if (AS_TOLD.includes(name)) return [];
    const parts = name === 'text' ? 'parts' : `${name}Parts`;
    if (parts in value || name === 'parts' || name.endsWith('Parts')) return [];
    if (typeof one === 'string') return QUANTITY.test(one) ? [`${path}/${name}: ${one}`] : [];
    return partless(one, `${path}/${name}`);
  });
}

it('every text with a quantity has parts beside it, for a rig and trip that tell everything', {
  tags: 'slow',
}, async () => {
  const response = await app.inject({
    method: 'POST',
    url: '/api/analyses/demo',
    payload: { rig: FULL_RIG, trip: FULL_TRIP },
  });
  expect(response.statusCode).toBe(200);
  expect(response.body).toContain('Parts');
  expect(partless(response.json())).toEqual([]);
});

it('finds a text with a quantity and no parts', () => {
  expect(partless({ a: [{ text: 'at km 3' }, { text: '3 l', parts: [] }] })).toEqual(['/a/0/text: at km 3']);
});
