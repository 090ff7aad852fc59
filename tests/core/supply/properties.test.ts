import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../server/contract/common.ts';
import type { SupplyReasonCode } from '../../../server/core/phrases/supply.ts';
import { FUEL_RULES } from '../../../server/core/supply/judge/fuels.ts';
import { classify } from '../../../server/core/supply/judge/rules.ts';
import { toSupplyFeatures } from '../../../server/core/supply/points/features.ts';
import type { SupplyPoint } from '../../../server/core/supply/points/supply-point.ts';
import { LIFECYCLE_PREFIXES } from '../../../server/core/supply/tags/kinds.ts';
import { matchKinds } from '../../../server/core/supply/tags/match-kinds.ts';
import { effectOf } from '../../../server/core/supply/tags/reasons.ts';
import { ANY_EVIDENCE, anyEdit, anyJudging, anyTags, COMMODITIES } from './any-tags.ts';
import { nodeOf, pointsOf } from './judged.ts';

const RUNS = { numRuns: 1000 };
const strength = (evidence: Evidence): number => ANY_EVIDENCE.indexOf(evidence);
const counting = (points: readonly SupplyPoint[]): string[] =>
  points.filter((point) => point.counts).map((point) => `${point.id} ${point.commodity}`);

describe('judging supplies', () => {
  it('counts exactly what no reason blocks, fit water only, and evidence that is enough', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(anyTags, anyJudging, anyEdit, (tags, judge, editedAt) => {
        for (const point of pointsOf(tags, judge, { editedAt })) {
          const codes = point.reasons.map(({ code }) => code as SupplyReasonCode);
          expect(point.counts).toBe(codes.every((code) => effectOf(code) !== 'blocks'));
          expect(new Set(codes).size).toBe(codes.length);
          expect(codes.includes('evidence-below')).toBe(
            strength(point.evidence) < strength(judge.counting[point.commodity]),
          );
          if (point.commodity === 'fuel') expect(point.waterClass).toBeUndefined();
          else if (point.waterClass !== 'drinking') expect(point.counts).toBe(false);
          if (point.evidence === 'doubtful') expect(codes.length).toBeGreaterThan(0);
        }
      }),
      RUNS,
    );
  });

  it('never counts a further point when the level is raised', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(anyTags, anyJudging, anyEdit, (tags, judge, editedAt) => {
        for (const commodity of COMMODITIES) {
          const raised = ANY_EVIDENCE.slice(strength(judge.counting[commodity]) + 1);
          const before = counting(pointsOf(tags, judge, { editedAt }));
          for (const level of raised) {
            const levels = { ...judge.counting, [commodity]: level };
            const after = counting(pointsOf(tags, { ...judge, counting: levels }, { editedAt }));
            for (const one of after) expect(before).toContain(one);
          }
        }
      }),
      RUNS,
    );
  });

  it.each([
    ['access', 'private'],
    ['access', 'no'],
    ['disused', 'yes'],
    ['intermittent', 'yes'],
    ['drinking_water', 'no'],
    ['drinking_water:legal', 'no'],
    ['salt', 'yes'],
    ['opening_hours', 'off'],
    ['operational_status', 'broken'],
  ])('never counts a point because of %s=%s', { tags: 'slow' }, (key, value) => {
    fc.assert(
      fc.property(anyTags, anyJudging, anyEdit, (tags, judge, editedAt) => {
        fc.pre(tags[key] === undefined);
        const points = pointsOf(tags, judge, { editedAt });
        // A tag that makes a supply of what was none is another matter: the user may have confirmed that one.
        const known = points.map((point) => point.commodity);
        const marred = pointsOf({ ...tags, [key]: value }, judge, { editedAt });
        const after = counting(marred.filter((point) => known.includes(point.commodity)));
        for (const one of after) expect(counting(points)).toContain(one);
      }),
      RUNS,
    );
  });

  it('never counts a point because its kind is marked as former as well', () => {
    const prefixes = fc.constantFrom(...LIFECYCLE_PREFIXES);
    fc.assert(
      fc.property(anyTags, anyJudging, prefixes, (tags, judge, prefix) => {
        const before = counting(pointsOf(tags, judge));
        for (const { rule } of matchKinds(tags)) {
          const [key, value] = Object.entries(rule.forms[0]!)[0]!;
          if (tags[key] !== value) continue;
          const after = counting(pointsOf({ ...tags, [`${prefix}:${key}`]: value }, judge));
          for (const one of after) expect(before).toContain(one);
        }
      }),
      RUNS,
    );
  });

  it('never knows a supply better for a missing key than for its plain yes', { tags: 'slow' }, () => {
    const keys = [...Object.values(FUEL_RULES).map((fuel) => fuel.keys[0]!), 'drinking_water'];
    fc.assert(
      fc.property(anyTags, anyJudging, fc.constantFrom(...keys), (tags, judge, key) => {
        const commodity = key === 'drinking_water' ? 'water' : 'fuel';
        const ours = FUEL_RULES[judge.fuelKind].keys;
        fc.pre(commodity === 'water' || ours.includes(key));
        fc.pre(tags.drinkable === undefined);
        const { [key]: _, ...without } = tags;
        const missing = pointsOf(without, judge).find((point) => point.commodity === commodity);
        const told = pointsOf({ ...without, [key]: 'yes' }, judge).find(
          (point) => point.commodity === commodity,
        );
        if (missing === undefined) return;
        expect(strength(missing.evidence)).toBeLessThanOrEqual(strength(told!.evidence));
      }),
      RUNS,
    );
  });

  it('never knows a supply better for older tags', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(
        anyTags,
        anyJudging,
        fc.array(anyEdit, { minLength: 2, maxLength: 2 }),
        (tags, judge, edits) => {
          const [older, newer] = edits.map((edit) => edit ?? '2026-09-01T00:00:00Z').sort();
          const old = pointsOf(tags, judge, { editedAt: older! });
          const fresh = pointsOf(tags, judge, { editedAt: newer! });
          const unaged = pointsOf(tags, judge, { editedAt: null });
          expect(old).toHaveLength(fresh.length);
          for (const [i, point] of old.entries()) {
            expect(strength(point.evidence)).toBeLessThanOrEqual(strength(fresh[i]!.evidence));
            if (tags.check_date === undefined && tags['survey:date'] === undefined) {
              expect(strength(fresh[i]!.evidence)).toBeLessThanOrEqual(strength(unaged[i]!.evidence));
            }
            if (point.counts) expect(fresh[i]!.counts).toBe(true);
          }
        },
      ),
      RUNS,
    );
  });

  it('judges each object by itself, in whatever order they come', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(fc.array(anyTags, { minLength: 1, maxLength: 8 }), anyJudging, (tagSets, judge) => {
        const features = tagSets.map((tags, i) => nodeOf(tags, { id: `node/${i}` }));
        const all = classify(toSupplyFeatures(features).features, judge);
        const reversed = classify(toSupplyFeatures([...features].reverse()).features, {
          ...judge,
          confirmations: [...(judge.confirmations ?? [])].reverse(),
        });
        const inOrder = (points: SupplyPoint[]) =>
          [...points].sort((a, b) => (`${a.id} ${a.commodity}` < `${b.id} ${b.commodity}` ? -1 : 1));
        expect(inOrder(reversed)).toEqual(inOrder(all));
        const single = features.flatMap((feature) => classify(toSupplyFeatures([feature]).features, judge));
        expect(all).toEqual(single);
      }),
      RUNS,
    );
  });

  it('changes nothing that it is given', () => {
    fc.assert(
      fc.property(anyTags, anyJudging, (tags, judge) => {
        const features = toSupplyFeatures([nodeOf(Object.freeze({ ...tags }))]).features;
        for (const feature of features) Object.freeze(Object.assign(feature, { alsoIds: Object.freeze([]) }));
        const before = JSON.stringify([features, judge]);
        classify(features, Object.freeze(judge));
        expect(JSON.stringify([features, judge])).toBe(before);
      }),
    );
  });
});
