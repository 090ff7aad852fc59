import { expect, it } from 'vitest';
import { ENGLISH } from '../../server/words/en/english.ts';

it('says no code both as a caution and as a reason: the first would speak for the other', () => {
  const cautions = Object.keys(ENGLISH.cautions);
  expect(cautions.length).toBeGreaterThan(50);
  expect(Object.keys(ENGLISH.reasons).filter((code) => cautions.includes(code))).toEqual([]);
});
