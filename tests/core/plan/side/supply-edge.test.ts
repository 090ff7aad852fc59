import { expect, it } from 'vitest';
import { haltsBetween } from '../../../../server/core/plan/side/halts.ts';
import { isSamePlace } from '../../../../server/core/plan/side/supply-edge.ts';
import { endEdge, passingEdge, startEdge } from '../../../helpers/course.ts';

it('a point that the route comes by twice is two places, and a halt at one is on the way to the other', () => {
  const first = { ...passingEdge(100_000, 500), id: 'node/1' };
  const again = { ...passingEdge(200_000, 500), id: 'node/1' };
  expect(isSamePlace(first, { ...first })).toBe(true);
  expect(isSamePlace(first, again)).toBe(false);
  const halt = { edge: first, atM: first.atM, bothWaysM: 1000, costM: 1000 };
  expect(haltsBetween([halt], startEdge, again)).toEqual([halt]);
  expect(haltsBetween([halt], startEdge, first)).toEqual([]);
  expect(haltsBetween([halt], first, endEdge(300_000))).toEqual([]);
});
