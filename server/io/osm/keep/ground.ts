import type { GroundMark } from '../../../contract/answers/map.ts';
import type { Tags } from '../../../core/input/sources.ts';
import type { OsmType, RawElement } from '../extract/raw-element.ts';
import { GROUND_WAYS_MAX } from '../source/limits.ts';

/** Roads and places that are drawn, highest rank first; the values of OSM's highway and place keys. */
const ROADS = ['motorway', 'trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'track'] as const;
const LINKED: ReadonlySet<string> = new Set(['motorway', 'trunk', 'primary', 'secondary', 'tertiary']);
const PLACES: readonly string[] = ['city', 'town', 'village', 'hamlet'];

/** Tags that a map draws by; the others are not kept. */
const DRAWN_KEYS: ReadonlySet<string> = new Set(['highway', 'natural', 'place', 'name']);
export const isDrawn = (key: string): boolean => DRAWN_KEYS.has(key);

export interface GroundKind {
  what: GroundMark['what'];
  /** As tagged: "primary", "town". */
  rank: string;
  /** 0 is drawn first and dropped last. */
  order: number;
}

/** What an element is for the map's ground, null when it is not drawn. */
export function groundKindOf(type: OsmType, tags: Tags): GroundKind | null {
  if (type === 'node') {
    const place = tags.place ?? '';
    const order = PLACES.indexOf(place);
    return order === -1 ? null : { what: 'place', rank: place, order };
  }
  if (type !== 'way') return null;
  if (tags.natural === 'coastline') return { what: 'coast', rank: 'coastline', order: 0 };
  const highway = tags.highway;
  if (highway === undefined) return null;
  const road = highway.endsWith('_link') ? highway.slice(0, -'_link'.length) : highway;
  if (road !== highway && !LINKED.has(road)) return null;
  const order = (ROADS as readonly string[]).indexOf(road);
  if (order === -1) return null;
  return { what: road === 'track' ? 'track' : 'road', rank: highway, order: order + 1 };
}

/** Ground ways up to a number; when there are more, the lowest ranks go first. */
export class GroundWays {
  readonly #byOrder: RawElement[][] = Array.from({ length: ROADS.length + 1 }, () => []);
  #kept = 0;
  #dropped = 0;
  readonly #limit: number;

  constructor(limit = GROUND_WAYS_MAX) {
    this.#limit = limit;
  }

  add(way: RawElement, kind: GroundKind): void {
    this.#byOrder[kind.order]?.push(way);
    this.#kept += 1;
    if (this.#kept <= this.#limit) return;
    this.#byOrder.findLast((ways) => ways.length > 0)?.pop();
    this.#kept -= 1;
    this.#dropped += 1;
  }

  get ways(): RawElement[] {
    return this.#byOrder.flat();
  }

  /** How many were left out. */
  get dropped(): number {
    return this.#dropped;
  }
}
