import type { Evidence } from '../../server/contract/common.ts';
import type { SupplyReasonCode } from '../../server/core/phrases/supply.ts';
import { type MapObject, placeBeside } from './straight-route.ts';

/** A place beside the route: metres to the east of it, and north of the row's own. */
export type Spot = readonly [eastM: number, northM: number];

/** An object of the ground: a line or closed ring through places, or one node; `hole` is a ring inside a multipolygon. */
export interface GroundObject {
  readonly tags: Readonly<Record<string, string>>;
  readonly line: readonly Spot[];
  /** Drawn as a relation of that type, whose way has no tags. */
  readonly relation?: 'multipolygon' | 'boundary';
  readonly hole?: readonly Spot[];
}

/** A supply beside the route and the ground around it; what is to be made of the supply there. */
export interface GroundTrap {
  readonly name: string;
  readonly ground: readonly GroundObject[];
  readonly supply: Spot;
  readonly evidence: Evidence;
  readonly reason: Extract<SupplyReasonCode, 'no-way-across' | 'on-closed-ground'> | null;
  /** Words that must stand in the reason. */
  readonly words?: string;
  /** Page of the OSM wiki. */
  readonly source: string;
}

/** A kilometre to the east, by a road of its own that runs along the route and not to it. */
const SUPPLY: Spot = [1000, 0];
const line = (tags: GroundObject['tags'], ...spots: Spot[]): GroundObject => ({ tags, line: spots });
const ROAD = line({ highway: 'unclassified' }, [1010, -3000], [1010, 3000]);
/** Half way between, along the route. */
const along = (tags: GroundObject['tags'], halfM = 2000): GroundObject =>
  line(tags, [500, -halfM], [500, halfM]);
/** Across the line half way between, so far to the north of the straight detour. */
const across = (tags: GroundObject['tags'], northM: number): GroundObject =>
  line(tags, [480, northM], [520, northM]);
const square = (tags: GroundObject['tags'], halfM = 60, more: Partial<GroundObject> = {}): GroundObject => ({
  tags,
  line: ring(halfM),
  ...more,
});
const ring = (halfM: number): Spot[] => [
  [SUPPLY[0] - halfM, -halfM],
  [SUPPLY[0] + halfM, -halfM],
  [SUPPLY[0] + halfM, halfM],
  [SUPPLY[0] - halfM, halfM],
];

type More = Partial<Pick<GroundTrap, 'supply' | 'words'>>;
const trap = (
  name: string,
  ground: readonly GroundObject[],
  reason: GroundTrap['reason'],
  source: string,
  more: More = {},
): GroundTrap => ({
  name,
  ground,
  supply: SUPPLY,
  evidence: reason === null ? 'stated' : 'doubtful',
  reason,
  source,
  ...more,
});
const barred = (name: string, ground: readonly GroundObject[], source: string, words?: string): GroundTrap =>
  trap(name, [ROAD, ...ground], 'no-way-across', source, words === undefined ? {} : { words });
const open = (name: string, ground: readonly GroundObject[], source: string, more: More = {}): GroundTrap =>
  trap(name, [ROAD, ...ground], null, source, more);
const closed = (name: string, ground: readonly GroundObject[], source: string, words?: string): GroundTrap =>
  trap(name, [ROAD, ...ground], 'on-closed-ground', source, words === undefined ? {} : { words });

const RIVER = along({ waterway: 'river', name: 'Long River' });
const RAIL = along({ railway: 'rail' });
const BORDER = { boundary: 'administrative', admin_level: '2' };
const CROSSING = { railway: 'level_crossing' };
const BRIDGE = { highway: 'tertiary', bridge: 'yes' };

