import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { found, isWorthNarrowing, MANY_ROWS } from '../../../web/table/narrow.ts';

interface Row {
  name: string;
  from: number;
  to: number;
}
const by = ({ name, from, to }: Row) => ({ text: name, from, to });
const ROWS: Row[] = [
  { name: 'Ketta to Mine camp', from: 127, to: 851 },
  { name: 'Mine camp to Aldhaven', from: 851, to: 1446 },
  { name: 'Quay', from: 1500, to: 1500 },
];

describe('finding rows', () => {
  it.each([
    ['', [0, 1, 2]],
    ['  ', [0, 1, 2]],
    ['mine', [0, 1]],
    ['KETTA', [0]],
    ['nowhere', []],
    ['400', [0]],
    ['851', [0, 1]],
    ['1490', [2]],
    ['1,5', [0]],
  ])('by %j', (typed, places) => {
    expect(found(ROWS, typed, by)).toEqual(places.map((place) => ROWS[place]));
  });

  it('by a number always finds what reaches over it, and something wherever there is a row', () => {
    const rows = fc.array(fc.record({ name: fc.string(), from: fc.nat(2000), length: fc.nat(500) }), {
      minLength: 1,
    });
    fc.assert(
      fc.property(rows, fc.nat(3000), (drafts, place) => {
        const all = drafts.map(({ name, from, length }) => ({ name, from, to: from + length }));
        const over = all.filter(({ from, to }) => from <= place && place <= to);
        const hits = found(all, String(place), by);
        expect(hits.length).toBeGreaterThan(0);
        if (over.length > 0) expect(hits).toEqual(over);
      }),
    );
  });
});

describe('leaving rows out', () => {
  const matter = (of: (row: number) => boolean) => ({ words: '', of, rest: () => '' });
  const rows = (count: number) => Array.from({ length: count }, (_, index) => index);

  it('is only for long tables of which some matter, not all', () => {
    expect(
      isWorthNarrowing(
        rows(MANY_ROWS),
        matter((row) => row < 3),
      ),
    ).toBe(false);
    expect(
      isWorthNarrowing(
        rows(MANY_ROWS + 1),
        matter((row) => row < 3),
      ),
    ).toBe(true);
    expect(
      isWorthNarrowing(
        rows(40),
        matter(() => false),
      ),
    ).toBe(false);
    expect(
      isWorthNarrowing(
        rows(40),
        matter(() => true),
      ),
    ).toBe(false);
    expect(isWorthNarrowing(rows(40), undefined)).toBe(false);
  });
});
