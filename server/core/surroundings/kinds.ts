import type { OsmShape, SurroundingKind, Tags } from '../input/sources.ts';

/** What makes an object one of the ground that bears on supplies, and what keeps it out. */
interface SurroundingRule {
  readonly what: SurroundingKind;
  readonly key: string;
  readonly values: readonly string[] | 'any';
  /** Further tags that it must have. */
  readonly and?: Tags;
  readonly shapes: readonly OsmShape[];
  /** Tells whether other tags take it out: a river in a pipe is no barrier. */
  readonly unless?: (tags: Tags) => boolean;
  /** Page of the OSM wiki. */
  readonly source: string;
}

const wordOf = (tags: Tags, key: string): string | undefined => tags[key]?.trim().toLowerCase();

/** True where a tag is there and does not say no. */
const says = (tags: Tags, key: string): boolean => {
  const value = wordOf(tags, key);
  return value !== undefined && value !== 'no';
};

/** In a pipe, in a tunnel, on a bridge or under cover: one passes over or under it. */
const isOutOfTheWay = (tags: Tags): boolean =>
  says(tags, 'tunnel') ||
  says(tags, 'bridge') ||
  says(tags, 'covered') ||
  wordOf(tags, 'location') === 'underground' ||
  isGone(tags);

/** Marks of what is there no more (OSM wiki, Lifecycle prefix: the state as a tag of its own). */
const GONE = ['disused', 'abandoned', 'razed', 'demolished', 'removed', 'dismantled'];
const isGone = (tags: Tags): boolean => GONE.some((key) => says(tags, key));

/** Roads that motor vehicles take (OSM wiki, Key:highway); paths, steps and roads not yet built are none. */
const DRIVEN: ReadonlySet<string> = new Set([
  'motorway',
  'motorway_link',
  'trunk',
  'trunk_link',
  'primary',
  'primary_link',
  'secondary',
  'secondary_link',
  'tertiary',
  'tertiary_link',
  'unclassified',
  'residential',
  'living_street',
  'service',
  'track',
  'road',
]);

/** Whether motor vehicles take a way with these tags. */
export const isDriven = (tags: Tags): boolean => DRIVEN.has(wordOf(tags, 'highway') ?? '');

/** Keys whose closed ways are lines nevertheless, unless `area=yes` (OSM wiki, Key:area). */
const LINE_KEYS = ['highway', 'railway', 'waterway', 'barrier', 'route', 'power'];
const isLineAfterAll = (tags: Tags): boolean =>
  wordOf(tags, 'area') !== 'yes' &&
  (wordOf(tags, 'area') === 'no' || LINE_KEYS.some((key) => tags[key] !== undefined));

const LINE: readonly OsmShape[] = ['line', 'ring'];
/** Borders are often relations whose ways say nothing by themselves. */
const BORDER: readonly OsmShape[] = ['line', 'ring', 'boundary', 'area'];
const AREA: readonly OsmShape[] = ['ring', 'area', 'boundary'];

const AREA_RULES: readonly SurroundingRule[] = [
  { what: 'military', key: 'landuse', values: ['military'], source: 'Tag:landuse=military' },
  { what: 'military', key: 'military', values: 'any', source: 'Key:military' },
  { what: 'prison', key: 'amenity', values: ['prison'], source: 'Tag:amenity=prison' },
  // The whole aerodrome: the map seldom tells its airside from its car park, and who drives in has to ask.
  {
    what: 'airfield',
    key: 'aeroway',
    values: ['aerodrome', 'apron', 'runway', 'taxiway', 'taxilane', 'hangar', 'heliport', 'airstrip'],
    source: 'Key:aeroway',
  },
  { what: 'closed', key: 'access', values: ['private', 'no'], source: 'Key:access' },
].map(
  (rule) =>
    ({ ...rule, shapes: AREA, unless: (tags) => isLineAfterAll(tags) || isGone(tags) }) as SurroundingRule,
);

const BARRIER_RULES: readonly SurroundingRule[] = [
  {
    what: 'river',
    key: 'waterway',
    values: ['river'],
    shapes: LINE,
    unless: isOutOfTheWay,
    source: 'Tag:waterway=river',
  },
  {
    what: 'canal',
    key: 'waterway',
    values: ['canal'],
    shapes: LINE,
    unless: isOutOfTheWay,
    source: 'Tag:waterway=canal',
  },
  {
    // Trams run in streets, monorails above them, underground railways mostly below.
    what: 'railway',
    key: 'railway',
    values: ['rail', 'narrow_gauge', 'light_rail', 'preserved'],
    shapes: LINE,
    unless: isOutOfTheWay,
    source: 'Key:railway',
  },
  { what: 'coast', key: 'natural', values: ['coastline'], shapes: LINE, source: 'Tag:natural=coastline' },
  {
    what: 'border',
    key: 'boundary',
    values: ['administrative'],
    and: { admin_level: '2' },
    shapes: BORDER,
    source: 'Tag:boundary=administrative',
  },
];

/** What makes a road one that leads over or under something. */
export const ROAD_ACROSS_KEYS: readonly string[] = ['bridge', 'tunnel', 'ford'];

