import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import {
  FRESH,
  FUEL,
  type MapObject,
  osmXml,
  overpassJson,
  placeBeside,
  STRAIGHT_BOX,
  StraightRoute,
  straightMap,
} from './straight-route.ts';

let straight: StraightRoute;
beforeAll(async () => {
  straight = await StraightRoute.open();
});
afterAll(() => straight.close());

const VERSION = { version: 1, timestamp: FRESH };
const FROM_KM = 700;
const TO_KM = 720;

interface FerryMap {
  tags?: Readonly<Record<string, string>>;
  /** Ends of the mapped line, km of the route, and how far to the east of it. */
  ends?: readonly [fromKm: number, toKm: number, eastM: number];
  more?: readonly MapObject[];
}

/** The straight map with water from km 700 to 720, no road there, and a ferry line over it. */
function mapWith({ tags = {}, ends = [FROM_KM, TO_KM, 0], more = [] }: FerryMap = {}): MapObject[] {
  const [fromKm, toKm, eastM] = ends;
  const ferry: MapObject[] = [
    { type: 'node', id: 900_001, ...placeBeside(fromKm, eastM), ...VERSION },
    { type: 'node', id: 900_002, ...placeBeside(toKm, eastM), ...VERSION },
    {
      type: 'way',
      id: 900_003,
      nodes: [900_001, 900_002],
      tags: { route: 'ferry', name: 'Strait', ...tags },
      ...VERSION,
    },
  ];
  // The road of the land ends at the one shore and begins at the other.
  return straightMap({ more: [...more, ...ferry] }).flatMap((object): MapObject[] => {
    if (object.type !== 'way' || object.tags?.highway === undefined || object.id !== 200_000 + 680)
      return [object];
    const nodes = object.nodes ?? [];
    return [{ ...object, nodes: nodes.filter((id) => id <= 100_000 + FROM_KM) }];
  });
}

const answer = (ferry?: FerryMap): Promise<Analysis> =>
  straight.analysis({ 'map.osm': osmXml({ objects: mapWith(ferry) }) });
const lastFuel = (analysis: Analysis) => analysis.fuel.gaps.at(-1);
const ferriesOf = ({ cautions }: Analysis) => cautions.filter(({ code }) => code === 'ferry');

