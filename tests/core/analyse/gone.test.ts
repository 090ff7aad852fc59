import { describe, expect, it } from 'vitest';
import { markGone } from '../../../server/core/analyse/gone.ts';
import type { CoverArea } from '../../../server/core/input/sources.ts';
import { DIESEL, equatorLon, pointFeature } from '../../helpers/analyse-input.ts';
import { routeThrough } from '../route/lines.ts';

const ROUTE = routeThrough([
  [0, 0],
  [equatorLon(200), 0],
]);
const extract = (source: string, asOf: string) => ({
  source,
  asOf,
  asOfBy: 'file' as const,
  newestEdit: null,
  attribution: null,
  licence: null,
});
const OLD = extract('old.pbf', '2024-01-01T00:00:00Z');
const NEW = extract('new.pbf', '2025-01-01T00:00:00Z');
const general: CoverArea = {
  commodity: 'fuel',
  rings: [],
  guessed: false,
  source: 'new.pbf',
  isGeneral: true,
};
/** The newer extract covers the route from km 50 to km 150, and once more behind. */
const AREA = {
  area: general,
  spans: [
    { fromM: 50_000, toM: 150_000 },
    { fromM: 180_000, toM: 190_000 },
  ],
};

const goneIn = (
  km: number,
  offKm: number,
  changes: { seenIn?: string[]; area?: Partial<CoverArea> } = {},
) => {
  const feature = { ...pointFeature('node/1', km, DIESEL, offKm), source: 'old.pbf' };
  const areas = [{ ...AREA, area: { ...general, ...changes.area } }];
  const seen = changes.seenIn === undefined ? feature : { ...feature, seenIn: changes.seenIn };
  return markGone([seen], [OLD, NEW], { route: ROUTE, areas })[0]?.goneIn;
};

describe('an object that a newer general map has not', () => {
  it('is marked where that map covers the route beside it', () => {
    expect([goneIn(50.1, 0), goneIn(100, 4.9), goneIn(149.9, -4.9)]).toEqual([
      'new.pbf',
      'new.pbf',
      'new.pbf',
    ]);
  });

  it('is marked on every such stretch', () => {
    expect([goneIn(165, 0), goneIn(185, 0)]).toEqual([undefined, 'new.pbf']);
  });

  it('is not where that map ends before it, or is too far from it', () => {
    expect([goneIn(49, 0), goneIn(151, 1), goneIn(100, 5.1)]).toEqual([undefined, undefined, undefined]);
  });

  it('is not where the newer map has it, is no general one, or is of the other commodity', () => {
    expect(goneIn(100, 0, { seenIn: ['new.pbf'] })).toBeUndefined();
    expect(goneIn(100, 0, { area: { isGeneral: false } })).toBeUndefined();
    expect(goneIn(100, 0, { area: { commodity: 'water' } })).toBeUndefined();
  });
});
