import { describe, expect, it } from 'vitest';
import { coverOn } from '../../../server/core/analyse/route-cover.ts';
import type { CoverArea, MappedFeature } from '../../../server/core/input/sources.ts';
import type { VouchedExtract } from '../../../server/core/supply/points/dated.ts';
import { DIESEL, equatorLon, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { routeThrough } from '../route/lines.ts';

const ROUTE = routeThrough([
  [0, 0],
  [equatorLon(300), 0],
]);
const WORLD: CoverArea['rings'] = [
  [
    [-10, -10],
    [10, -10],
    [10, 10],
    [-10, 10],
    [-10, -10],
  ],
];
const area = (changes: Partial<CoverArea>): CoverArea => ({
  commodity: 'fuel',
  rings: WORLD,
  guessed: false,
  source: 'maps/a.osm',
  ...changes,
});
const extractOf = (source: string) => ({
  source,
  asOf: null,
  newestEdit: null,
  attribution: null,
  licence: null,
});
const coverOf = (cover: CoverArea[], features: MappedFeature[] = [], vouched: VouchedExtract[] = []) =>
  coverOn(ROUTE, { ...inputOf({ features }).supplies, cover, extracts: [extractOf('maps/a.osm')] }, vouched);

const inKm = (spans: readonly { fromM: number; toM: number }[]) =>
  spans.map(({ fromM, toM }) => [Math.round(fromM / 1000), Math.round(toM / 1000)]);

describe('a file without roads', () => {
  const byObjects = area({ trimmedBy: 'objects' });
  const at = (km: number, offKm = 0, changes: Partial<MappedFeature> = {}) => ({
    ...pointFeature(`node/${km}`, km, DIESEL, offKm),
    source: 'maps/a.osm',
    ...changes,
  });
  const covered = (...features: MappedFeature[]) => inKm(coverOf([byObjects], features).spans.fuel);

  it('speaks for 25 km about each of its objects, within the route', () => {
    expect(covered(at(100))).toEqual([[75, 125]]);
    expect(covered(at(10), at(290))).toEqual([
      [0, 35],
      [265, 300],
    ]);
    expect(covered(at(100), at(140))).toEqual([[75, 165]]);
  });

  it('says nothing by objects far off the route, of another commodity, or of another file', () => {
    expect(covered(at(100, 26))).toEqual([]);
    expect(covered(at(100, 0, { tags: TAP }))).toEqual([]);
    expect(covered(at(100, 0, { source: 'maps/b.osm' }))).toEqual([]);
    expect(covered(at(100, 0, { source: 'maps/b.osm', seenIn: ['maps/a.osm'] }))).toEqual([[75, 125]]);
  });
});

describe('a file that may have been cut off', () => {
  it('covers nothing until the user says that it is whole', () => {
    const cut = area({ maybeCut: true });
    const coveredBy = (vouched: VouchedExtract[]) => inKm(coverOf([cut], [], vouched).spans.fuel);
    expect(coveredBy([])).toEqual([]);
    expect(coveredBy([{ file: 'b.osm', whole: true }])).toEqual([]);
    expect(coveredBy([{ file: 'a.osm', whole: true }])).toEqual([[0, 300]]);
  });
});

describe('the hull of a file’s objects', () => {
  const hull = area({ guessed: true });

  it('covers nothing until the user vouches for it, and is told of either way', () => {
    const unvouched = coverOf([hull]);
    expect([unvouched.spans.fuel, unvouched.cautions.map(({ code }) => code)]).toEqual([
      [],
      ['cover-unvouched'],
    ]);
    const vouched = coverOf([hull], [], [{ file: 'a.osm', hull: true }]);
    expect(inKm(vouched.spans.fuel)).toEqual([[0, 300]]);
    expect(vouched.cautions.map(({ code }) => code)).toEqual(['cover-guessed']);
    expect(coverOf([hull], [], [{ file: 'b.osm', hull: true }]).spans.fuel).toEqual([]);
  });

  it('gives way to the boundary that the user has for the file, of the commodity that it is for', () => {
    const ring: [number, number][] = [
      [equatorLon(100), -1],
      [equatorLon(200), -1],
      [equatorLon(200), 1],
      [equatorLon(100), 1],
      [equatorLon(100), -1],
    ];
    const told = coverOf([hull], [], [{ file: 'a.osm', boundaries: [{ rings: [ring] }] }]);
    expect([inKm(told.spans.fuel), inKm(told.spans.water)]).toEqual([[[100, 200]], [[100, 200]]]);
    const ofWater = coverOf(
      [hull],
      [],
      [{ file: 'a.osm', boundaries: [{ commodity: 'water', rings: [ring] }] }],
    );
    expect([inKm(ofWater.spans.fuel), inKm(ofWater.spans.water)]).toEqual([[], [[100, 200]]]);
  });
});
