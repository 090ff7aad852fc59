import { appendFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import {
  FRESH,
  type MapObject,
  osmXml,
  overpassJson,
  placeBeside,
  STRAIGHT_BOX,
  StraightRoute,
  straightMap,
} from './straight-route.ts';

let straight: StraightRoute;
/** The same with a treatment line in its rig. */
let treating: StraightRoute;
beforeAll(async () => {
  straight = await StraightRoute.open();
  treating = await StraightRoute.open();
  await appendFile(treating.path('rig.yaml'), `treatment: ${JSON.stringify(LINE)}\n`);
});
afterAll(() => Promise.all([straight.close(), treating.close()]));

const VERSION = { version: 1, timestamp: FRESH };

/** A line through places, each km of the route and metres to the east of it. */
const wayThrough = (
  id: number,
  tags: Readonly<Record<string, string>>,
  places: readonly (readonly [km: number, eastM: number])[],
): MapObject[] => {
  const nodes = places.map(
    ([km, eastM], index): MapObject => ({
      type: 'node',
      id: id * 100 + index,
      ...placeBeside(km, eastM),
      ...VERSION,
    }),
  );
  const refs = nodes.map((node) => node.id);
  const isRing = places.at(-1)?.join() === places[0]?.join();
  const [first] = refs;
  const closed = isRing && first !== undefined ? [...refs.slice(0, -1), first] : refs;
  return [...(isRing ? nodes.slice(0, -1) : nodes), { type: 'way', id, nodes: closed, tags, ...VERSION }];
};

/** A river that crosses the road, and one that runs beside it for 60 km. */
const crossing = (tags: Readonly<Record<string, string>> = {}) =>
  wayThrough(9001, { waterway: 'river', name: 'Brown River', ...tags }, [
    [600.5, -4000],
    [600.5, 4000],
  ]);
const beside = wayThrough(
  9002,
  { waterway: 'river', name: 'Long River' },
  Array.from({ length: 31 }, (_, index) => [300 + 2 * index, 150] as const),
);
const lake = (tags: Readonly<Record<string, string>> = {}) =>
  wayThrough(9003, { natural: 'water', name: 'Round Lake', ...tags }, [
    [800, 100],
    [800, 900],
    [801, 900],
    [801, 100],
    [800, 100],
  ]);

const LINE = {
  at: 'filling',
  target: 'two-star',
  stages: [
    { kind: 'sediment', poreMicron: 5 },
    { kind: 'ultrafilter', poreMicron: 0.02, logs: { bacteria: 6, viruses: 4, protozoa: 4 } },
    { kind: 'carbon' },
  ],
};
const ASKED = { counting: { fuel: 'implied', water: 'doubtful' } };

const mapWith = (more: readonly MapObject[]): MapObject[] => straightMap({ water: null, more });
const analysed = (more: readonly MapObject[], route = straight, trip = {}) =>
  route.analysis({ 'map.osm': osmXml({ objects: mapWith(more) }) }, trip);
const watersOf = ({ passings }: Analysis) => passings.filter(({ id }) => /^way\/900\d$/.test(id));

describe('rivers and lakes that the road comes by (OSM wiki, Tag:waterway=river, Tag:natural=water)', () => {
  it('are named, doubtful and to be treated; none counts unless the line treats it and the user asks', {
    tags: 'slow',
  }, async () => {
    const waters = [...crossing(), ...lake()];
    for (const [route, trip] of [
      [straight, {}],
      [treating, {}],
      [straight, ASKED],
    ] as const) {
      const told = watersOf(await analysed(waters, route, trip));
      expect(told.map(({ id, counts, evidence }) => [id, counts, evidence])).toEqual([
        ['way/9001', false, 'doubtful'],
        ['way/9003', false, 'doubtful'],
      ]);
      expect(told.map(({ name, waterClass }) => [name, waterClass])).toEqual([
        ['Brown River', 'treatable'],
        ['Round Lake', 'treatable'],
      ]);
      expect(told.map(({ kind }) => kind)).toEqual(['river, surface water', 'lake or pond, surface water']);
    }
    const counted = await analysed(waters, treating, ASKED);
    expect(watersOf(counted).map(({ counts }) => counts)).toEqual([true, true]);
    expect(watersOf(counted).flatMap(({ reasons }) => reasons.map(({ code }) => code))).not.toContain(
      'no-way-across',
    );
    expect(counted.water.gaps).toHaveLength(3);
  });

  it('are one in ten kilometres where they run beside the road', async () => {
    const told = watersOf(await analysed(beside));
    expect(told.length).toBeGreaterThanOrEqual(6);
    expect(told.length).toBeLessThanOrEqual(7);
    for (const { offRouteKm } of told) expect(offRouteKm).toBeCloseTo(0.148, 2);
  });

  it.each([
    ['dry for a time', { intermittent: 'yes' }],
    ['there in some season', { seasonal: 'spring' }],
    ['salt', { salt: 'yes' }],
    ['tidal', { tidal: 'yes' }],
  ])('are left out where they are %s', async (_, tags) => {
    expect(watersOf(await analysed([...crossing(tags), ...lake(tags)]))).toEqual([]);
  });

  it('are left out where they are basins of works, and farther off than 300 m', async () => {
    const basin = lake({ water: 'wastewater' });
    const far = wayThrough(9004, { waterway: 'river' }, [
      [400, 400],
      [420, 400],
    ]);
    expect(watersOf(await analysed([...basin, ...far]))).toEqual([]);
  });

  it('are found alike by a map of pbf and by an answer of Overpass', { tags: 'slow' }, async () => {
    const objects = mapWith([...crossing(), ...lake()]);
    const inOrder = { node: 0, way: 1, relation: 2 };
    const sorted = objects.toSorted((a, b) => inOrder[a.type] - inOrder[b.type] || a.id - b.id);
    const [byXml, byPbf, byJson] = [
      await straight.analysis({ 'map.osm': osmXml({ objects }) }),
      await straight.analysis({
        'map.osm.pbf': encodePbfElements(STRAIGHT_BOX, sorted as PbfElement[], { asOf: FRESH }),
      }),
      await straight.analysis({ 'map.json': overpassJson({ objects }) }),
    ];
    const told = (analysis: Analysis) => watersOf(analysis).map(({ id, atKm, name }) => ({ id, atKm, name }));
    expect(told(byXml)).toHaveLength(2);
    expect(told(byPbf).map(({ id }) => id)).toEqual(told(byXml).map(({ id }) => id));
    expect(told(byJson)).toEqual(told(byXml));
  });
});
