import { describe, expect, it } from 'vitest';
import type { Surrounding, SurroundingKind } from '../../../server/core/input/sources.ts';
import { ferriesOn } from '../../../server/core/surroundings/ferries.ts';
import { reachOf } from '../../../server/core/surroundings/reach.ts';
import { RoadMarks } from '../../../server/core/surroundings/road-marks.ts';
import { equatorLon } from '../../helpers/analyse-input.ts';
import { type Corner, routeThrough } from '../route/lines.ts';

/** A place some km along the equator and metres north of it: 110,574 m a degree of latitude (check-values G4). */
const place = (km: number, northM = 0): Corner => [equatorLon(km), northM / 110_574.276];

const lineOf = (what: SurroundingKind, ...places: readonly Corner[]): Surrounding => ({
  id: 'way/1',
  what,
  name: 'Long water',
  hours: 2,
  lines: [Float64Array.from(places.flat())],
});

const ROUTE = routeThrough([place(0), place(30)]);
const FERRY = lineOf('ferry', place(10), place(20));

/** Roads of the extract along the equator between two km, which may have nothing to do with the ferry. */
function roadsAlong(fromKm: number, toKm: number) {
  const marks = RoadMarks.of(reachOf(ROUTE));
  const [[lon, lat], [toLon, toLat]] = [place(fromKm), place(toKm)];
  marks.markStep(lon, lat, toLon, toLat);
  return [{ ...marks.drawn(), source: 'test' }];
}

const FAR_ROADS = roadsAlong(1, 3);

describe('a ferry', () => {
  it('is taken from where the route meets the one end of its line to where it meets the other', () => {
    const [ferry, ...others] = ferriesOn(ROUTE, { objects: [FERRY], roads: FAR_ROADS });
    expect(others).toEqual([]);
    expect(ferry).toMatchObject({ id: 'way/1', name: 'Long water', hours: 2, isMapped: true });
    expect(ferry?.fromM).toBeCloseTo(10_000, 0);
    expect(ferry?.toM).toBeCloseTo(20_000, 0);
  });

  it('is not taken where no extract shows roads: nobody knows then that none goes there', () => {
    expect(ferriesOn(ROUTE, { objects: [FERRY], roads: [] })).toEqual([]);
  });

  it.each([
    ['a bridge goes there, in part of its way', lineOf('road-across', place(14), place(15))],
    [
      'a bridge is no farther off than the route may be, 500 m',
      lineOf('road-across', place(14, 450), place(15, 450)),
    ],
  ])('is not taken where %s', (_, bridge) => {
    expect(ferriesOn(ROUTE, { objects: [FERRY, bridge], roads: FAR_ROADS })).toEqual([]);
  });

  it('is taken where a bridge is farther off, and where another line goes beside it', () => {
    const bridge = lineOf('road-across', place(14, 800), place(15, 800));
    const railway = lineOf('railway', place(14), place(15));
    expect(ferriesOn(ROUTE, { objects: [FERRY, bridge, railway], roads: FAR_ROADS })).toHaveLength(1);
  });

  it('is not taken where roads go beside more than half of it', () => {
    expect(ferriesOn(ROUTE, { objects: [FERRY], roads: roadsAlong(10, 17) })).toEqual([]);
    expect(ferriesOn(ROUTE, { objects: [FERRY], roads: roadsAlong(10, 13) })).toHaveLength(1);
  });

  it('is not taken where the route leaves its line on the way, however short the way round', () => {
    const round = routeThrough([place(0), place(10), place(15, 1500), place(20), place(30)]);
    expect(ferriesOn(round, { objects: [FERRY], roads: FAR_ROADS })).toEqual([]);
  });

  it('is not taken where the route goes a far longer way between its ends', () => {
    const round = routeThrough([place(0), place(10), place(15, 6000), place(20), place(30)]);
    expect(ferriesOn(round, { objects: [FERRY], roads: FAR_ROADS })).toEqual([]);
  });

  it('of two lines over the same water is the slower one', () => {
    const slow = { ...FERRY, id: 'way/2', hours: 3 };
    const found = ferriesOn(ROUTE, { objects: [FERRY, slow], roads: FAR_ROADS });
    expect(found.map(({ id, hours }) => [id, hours])).toEqual([['way/2', 3]]);
  });
});
