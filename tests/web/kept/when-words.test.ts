import { describe, expect, it } from 'vitest';
import { whenWords } from '../../../web/kept/when-words.ts';

const now = new Date(2026, 4, 3, 18, 30);

describe('a moment in words', () => {
  it('is the hour of today, else the day, with the year where it is another', () => {
    expect(whenWords(new Date(2026, 4, 3, 14, 5).toISOString(), now)).toBe('14:05');
    expect(whenWords(new Date(2026, 3, 30, 14, 5).toISOString(), now)).toBe('30 April');
    expect(whenWords(new Date(2025, 11, 30, 14, 5).toISOString(), now)).toBe('30 December 2025');
  });

  it('is nothing where it is none', () => {
    expect(whenWords('soon', now)).toBe('');
  });
});
