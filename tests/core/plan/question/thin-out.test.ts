import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Evidence } from '../../../../server/contract/common.ts';
import { anyChain } from '../../../../server/core/plan/question/any-chain.ts';
import { fewerSupplies, thinOut } from '../../../../server/core/plan/question/thin-out.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import type { SupplyEdge } from '../../../../server/core/plan/side/supply-edge.ts';
import { courseOf, EXAMPLE_RIG, endEdge, passingEdge, startEdge } from '../../../helpers/course.ts';

const RANKS: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const rank = ({ evidence }: SupplyEdge) => RANKS.indexOf(evidence!);

const supply = fc.record({
  atM: fc.integer({ min: 0, max: 500_000 }),
  detourM: fc.constantFrom(0, 0, 100, 2000, 5000),
  evidence: fc.constantFrom<Evidence>('confirmed', 'stated', 'implied'),
  told: fc.constantFrom(false, false, false, false, true),
  waitDays: fc.constantFrom(0, 0, 0, 0.5),
  mostL: fc.constantFrom(null, null, null, 20),
});

type Drawn = typeof supply extends fc.Arbitrary<infer T> ? T : never;

const edgesFrom = (drawn: readonly Drawn[]): SupplyEdge[] => [
  startEdge,
  ...[...drawn]
    .sort((a, b) => a.atM - b.atM)
    .map(
      ({ atM, detourM, evidence, told, waitDays, mostL }, index): SupplyEdge => ({
        kind: 'passing',
        id: `node/${index}`,
        name: null,
        atM,
        detourM,
        evidence,
        waitDays,
        terms: { mostL, fillsCans: true, daysPerLitre: 0 },
        ...(told ? { ofUser: told } : {}),
      }),
    ),
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
        expect(edge.ofUser).toBeUndefined();
        expect(always.has(edge)).toBe(false);
        expect(
          kept.some(
            (other) =>
              other.kind === 'passing' &&
              Math.abs(other.atM - edge.atM) <= withinM! &&
              rank(other) >= rank(edge) &&
              other.detourM <= edge.detourM &&
              other.waitDays! <= edge.waitDays! &&
              (other.terms!.mostL === null || edge.terms!.mostL !== null),
          ),
        ).toBe(true);
      }
      // There are only so many ways for each of those within reach of each other to be better in something.
      const plain = kept.filter(
        (edge) => edge.kind === 'passing' && edge.ofUser !== true && !always.has(edge),
      );
      expect(plain.length).toBeLessThanOrEqual(20);
    }),
  );
  expect(thinned).toBeGreaterThan(500);
});

it('leaves a chain to the end where there is one', () => {
  // 17 km on a tank, a pump every 5 km: of 400 one every 20 km is left, and the next would be too far.
  const rigFile = {
    ...EXAMPLE_RIG,
    fuel: {
      ...EXAMPLE_RIG.fuel,
      litresPer100Km: { low: 10, typical: 10, high: 10 },
      tanks: [{ name: 'main', litres: 1.7 }],
      reserve: { litres: 0, shareOfNeed: 0 },
    },
  };
  const lengthM = 2_000_000;
  const edges: SupplyEdge[] = [startEdge, endEdge(lengthM)];
  edges.splice(1, 0, ...Array.from({ length: 399 }, (_, index) => passingEdge((index + 1) * 5000)));
  const side: CarrySide = {
    commodity: 'fuel',
    course: courseOf({ rigFile, lengthM }),
    edges,
    startL: 1.7,
    cansAtStart: true,
    canL: 20,
    cansDrinkable: true,
    mostCans: 0,
  };
  expect(anyChain({ ...side, edges: thinOut(edges, new Set()).edges })).toBeNull();
  const { edges: kept, withinM } = fewerSupplies(side, new Set(), 0);
  expect(withinM).not.toBeNull();
  expect(kept.length).toBeLessThan(250);
  const chain = anyChain({ ...side, edges: kept })!;
  const places = [0, ...chain.map(({ atM }) => atM), lengthM];
  for (const [index, atM] of places.slice(1).entries())
    expect(atM - places[index]!).toBeLessThanOrEqual(17_000);
  // A tank of 4 km has no chain at all.
  const smaller = {
    ...side,
    startL: 0.4,
    course: courseOf({
      rigFile: { ...rigFile, fuel: { ...rigFile.fuel, tanks: [{ name: 'main', litres: 0.4 }] } },
      lengthM,
    }),
  };
  expect(anyChain(smaller)).toBeNull();
  expect(fewerSupplies(smaller, new Set(), 0).edges).toEqual(thinOut(edges, new Set()).edges);
});

it('the best known of supplies close together stands for the others, then the one without a wait, then the nearest', () => {
  const alike = (index: number, changes: Partial<SupplyEdge>): SupplyEdge => ({
    ...passingEdge(100_000 + index),
    id: `node/${index}`,
    ...changes,
  });
  const keptOf = (...edges: SupplyEdge[]) =>
    thinOut([startEdge, ...edges, endEdge(500_000)], new Set(), 1)
      .edges.filter(({ kind }) => kind === 'passing')
      .map(({ id }) => id);
  // The better one is named last each time: names decide nothing.
  expect(keptOf(alike(1, { evidence: 'implied' }), alike(2, { evidence: 'stated' }))).toEqual(['node/2']);
  expect(keptOf(alike(1, { waitDays: 1 }), alike(2, {}))).toEqual(['node/2']);
  expect(keptOf(alike(1, { detourM: 200 }), alike(2, { detourM: 100 }))).toEqual(['node/2']);
});