const CROSSING_RULES: readonly SurroundingRule[] = [
  {
    what: 'level-crossing',
    key: 'railway',
    values: ['level_crossing'],
    shapes: ['point'],
    source: 'Tag:railway=level_crossing',
  },
  {
    what: 'road-across',
    key: 'highway',
    values: [...DRIVEN],
    shapes: LINE,
    unless: (tags) => isGone(tags) || !ROAD_ACROSS_KEYS.some((key) => says(tags, key)),
    source: 'Key:bridge',
  },
];

/** Ferries that carry motor vehicles; one that says that it carries none is no way for them. */
const FERRY_RULE: SurroundingRule = {
  what: 'ferry',
  key: 'route',
  values: ['ferry'],
  shapes: ['line'],
  unless: (tags) =>
    isGone(tags) || ['motor_vehicle', 'motorcar', 'vehicle'].some((key) => wordOf(tags, key) === 'no'),
  source: 'Tag:route=ferry',
};

/** Places that people know by name, to say where a supply is. */
const SETTLEMENT_RULE: SurroundingRule = {
  what: 'settlement',
  key: 'place',
  values: ['city', 'town', 'village', 'hamlet'],
  shapes: ['point'],
  unless: (tags) => isGone(tags) || tags.name === undefined,
  source: 'Key:place',
};

/** Basins of works and gardens, which nobody fills from (OSM wiki, Key:water). */
const BUILT_WATERS = [
  'wastewater',
  'basin',
  'reflecting_pool',
  'fountain',
  'moat',
  'lock',
  'pool',
  'salt_pool',
  'tailings',
];

/** Water that may be treated and drunk; its shore is looked at, it is no barrier. */
const LAKE_RULE: SurroundingRule = {
  what: 'lake',
  key: 'natural',
  values: ['water'],
  shapes: ['ring', 'area'],
  unless: (tags) => isGone(tags) || !isFresh(tags) || BUILT_WATERS.includes(wordOf(tags, 'water') ?? ''),
  source: 'Tag:natural=water',
};

/** Marks of water that is not there all year, or salt (OSM wiki, Key:intermittent, Key:seasonal, Key:salt, Key:tidal). */
const NOT_FRESH = ['intermittent', 'seasonal', 'salt', 'tidal'];

/** Whether water is fresh and there all year, as far as tags say. */
export const isFresh = (tags: Tags): boolean => !NOT_FRESH.some((key) => says(tags, key));

/** Every kind of ground that bears on supplies, with the page of the wiki that it goes by. */
export const SURROUNDING_RULES: readonly SurroundingRule[] = [
  ...BARRIER_RULES,
  ...CROSSING_RULES,
  FERRY_RULE,
  LAKE_RULE,
  SETTLEMENT_RULE,
  ...AREA_RULES,
];

const RULES_BY_KEY = new Map<string, SurroundingRule[]>();
for (const rule of SURROUNDING_RULES)
  RULES_BY_KEY.set(rule.key, [...(RULES_BY_KEY.get(rule.key) ?? []), rule]);

/** All the keys that are looked at, and the name. */
const TOLD_KEYS: ReadonlySet<string> = new Set([
  ...RULES_BY_KEY.keys(),
  ...LINE_KEYS,
  ...GONE,
  ...ROAD_ACROSS_KEYS,
  ...NOT_FRESH,
  'water',
  'admin_level',
  'motor_vehicle',
  'motorcar',
  'vehicle',
  'duration',
  'area',
  'covered',
  'location',
  'type',
  'name',
]);
/** Whether a tag has anything to say of an object's being one of these. */
export const isTold = (key: string): boolean => TOLD_KEYS.has(key);

/** Few, and long between their nodes: kept wherever they are until their place is known. */
const WIDE: ReadonlySet<SurroundingKind> = new Set(['railway', 'canal', 'border', 'military', 'ferry']);

/** Whether objects of a kind may pass the route with all their nodes far off it. */
export const isWide = (what: SurroundingKind): boolean => WIDE.has(what);

/** Whether objects of a kind are kept whole, however far they go. */
export const isKeptWhole = (what: SurroundingKind): boolean => what === 'ferry' || isAreaKind(what);

const AREAS: ReadonlySet<SurroundingKind> = new Set(AREA_RULES.map(({ what }) => what));
export const isAreaKind = (what: SurroundingKind): boolean => AREAS.has(what);

function holds({ key, values, and, unless }: SurroundingRule, tags: Tags): boolean {
  const value = wordOf(tags, key);
  if (value === undefined || (value === 'no' && values === 'any')) return false;
  if (values !== 'any' && !values.includes(value)) return false;
  if (!Object.entries(and ?? {}).every(([further, wanted]) => wordOf(tags, further) === wanted)) return false;
  return unless?.(tags) !== true;
}

const NONE: readonly SurroundingKind[] = [];

/** What an object of that shape is of the ground that bears on supplies; none for most, each kind once. */
export function surroundingKinds(tags: Tags, shape: OsmShape): readonly SurroundingKind[] {
  let kinds = NONE;
  for (const key in tags) {
    const rules = RULES_BY_KEY.get(key);
    if (rules === undefined) continue;
    for (const rule of rules)
      if (rule.shapes.includes(shape) && !kinds.includes(rule.what) && holds(rule, tags))
        kinds = [...kinds, rule.what];
  }
  return kinds;
}
