import { expect, it } from 'vitest';
import { isStale, type Reading } from '../../../web/cab/entries.ts';

const read = (km: number, left: boolean): Reading => ({ tanks: [], cans: 0, atM: km * 1000, left });

it('a gauge that was read two kilometres away, or before filling, is to be read again', () => {
  expect(isStale(read(100, false), { atM: 102_000, left: false })).toBe(false);
  expect(isStale(read(100, false), { atM: 102_001, left: false })).toBe(true);
  expect(isStale(read(100, false), { atM: 97_999, left: false })).toBe(true);
  expect(isStale(read(100, false), { atM: 100_000, left: true })).toBe(true);
  expect(isStale(read(100, true), { atM: 100_000, left: true })).toBe(false);
});
