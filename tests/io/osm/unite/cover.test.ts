import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bbox } from '../../../../server/contract/common.ts';
import { coverOfUser, ringsOfBox } from '../../../../server/core/route/cover/box-cover.ts';
import { NOTHING_FAR } from '../../../../server/io/osm/extract/far-objects.ts';
import type { RawExtract } from '../../../../server/io/osm/extract/raw-extract.ts';
import { HullOfObjects } from '../../../../server/io/osm/extract/whole-file/hull.ts';
import { osmPapers } from '../../../../server/io/osm/extract/whole-file/papers.ts';
import { coverOfExtract, ringsOfHull } from '../../../../server/io/osm/unite/cover.ts';

const extract = (more: Partial<RawExtract>): RawExtract => ({
  source: 'region.osm',
  format: 'osm-xml',
  papers: osmPapers({}),
  elements: [],
  wanted: new Set(),
  far: NOTHING_FAR,
  roads: null,
  surroundings: [],
  drawnRoads: null,
  unwanted: NOTHING_FAR,
  deleted: NOTHING_FAR,
  features: [],
  bounds: [84, -36, 87, -34],
  hull: null,
  shows: { fuel: true, water: true, general: true },
  counts: { nodes: 0, ways: 0, relations: 0 },
  ground: [],
  skipped: [],
  cautions: [],
  ...more,
});
const shows = (fuel: boolean, water: boolean, general: boolean) => ({ shows: { fuel, water, general } });
const covered = (more: Partial<RawExtract>) =>
  coverOfExtract(extract(more)).areas.map(({ commodity }) => commodity);
const codes = (more: Partial<RawExtract>) => coverOfExtract(extract(more)).cautions.map(({ code }) => code);

describe('what an extract covers', () => {
  it('a general map covers its declared bounds for both, also where it shows no supply', () => {
    const { areas, cautions } = coverOfExtract(extract(shows(false, false, true)));
    const rings = [
      [
        [84, -36],
        [87, -36],
        [87, -34],
        [84, -34],
        [84, -36],
      ],
    ];
    expect(areas).toEqual([
      { commodity: 'fuel', rings, guessed: false, source: 'region.osm', isGeneral: true },
      { commodity: 'water', rings, guessed: false, source: 'region.osm', isGeneral: true },
    ]);
    expect(cautions).toEqual([]);
  });

  it('a general map whose supplies are all of one kind says nothing of the other', () => {
    expect(covered(shows(true, false, true))).toEqual(['fuel']);
    expect(covered(shows(false, true, true))).toEqual(['water']);
  });

  it('is trimmed by the roads of the file, by the objects of one without', () => {
    const roads = Int32Array.of(7);
    const trimmedBy = (more: Partial<RawExtract>) =>
      coverOfExtract(extract(more)).areas.map((area) => area.trimmedBy);
    expect(trimmedBy({ roads })).toEqual([{ roads }, { roads }]);
    expect(trimmedBy(shows(true, false, false))).toEqual(['objects']);
    expect(trimmedBy({ ...shows(true, false, false), roads })).toEqual([{ roads }]);
  });

  it('a file that holds only fuel covers nothing for water, whatever its header says', () => {
    expect(covered(shows(true, false, false))).toEqual(['fuel']);
    expect(covered(shows(false, true, false))).toEqual(['water']);
    expect(covered(shows(true, true, false))).toEqual(['fuel', 'water']);
  });

  it('a file that shows nothing at all covers nothing, and says so', () => {
    expect([covered(shows(false, false, false)), codes(shows(false, false, false))]).toEqual([
      [],
      ['cover-none'],
    ]);
  });

  it('waypoints cover nothing, and say so', () => {
    const waypoints = { format: 'gpx-waypoints' as const, bounds: null };
    expect([covered(waypoints), codes(waypoints)]).toEqual([[], ['cover-none']]);
    expect(covered({ ...waypoints, bounds: [84, -36, 87, -34] })).toEqual([]);
  });

  it('without bounds the hull stands in as a guess; without either there is none', () => {
    const hull: [number, number][] = [
      [0, 0],
      [1, 0],
      [0, 1],
      [0, 0],
    ];
    const { areas } = coverOfExtract(extract({ bounds: null, hull }));
    expect(areas.map(({ rings, guessed }) => [rings, guessed])).toEqual([
      [[hull], true],
      [[hull], true],
    ]);
    expect([covered({ bounds: null }), codes({ bounds: null })]).toEqual([[], ['cover-none']]);
  });

  it('every declared box is covered', () => {
    expect(coverOfExtract(extract({ moreBounds: [[0, 0, 1, 1]] })).areas[0]?.rings).toHaveLength(2);
  });

  it('a box over the 180th meridian comes as two rings that end there', () => {
    expect(ringsOfBox([170, -10, -170, 10])).toEqual([
      ringsOfBox([170, -10, 180, 10])[0],
      ringsOfBox([-180, -10, -170, 10])[0],
    ]);
  });

  it('the user’s boxes are taken at their word', () => {
    expect(coverOfUser([{ commodity: 'water', bbox: [170, 0, -170, 1] }])).toMatchObject([
      { commodity: 'water', guessed: false, rings: [{ length: 5 }, { length: 5 }] },
    ]);
  });
});

