import { describe, expect, it } from 'vitest';
import { escapeUnseen, plain, withoutUnseen } from '../../../server/core/input/unseen.ts';

/** Turns red what follows; turns the direction of reading. */
const UNSEEN = '\u001b[31m\u202e';

describe('signs that nobody sees', () => {
  it('become blanks in a text of lines, whose tabs and ends of lines stay', () => {
    expect(withoutUnseen(`a\tb\r\nc${UNSEEN}d`)).toBe('a\tb\r\nc [31m d');
  });

  it('become blanks in a text of one line, tabs and ends of lines too, runs of blanks one', () => {
    expect(plain(` a\tb\r\nc${UNSEEN}d `)).toBe('a b c [31m d');
  });

  it('are escaped in JSON, which says the same', () => {
    const json = JSON.stringify({ name: `a${UNSEEN}` });
    expect(escapeUnseen(json)).not.toContain('\u202e');
    expect(JSON.parse(escapeUnseen(json))).toEqual(JSON.parse(json));
  });
});
