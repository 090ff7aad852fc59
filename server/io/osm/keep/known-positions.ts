import type { Geometry } from 'geojson';
import type { Phrase } from '../../../core/phrases/phrases.ts';
import { keyOfRef } from '../extract/element-key.ts';
import { liesOnEarth, meanPosition, nearerTurn } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';
import { SITE_SPREAD_MAX_M } from '../source/limits.ts';

type Position = [number, number];

export interface Placed {
  geometry: Geometry;
  /** Parts were missing, so the place is near and not exact. */
  rough: boolean;
}

/** Relations within relations that are followed. */
const NESTING_MAX = 3;

/** Metres in a degree of latitude on the sphere that Turf uses (6 371 008.8 m); good enough to judge a spread by. */
const M_PER_DEGREE = (Math.PI / 180) * 6_371_008.8;

function roughDistanceM(a: Position, b: Position): number {
  const eastM = nearerTurn(a[0] - b[0]) * Math.cos((a[1] * Math.PI) / 180) * M_PER_DEGREE;
  return Math.hypot(eastM, (a[1] - b[1]) * M_PER_DEGREE);
}

const pointAt = (position: Position, rough: boolean): Placed => ({
  geometry: { type: 'Point', coordinates: position },
  rough,
});

const asPosition = (at: unknown): Position[] => (liesOnEarth(at) ? [[at.lon, at.lat]] : []);

/** Places elements of which no feature could be made, by what is known of them. */
export class KnownPositions {
  readonly #elements: ReadonlyMap<string, RawElement>;

  /** `elements` by "node/1". */
  constructor(elements: ReadonlyMap<string, RawElement>) {
    this.#elements = elements;
  }

  /** A place, or the reason why there is none. */
  place(element: RawElement): Placed | Phrase {
    const centre = this.#givenCentre(element);
    if (element.type === 'node') {
      return liesOnEarth(element)
        ? pointAt([element.lon, element.lat], false)
        : { phrase: 'skipped-no-position', facts: {} };
    }
    const parts = element.type === 'way' ? 'nodes' : 'members';
    const positions = element.type === 'way' ? this.#wayPositions(element) : this.#memberMeans(element, 0);
    const count =
      (element.type === 'way' ? (element.nodes ?? element.geometry) : element.members)?.length ?? 0;
    if (centre !== null) return pointAt(centre, false);
    const mean = meanPosition(positions);
    if (mean === null) {
      return { phrase: count === 0 ? 'skipped-no-parts' : 'skipped-parts-missing', facts: { parts } };
    }
    const spreadM = 2 * Math.max(...positions.map((position) => roughDistanceM(position, mean)));
    if (element.type === 'relation' && spreadM > SITE_SPREAD_MAX_M) {
      return { phrase: 'skipped-members-apart', facts: { spreadM } };
    }
    const isSite = element.tags?.type === 'site' && positions.length === count;
    return pointAt(mean, !isSite);
  }

  /** Overpass `out center`; of `out bb` the middle. */
  #givenCentre({ center, bounds }: RawElement): Position | null {
    const given = asPosition(center)[0];
    if (given !== undefined) return given;
    if (bounds === undefined) return null;
    const west: Position[] = asPosition({ lat: bounds.minlat, lon: bounds.minlon });
    const east: Position[] = asPosition({ lat: bounds.maxlat, lon: bounds.maxlon });
    return west.length === 1 && east.length === 1 ? meanPosition([...west, ...east]) : null;
  }

  #wayPositions(way: RawElement): Position[] {
    const inline = (way.geometry ?? []).flatMap(asPosition);
    if (inline.length > 0) return inline;
    return (way.nodes ?? []).flatMap((id) => asPosition(this.#elements.get(keyOfRef('node', id))));
  }

  /** One position for each member that is known; a way or relation by its own mean. */
  #memberMeans(relation: RawElement, depth: number): Position[] {
    return (relation.members ?? []).flatMap((member): Position[] => {
      const inline = [...asPosition(member), ...(member.geometry ?? []).flatMap(asPosition)];
      if (inline.length > 0) return oneOf(meanPosition(inline));
      const element = this.#elements.get(keyOfRef(member.type, member.ref));
      if (element === undefined) return [];
      if (element.type === 'node') return asPosition(element);
      const centre = this.#givenCentre(element);
      if (centre !== null) return [centre];
      if (element.type === 'way') return oneOf(meanPosition(this.#wayPositions(element)));
      return depth >= NESTING_MAX ? [] : oneOf(meanPosition(this.#memberMeans(element, depth + 1)));
    });
  }
}

const oneOf = (position: Position | null): Position[] => (position === null ? [] : [position]);