const degrees = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const position = fc.tuple(degrees(-180, 180), degrees(-90, 90));

/** Twice the area, positive for an anticlockwise ring (the shoelace formula). */
const twiceArea = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!;
    return sum + x * y2 - x2 * y;
  }, 0);

const isWithin = (ring: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): boolean =>
  ring.slice(0, -1).every(([x1, y1], i) => {
    const [x2, y2] = ring[i + 1]!;
    return (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) >= -1e-7;
  });

describe('the hull of objects', () => {
  it('holds every one of them, and turns anticlockwise', () => {
    fc.assert(
      fc.property(fc.array(position, { minLength: 3, maxLength: 40 }), (positions) => {
        const hull = new HullOfObjects();
        for (const [lon, lat] of positions) hull.add(lon, lat);
        const ring = hull.ring();
        if (ring === null) return;
        expect(twiceArea(ring)).toBeGreaterThanOrEqual(0);
        const over = ring.some(([lon]) => lon > 180);
        for (const [lon, lat] of positions)
          expect(isWithin(ring, [over && lon < 0 ? lon + 360 : lon, lat])).toBe(true);
      }),
    );
  });

  it('is the same for many points as for their corners', () => {
    const hull = new HullOfObjects();
    for (let i = 0; i < 20_000; i += 1) hull.add((i % 141) / 141, ((i * 7) % 139) / 139);
    for (const [lon, lat] of [
      [-1, -1],
      [2, -1],
      [2, 2],
      [-1, 2],
    ] as const)
      hull.add(lon, lat);
    expect(hull.ring()).toEqual([
      [-1, -1],
      [2, -1],
      [2, 2],
      [-1, 2],
      [-1, -1],
    ]);
  });

  it('runs on past 180 when objects lie on both sides of that meridian, and is split there for cover', () => {
    const hull = new HullOfObjects();
    for (const [lon, lat] of [
      [179, 0],
      [-179, 0],
      [-179, 2],
      [179, 2],
    ] as const)
      hull.add(lon, lat);
    const ring = hull.ring()!;
    expect(ring).toEqual([
      [179, 0],
      [181, 0],
      [181, 2],
      [179, 2],
      [179, 0],
    ]);
    const rings = ringsOfHull(ring);
    expect(rings.map((each) => Math.abs(twiceArea(each)))).toEqual([4, 4]);
    expect(rings.flat().every(([lon]) => Math.abs(lon) <= 180)).toBe(true);
  });

  it('is none while the objects span no area', () => {
    const hull = new HullOfObjects();
    expect(hull.ring()).toBeNull();
    for (let i = 0; i < 5; i += 1) hull.add(i, i);
    expect(hull.ring()).toBeNull();
  });

  it('splitting at the meridian loses no area', () => {
    const box = fc.tuple(degrees(90, 179), degrees(-89, 0), degrees(181, 270), degrees(1, 89));
    fc.assert(
      fc.property(box, ([west, south, east, north]) => {
        const [ring] = ringsOfBox([west, south, east, north] as Bbox);
        const parts = ringsOfHull(ring!).map((each) => Math.abs(twiceArea(each)));
        expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(Math.abs(twiceArea(ring!)), 6);
      }),
    );
  });
});
