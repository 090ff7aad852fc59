import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapData } from '../../../../server/contract/answers/map.ts';
import { keySupplies, troubleSpans } from '../../../../web/map/geometry/key-supplies.ts';
import { sampleReply } from '../../sample-reply.ts';

const { map } = sampleReply();
type Mark = MapData['supplies']['features'][number];

const mark = (id: string, atKm: number[], more: Partial<Mark['properties']> = {}): Mark => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [80, -30] },
  properties: {
    id,
    name: null,
    commodity: 'water',
    kind: 'well',
    counts: true,
    evidence: 'stated',
    atKm,
    tags: {},
    ...more,
  },
});
const piece = (verdict: string, fromKm: number, toKm: number): MapData['route']['features'][number] => ({
  type: 'Feature',
  geometry: { type: 'LineString', coordinates: [] },
  properties: {
    commodity: 'water',
    gap: fromKm,
    verdict,
    state: 'left',
    noCover: false,
    share: 1,
    fromKm,
    toKm,
  },
});
const withMarks = (marks: Mark[], pieces: MapData['route']['features'] = []): MapData => ({
  ...map,
  supplies: { type: 'FeatureCollection', features: marks },
  route: { type: 'FeatureCollection', features: pieces },
});

describe('supplies that are always drawn by themselves', () => {
  it('are those with no other near along the route, whatever there is', () => {
    const place = fc.record({ id: fc.constantFrom('a', 'b', 'c', 'd', 'e'), km: fc.nat(400) });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), (places) => {
        const marks = places.map(({ id, km }, i) => mark(`${id}${i}`, [km]));
        const keys = keySupplies(withMarks(marks), null);
        for (const { properties } of marks) {
          const [km = 0] = properties.atKm;
          const alone = marks.every(
            ({ properties: other }) => other.id === properties.id || Math.abs((other.atKm[0] ?? 0) - km) > 30,
          );
          expect(keys.has(`water ${properties.id}`)).toBe(alone);
        }
      }),
    );
  });

  it('are not kept company by what does not count, by the other commodity, or by themselves', () => {
    const marks = [
      mark('well', [100, 105]),
      mark('trough', [101], { counts: false }),
      mark('pump', [102], { commodity: 'fuel' }),
    ];
    expect([...keySupplies(withMarks(marks), null)].sort()).toEqual(['fuel pump', 'water well']);
  });

  it('are those at either end of a gap that is not held, and where the plan fills', () => {
    const marks = [10, 12, 14, 16, 18].map((km) => mark(`tap ${km}`, [km]));
    const pieces = [piece('enough', 10, 12), piece('short', 12, 14), piece('enough', 14, 18)];
    expect([...keySupplies(withMarks(marks, pieces), new Set(['water tap 18']))].sort()).toEqual([
      'water tap 12',
      'water tap 14',
      'water tap 18',
    ]);
  });
});

it('a gap that is not held is one span, from its first piece to its last', () => {
  const pieces = [piece('short', 12, 13), piece('enough', 14, 18)];
  const [first] = pieces;
  const later = { ...first!, properties: { ...first!.properties, fromKm: 13, toKm: 14 } };
  expect(troubleSpans(withMarks([], [...pieces, later]))).toEqual([
    { commodity: 'water', fromKm: 12, toKm: 14 },
  ]);
});
