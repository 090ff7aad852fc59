import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Evidence } from '../../../server/contract/common.ts';
import type { SupplyEdge } from '../../../server/core/carry/problem.ts';
import { thinOut } from '../../../server/core/carry/thin-out.ts';
import { endEdge, startEdge } from '../../helpers/course.ts';

const RANKS: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const rank = ({ evidence }: SupplyEdge) => RANKS.indexOf(evidence!);

const supply = fc.record({
  atM: fc.integer({ min: 0, max: 500_000 }),
  detourM: fc.constantFrom(0, 0, 100, 2000, 5000),
  evidence: fc.constantFrom<Evidence>('confirmed', 'stated', 'implied'),
  told: fc.constantFrom(false, false, false, false, true),
});

const edgesFrom = (
  drawn: { atM: number; detourM: number; evidence: Evidence; told: boolean }[],
): SupplyEdge[] => [
  startEdge,
  ...[...drawn]
    .sort((a, b) => a.atM - b.atM)
    .map(({ atM, detourM, evidence, told }, index): SupplyEdge => {
      const plain = { kind: 'passing' as const, id: `node/${index}`, name: null, atM, detourM, evidence };
      return told ? { ...plain, waitDays: 0.5 } : plain;
    }),
  endEdge(500_000),
];

it('leaves nothing out where there are few', () => {
  fc.assert(
    fc.property(fc.array(supply, { maxLength: 30 }), (drawn) => {
      const edges = edgesFrom(drawn);
      expect(thinOut(edges, new Set(), 30)).toEqual({ edges, withinM: null });
    }),
  );
});

it('leaves out only what another, as well known and no farther off, stands for close by', () => {
  let thinned = 0;
  fc.assert(
    fc.property(fc.array(supply, { minLength: 20, maxLength: 120 }), (drawn) => {
      const edges = edgesFrom(drawn);
      const always = new Set(edges.slice(3, 5));
      const { edges: kept, withinM } = thinOut(edges, always, 20);
      expect(edges.filter((edge) => kept.includes(edge))).toEqual(kept);
      const out = edges.filter((edge) => !kept.includes(edge));
      for (const edge of out) {
        thinned += 1;
        expect(edge.kind).toBe('passing');
        expect(edge.waitDays).toBeUndefined();
        expect(always.has(edge)).toBe(false);
        expect(
          kept.some(
            (other) =>
              other.kind === 'passing' &&
              Math.abs(other.atM - edge.atM) <= withinM! &&
              rank(other) >= rank(edge) &&
              other.detourM <= edge.detourM,
          ),
        ).toBe(true);
      }
      // Three ways to be known: of those within reach of each other no more than three are each better in something.
      const plain = kept.filter((edge) => edge.kind === 'passing' && !edge.waitDays && !always.has(edge));
      expect(plain.length).toBeLessThanOrEqual(20);
    }),
  );
  expect(thinned).toBeGreaterThan(500);
});
