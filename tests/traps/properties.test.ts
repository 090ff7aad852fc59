import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../server/contract/common.ts';
import type { Tags } from '../../server/core/input/sources.ts';
import { DENYING_TAGS } from '../../server/core/supply/tags/denying-tags.ts';
import { DENYING_LANGUAGES } from '../../server/core/supply/tags/denying-words.ts';
import { LIFECYCLE_PREFIXES } from '../../server/core/supply/tags/kinds.ts';
import { openingHours } from '../../server/io/opening-hours.ts';
import { textOf } from '../../server/words/words-of.ts';
import { ANY_EVIDENCE, anyEdit, anyJudging, anyTags } from '../core/supply/any-tags.ts';
import { pointsOf } from '../core/supply/judged.ts';
import { analysisOf, equatorDocument, pointFeature } from '../helpers/analyse-input.ts';
import { TRAPS } from './traps.ts';

const strength = (evidence: Evidence): number => ANY_EVIDENCE.indexOf(evidence);

/** Every tag that speaks against a supply, of every table. */
const AGAINST: readonly (readonly [key: string, value: string])[] = [
  ...DENYING_TAGS.flatMap(({ key, values }) =>
    ('but' in values ? ['yes'] : values).map((value) => [key, value] as const),
  ),
  ...LIFECYCLE_PREFIXES.flatMap((prefix) =>
    ['amenity', 'drinking_water', 'fuel:diesel', 'natural', 'tourism'].map(
      (key) => [`${prefix}:${key}`, 'yes'] as const,
    ),
  ),
  ...DENYING_LANGUAGES.flatMap(({ always }) => always.map((words) => ['note', words] as const)),
  ...['off', 'Nov-Mar', 'whenever', '2001 Mo-Fr'].map((hours) => ['opening_hours', hours] as const),
  ['access:conditional', 'no @ (Jan-Dec)'],
  ['end_date', '1999'],
  ['opening_date', '2199'],
];

describe('tags that speak against a supply', () => {
  it('never raise its evidence, and never make one count that did not', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(
        anyTags,
        anyJudging,
        anyEdit,
        fc.constantFrom(...AGAINST),
        (tags, judge, editedAt, [key, value]) => {
          fc.pre(tags[key] === undefined);
          const judging = { ...judge, today: '2026-05-01', readHours: openingHours };
          const before = pointsOf(tags, judging, { editedAt });
          const after = pointsOf({ ...tags, [key]: value }, judging, { editedAt });
          for (const point of before) {
            const same = after.find(({ commodity }) => commodity === point.commodity);
            if (same === undefined) continue;
            expect(strength(same.evidence)).toBeLessThanOrEqual(strength(point.evidence));
            if (same.counts) expect(point.counts).toBe(true);
            for (const reason of same.reasons) expect(textOf(reason).trim()).not.toBe('');
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it.each(DENYING_LANGUAGES.map((language) => [language.code, language] as const))(
    'are words of %s that each deny, in small letters and large',
    (_, { always, no, noAfter = [], supplies }) => {
      const texts = [
        ...always,
        ...no.flatMap((word) => supplies.map((supply) => `${word} ${supply}`)),
        ...noAfter.flatMap((word) => supplies.map((supply) => `${supply} ${word}`)),
      ];
      const station: Tags = { amenity: 'fuel', 'fuel:diesel': 'yes' };
      for (const text of texts) {
        const [point] = pointsOf({ ...station, note: text });
        expect([text, point?.evidence, point?.counts]).toEqual([text, 'doubtful', false]);
      }
    },
  );
});

describe('a trap taken out of the data', () => {
  const RANK = { short: 0, unknown: 1, 'into-reserve': 2, enough: 3 } as const;
  const document = equatorDocument(1200, 50);
  const answer = (tags: Tags | null) => {
    const analysis = analysisOf({
      document,
      features: tags === null ? [] : [pointFeature('node/1', 600, tags)],
    });
    return (['fuel', 'water'] as const).map((commodity) =>
      Math.min(...analysis[commodity].gaps.map(({ verdict }) => RANK[verdict])),
    );
  };

  it('never makes the answer better', { tags: 'slow' }, () => {
    const without = answer(null);
    for (const { tags, name } of TRAPS) {
      const [fuel = 0, water = 0] = answer(tags);
      expect(fuel, name).toBeGreaterThanOrEqual(without[0] ?? 0);
      expect(water, name).toBeGreaterThanOrEqual(without[1] ?? 0);
    }
  });
});