const BARRIERS: readonly GroundTrap[] = [
  barred('across a river', [RIVER], 'Tag:waterway=river', 'a river (Long River)'),
  barred(
    'across a river that may be dry',
    [along({ waterway: 'river', intermittent: 'yes' })],
    'Key:intermittent',
  ),
  barred('across a canal', [along({ waterway: 'canal' })], 'Tag:waterway=canal', 'a canal'),
  barred('across a railway', [RAIL], 'Tag:railway=rail', 'a railway'),
  barred('across a narrow railway', [along({ railway: 'narrow_gauge' })], 'Tag:railway=narrow_gauge'),
  barred('across a light railway', [along({ railway: 'light_rail' })], 'Tag:railway=light_rail'),
  barred('across a railway kept for show', [along({ railway: 'preserved' })], 'Tag:railway=preserved'),
  barred('across a railway of few nodes', [along({ railway: 'rail' }, 9_000)], 'Tag:railway=rail'),
  barred('across an arm of the sea', [along({ natural: 'coastline' })], 'Tag:natural=coastline', 'a coast'),
  barred('across a border', [along(BORDER)], 'Tag:boundary=administrative', 'a national border'),
  barred(
    'across a border whose way says nothing itself',
    [{ ...along(BORDER, 9_000), relation: 'boundary' }],
    'Tag:boundary=administrative',
    'a national border',
  ),
  barred('a bridge too far along the river', [RIVER, across(BRIDGE, 1000)], 'Key:bridge'),
  barred(
    'a bridge for people on foot',
    [RIVER, across({ highway: 'footway', bridge: 'yes' }, 150)],
    'Key:bridge',
  ),
  barred('a bridge beside the river', [RIVER, line(BRIDGE, [560, 100], [700, 100])], 'Key:bridge'),
  barred('a bridge that is not used', [RIVER, across({ ...BRIDGE, disused: 'yes' }, 100)], 'Key:disused:'),
  barred(
    'a road that ends at the river',
    [RIVER, line({ highway: 'track' }, [0, 0], [480, 0])],
    'Tag:highway=track',
  ),
  barred(
    'a road drawn across with no bridge',
    [RIVER, across({ highway: 'track' }, 100)],
    'Tag:highway=track',
  ),
  barred('a level crossing too far along', [RAIL, line(CROSSING, [500, 900])], 'Tag:railway=level_crossing'),
  barred('a crossing on foot', [RAIL, line({ railway: 'crossing' }, [500, 50])], 'Tag:railway=crossing'),
  barred('a level crossing of a river', [RIVER, line(CROSSING, [500, 50])], 'Tag:railway=level_crossing'),
  barred('a bridge on a border', [along(BORDER), across(BRIDGE, 50)], 'Tag:boundary=administrative'),
];

const NO_BARRIERS: readonly GroundTrap[] = [
  open('across a stream', [along({ waterway: 'stream' })], 'Tag:waterway=stream'),
  open('across a river in a pipe', [along({ waterway: 'river', tunnel: 'culvert' })], 'Tag:tunnel=culvert'),
  open('across a canal on a bridge', [along({ waterway: 'canal', bridge: 'aqueduct' })], 'Key:bridge'),
  open('a bridge near', [RIVER, across(BRIDGE, 200)], 'Key:bridge'),
  open('a ford near', [RIVER, across({ highway: 'track', ford: 'yes' }, -200)], 'Key:ford'),
  open('a tunnel near', [RAIL, across({ highway: 'tertiary', tunnel: 'yes' }, 200)], 'Key:tunnel'),
  open('a level crossing near', [RAIL, line(CROSSING, [500, 200])], 'Tag:railway=level_crossing'),
  open('across a railway in a tunnel', [along({ railway: 'rail', tunnel: 'yes' })], 'Key:tunnel'),
  open('across a railway on a bridge', [along({ railway: 'rail', bridge: 'viaduct' })], 'Key:bridge'),
  open('across a disused railway', [along({ railway: 'disused' })], 'Tag:railway=disused'),
  open(
    'across an abandoned railway',
    [along({ railway: 'rail', abandoned: 'yes' })],
    'Tag:railway=abandoned',
  ),
  open('across tram rails', [along({ railway: 'tram' })], 'Tag:railway=tram'),
  open('across a border of a province', [along({ ...BORDER, admin_level: '4' })], 'Key:admin_level'),
  open(
    'the river beyond the supply',
    [line({ waterway: 'river' }, [1500, -2000], [1500, 2000])],
    'Tag:waterway=river',
  ),
  open(
    'a river that the route crosses itself',
    [line({ waterway: 'river' }, [-3000, -60], [120, -60], [120, 3000])],
    'Tag:waterway=river',
  ),
];

const OFF_ROADS: readonly GroundTrap[] = [
  trap('no road near', [], 'no-way-across', 'Key:highway', { words: 'no mapped road' }),
  trap('only a path', [line({ highway: 'path' }, [0, 0], [1000, 0])], 'no-way-across', 'Tag:highway=path'),
  trap(
    'only steps',
    [line({ highway: 'steps' }, [990, 0], [1000, 10])],
    'no-way-across',
    'Tag:highway=steps',
  ),
  trap(
    'only a road not yet built',
    [line({ highway: 'construction' }, [0, 0], [1000, 0])],
    'no-way-across',
    'Tag:highway=construction',
  ),
  trap(
    'a road 400 m off',
    [line({ highway: 'track' }, [1400, -2000], [1400, 2000])],
    'no-way-across',
    'Key:highway',
  ),
  trap(
    'a road 100 m off',
    [line({ highway: 'track' }, [1100, -2000], [1100, 2000])],
    null,
    'Tag:highway=track',
  ),
  trap('a road to it', [line({ highway: 'service' }, [0, 0], [1000, 0])], null, 'Tag:highway=service'),
  trap('beside the route', [], null, 'Key:highway', { supply: [280, 0] }),
];

