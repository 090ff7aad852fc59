import { expect, it } from 'vitest';
import { routeOf } from '../../../../server/core/route/build/route-of.ts';
import { documentOf, onPlain, partOf } from '../lines.ts';

const CHOICE = { part: 'all', sparseStepM: 5_000 } as const;
const lineOf = (outcome: ReturnType<typeof routeOf>) => (outcome.ok ? outcome.value : null);

it('is built once for a document and a choice, and again for another', () => {
  const document = documentOf([partOf([[onPlain(0, 0), onPlain(1000, 0)]])]);
  const first = lineOf(routeOf(document, CHOICE));
  expect(first?.lengthM).toBeGreaterThan(0);
  expect(lineOf(routeOf(document, { ...CHOICE }))).toBe(first);
  const sparse = lineOf(routeOf(document, { ...CHOICE, sparseStepM: 1 }));
  expect(sparse?.sketchy).not.toEqual(first?.sketchy);
  expect(lineOf(routeOf(document, { ...CHOICE, part: 1 }))).not.toBe(first);
  expect(lineOf(routeOf(structuredClone(document), CHOICE))).not.toBe(first);
});

it('refuses as often as it is asked', () => {
  const document = documentOf([]);
  expect(routeOf(document, CHOICE).ok).toBe(false);
  expect(routeOf(document, CHOICE).ok).toBe(false);
});
