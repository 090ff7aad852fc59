import { describe, expect, it } from 'vitest';
import { countExceptions, deviations, exceptionsIn, listedExceptions, raised } from './ratchet.ts';

describe('the exceptions to the rules of the house', () => {
  it('are as listed in ratchet.json: new ones are mended, gone ones are struck by npm run ratchet', {
    tags: 'slow',
  }, () => {
    expect(deviations(listedExceptions(), countExceptions())).toEqual([]);
  });
});

describe('the ratchet', () => {
  const list = { 'style/a': { 'x.ts': 2, 'y.ts': 1 } };

  it('counts a report by rule and file, in order, rules alone', () => {
    const finding = (category: string, path: string) => ({ category, location: { path } });
    const diagnostics = [
      finding('lint/style/b', 'y.ts'),
      finding('lint/style/a', 'y.ts'),
      finding('lint/style/a', 'x.ts'),
      finding('lint/style/a', 'y.ts'),
      finding('suppressions/unused', 'x.ts'),
    ];
    expect(JSON.stringify(exceptionsIn({ diagnostics }))).toBe(
      '{"style/a":{"x.ts":1,"y.ts":2},"style/b":{"y.ts":1}}',
    );
  });

  it('says nothing where list and count are alike', () => {
    expect(deviations(list, structuredClone(list))).toEqual([]);
    expect(raised(list, structuredClone(list))).toEqual([]);
  });

  it.each([
    [
      'one more',
      { 'style/a': { 'x.ts': 3, 'y.ts': 1 } },
      'x.ts: 3 exceptions to style/a, 2 listed: mend what is new',
    ],
    [
      'a file more',
      { 'style/a': { 'x.ts': 2, 'y.ts': 1, 'z.ts': 1 } },
      'z.ts: 1 exceptions to style/a, 0 listed: mend what is new',
    ],
    [
      'a rule more',
      { ...list, 'style/b': { 'x.ts': 1 } },
      'x.ts: 1 exceptions to style/b, 0 listed: mend what is new',
    ],
    [
      'one fewer',
      { 'style/a': { 'x.ts': 1, 'y.ts': 1 } },
      'x.ts: 1 exceptions to style/a, 2 listed: npm run ratchet',
    ],
    [
      'a file fewer',
      { 'style/a': { 'x.ts': 2 } },
      'y.ts: 0 exceptions to style/a, 1 listed: npm run ratchet',
    ],
  ])('tells of %s', (_name, counts, line) => {
    expect(deviations(list, counts)).toEqual([line]);
  });

  it('is let down and not up', () => {
    expect(raised(list, { 'style/a': { 'x.ts': 1 } })).toEqual([]);
    expect(raised(list, { 'style/a': { 'x.ts': 1, 'y.ts': 2 } })).toEqual([
      'y.ts: 2 exceptions to style/a, 1 listed',
    ]);
    expect(raised(list, { 'style/a': { 'x.ts': 2, 'y.ts': 1, 'z.ts': 1 } })).toHaveLength(1);
    expect(raised(list, { 'style/b': { 'x.ts': 1 } })).toHaveLength(1);
  });

  it('lets code move: what files got rid of goes to those that were not listed, and no more', () => {
    expect(raised(list, { 'style/a': { 'y.ts': 1, 'z.ts': 2 } })).toEqual([]);
    expect(raised(list, { 'style/a': { 'x.ts': 1, 'y.ts': 1, 'z.ts': 1 } })).toEqual([]);
    expect(raised(list, { 'style/a': { 'y.ts': 1, 'z.ts': 3 } })).toHaveLength(1);
    expect(raised(list, { 'style/a': { 'y.ts': 2 } })).toHaveLength(1);
  });
});