const CLOSED: readonly GroundTrap[] = [
  closed(
    'on military land',
    [square({ landuse: 'military', name: 'Camp' })],
    'Tag:landuse=military',
    'military land (Camp',
  ),
  closed('in barracks', [square({ military: 'barracks' })], 'Tag:military=barracks', 'military land'),
  closed('in a danger area', [square({ military: 'danger_area' }, 4000)], 'Tag:military=danger_area'),
  closed(
    'in a military base by a relation',
    [square({ landuse: 'military' }, 60, { relation: 'multipolygon' })],
    'Relation:multipolygon',
  ),
  closed('in a prison', [square({ amenity: 'prison' })], 'Tag:amenity=prison', 'a prison'),
  closed('on an aerodrome', [square({ aeroway: 'aerodrome' })], 'Tag:aeroway=aerodrome', 'an airfield'),
  closed('on an apron', [square({ aeroway: 'apron' })], 'Tag:aeroway=apron', 'an airfield'),
  closed(
    'on private land',
    [square({ landuse: 'industrial', access: 'private' })],
    'Key:access',
    'closed to the public',
  ),
  closed('on land that nobody may enter', [square({ landuse: 'quarry', access: 'no' })], 'Key:access'),
  closed('in a private house', [square({ building: 'yes', access: 'Private' })], 'Key:access'),
  closed(
    'on a private place',
    [square({ highway: 'pedestrian', area: 'yes', access: 'private' })],
    'Key:area',
  ),
  open(
    'beside military land',
    [line({ landuse: 'military' }, [1100, -60], [1200, -60], [1200, 60], [1100, -60])],
    'Tag:landuse=military',
  ),
  open(
    'in a hole of military land',
    [square({ landuse: 'military' }, 90, { relation: 'multipolygon', hole: ring(50) })],
    'Relation:multipolygon',
  ),
  open('inside a private loop road', [square({ highway: 'service', access: 'private' })], 'Key:area'),
  open('inside a private fence', [square({ barrier: 'fence', access: 'private' })], 'Key:barrier'),
  open('on land once military', [square({ landuse: 'military', disused: 'yes' })], 'Key:disused:'),
  open('on land for customers', [square({ landuse: 'commercial', access: 'customers' })], 'Key:access'),
  open('on land open to all', [square({ landuse: 'commercial', access: 'yes' })], 'Key:access'),
];

/** Every trap of the ground: what lies between the route and a supply, or around a supply. */
export const GROUND_TRAPS: readonly GroundTrap[] = [...BARRIERS, ...NO_BARRIERS, ...OFF_ROADS, ...CLOSED];

/** Ids of a row's objects start here. */
const FIRST_ID = 1_000_000;
const IDS_OF_A_ROW = 100;

/** What a row's ground is on the map, at so many km. */
export function groundOf(
  { ground }: GroundTrap,
  row: number,
  km: number,
  version: { version: number; timestamp: string },
): MapObject[] {
  let id = FIRST_ID + row * IDS_OF_A_ROW;
  const objects: MapObject[] = [];
  const way = (spots: readonly Spot[], isRing: boolean, tags?: GroundObject['tags']): number => {
    const nodes = spots.map(([eastM, northM]) => {
      id += 1;
      objects.push({ type: 'node', id, ...placeBeside(km, eastM, northM), ...version });
      return id;
    });
    const [first] = nodes;
    if (isRing && first !== undefined) nodes.push(first);
    id += 1;
    objects.push({ type: 'way', id, nodes, ...(tags && { tags }), ...version });
    return id;
  };
  for (const { tags, line: spots, relation, hole } of ground) {
    const [spot] = spots;
    const isArea = spots.length === 4;
    if (spots.length === 1 && spot !== undefined) {
      id += 1;
      objects.push({ type: 'node', id, ...placeBeside(km, ...spot), tags, ...version });
    } else if (relation === undefined) way(spots, isArea, tags);
    else {
      const outer = { type: 'way' as const, ref: way(spots, isArea), role: 'outer' };
      const inner = hole === undefined ? [] : [{ type: 'way' as const, ref: way(hole, true), role: 'inner' }];
      id += 1;
      objects.push({
        type: 'relation',
        id,
        members: [outer, ...inner],
        tags: { ...tags, type: relation },
        ...version,
      });
    }
  }
  return objects;
}

/** The supply of a row, one for each commodity. */
export function suppliesOf(
  { supply: [eastM, northM] }: GroundTrap,
  row: number,
  km: number,
  version: { version: number; timestamp: string },
): MapObject[] {
  const place = placeBeside(km, eastM, northM);
  return [
    {
      type: 'node',
      id: 10_000 + 2 * row,
      ...place,
      tags: { amenity: 'fuel', 'fuel:diesel': 'yes' },
      ...version,
    },
    { type: 'node', id: 10_001 + 2 * row, ...place, tags: { amenity: 'drinking_water' }, ...version },
  ];
}