describe('a route that takes a mapped ferry (OSM wiki, Tag:route=ferry)', () => {
  it('burns no fuel on it and takes its mapped hours', async () => {
    const driven = await answer({ tags: { motor_vehicle: 'no' } });
    expect(ferriesOf(driven)).toEqual([]);
    const carried = await answer({ tags: { duration: '05:00' } });
    const [ferry] = ferriesOf(carried);
    expect(ferry?.fromKm).toBeCloseTo(FROM_KM, -1);
    expect((ferry?.toKm ?? 0) - (ferry?.fromKm ?? 0)).toBeCloseTo(20, 0);
    expect(ferry?.text).toContain('Taken for a ferry (Strait)');
    // 15 l/100 km over 20 km.
    expect((lastFuel(driven)?.needL ?? 0) - (lastFuel(carried)?.needL ?? 0)).toBeCloseTo(3, 1);
    expect((lastFuel(driven)?.wayKm ?? 0) - (lastFuel(carried)?.wayKm ?? 0)).toBeCloseTo(20, 0);
    // Five hours aboard in place of half an hour's drive at 40 km/h, at 14 l a day.
    const more = (carried.water.gaps.at(-1)?.needL ?? 0) - (driven.water.gaps.at(-1)?.needL ?? 0);
    expect(more).toBeGreaterThan(0);
    expect(carried.assumptions.filter(({ path }) => path.includes('duration'))).toEqual([]);
  });

  it.each([
    ['PT2H30M', 2.5],
    ['150', 2.5],
    ['2:30', 2.5],
    ['02:30:00', 2.5],
  ])('reads a duration of %s', async (duration, hours) => {
    const [ferry] = ferriesOf(await answer({ tags: { duration } }));
    expect(ferry?.text).toContain(`it takes ${hours} h,`);
  });

  it.each([[undefined], ['soon'], ['00:05']])(
    'goes slowly where its duration is %s, and says so',
    async (duration) => {
      const analysis = await answer(duration === undefined ? {} : { tags: { duration } });
      expect(ferriesOf(analysis)[0]?.text).toMatch(/it takes 2 h \(not mapped, reckoned slow\)/);
      expect(analysis.assumptions.find(({ path }) => path === '/map/way/900003/duration')?.value).toMatch(
        /^2 hours/,
      );
    },
  );

  it('is found alike by a map of pbf and by an answer of Overpass', async () => {
    const objects = mapWith({ tags: { duration: '05:00' } });
    const inOrder = { node: 0, way: 1, relation: 2 };
    const sorted = objects.toSorted((a, b) => inOrder[a.type] - inOrder[b.type] || a.id - b.id);
    const [byXml, byPbf, byJson] = [
      await answer({ tags: { duration: '05:00' } }),
      await straight.analysis({
        'map.osm.pbf': encodePbfElements(STRAIGHT_BOX, sorted as PbfElement[], { asOf: FRESH }),
      }),
      await straight.analysis({ 'map.json': overpassJson({ objects }) }),
    ];
    expect(ferriesOf(byXml)).toHaveLength(1);
    expect(ferriesOf(byPbf)).toEqual(ferriesOf(byXml));
    expect(ferriesOf(byJson)).toEqual(ferriesOf(byXml));
  });

  it('is planned with as it is reckoned with', { tags: 'slow' }, async () => {
    const objects = mapWith({ tags: { duration: '05:00' } });
    const { plan } = JSON.parse(
      await straight.run({ 'map.osm': osmXml({ objects }) }, {}, { command: 'plan', more: ['--json'] }),
    ) as { plan: { status: string; stops: unknown[] } };
    expect(plan.stops.length).toBeGreaterThan(0);
  });

  it('seeks nothing on it, and all that there is at its ends', async () => {
    const at = (id: number, km: number): MapObject => ({ ...FUEL, id, ...placeBeside(km, 100) });
    const more = [at(71, FROM_KM - 1), at(72, (FROM_KM + TO_KM) / 2), at(73, TO_KM + 1)];
    const idsOf = (analysis: Analysis) =>
      analysis.passings.flatMap(({ id }) => (id.startsWith('node/7') ? [id] : []));
    expect(idsOf(await answer({ more }))).toEqual(['node/71', 'node/73']);
    expect(idsOf(await answer({ more, tags: { motorcar: 'no' } }))).toEqual([
      'node/71',
      'node/72',
      'node/73',
    ]);
  });

  it.each<[string, FerryMap]>([
    ['lies beside the route', { ends: [FROM_KM, TO_KM, 1500] }],
    ['goes on where the route leaves it', { ends: [FROM_KM, TO_KM + 60, 0] }],
    ['crosses the route', { ends: [FROM_KM, FROM_KM + 0.1, 3000] }],
    [
      'has a bridge beside it',
      {
        more: [
          { type: 'node', id: 900_011, ...placeBeside(705, 150), ...VERSION },
          { type: 'node', id: 900_012, ...placeBeside(715, 150), ...VERSION },
          {
            type: 'way',
            id: 900_013,
            nodes: [900_011, 900_012],
            tags: { highway: 'primary', bridge: 'yes' },
            ...VERSION,
          },
        ],
      },
    ],
    [
      'has a road beside it',
      {
        more: [
          { type: 'node', id: 900_011, ...placeBeside(700, 60), ...VERSION },
          { type: 'node', id: 900_012, ...placeBeside(720, 60), ...VERSION },
          { type: 'way', id: 900_013, nodes: [900_011, 900_012], tags: { highway: 'primary' }, ...VERSION },
        ],
      },
    ],
  ])('is driven as before where the ferry line %s', async (_, ferry) => {
    expect(ferriesOf(await answer(ferry))).toEqual([]);
  });
});
