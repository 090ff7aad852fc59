import type { ExpressionSpecification } from '@maplibre/maplibre-gl-style-spec';
import type { MapData } from '../../../server/contract/answers/map.ts';
import { boundsBetween } from '../geometry/nearest-km.ts';

type Anchor = 'left' | 'right' | 'bottom' | 'top' | 'bottom-left' | 'top-left' | 'bottom-right' | 'top-right';

/** Sides of a name's point where it may stand, best first; an anchor is the edge of the text that touches the point. */
const EASTWARDS: readonly Anchor[] = [
  'left',
  'bottom-left',
  'top-left',
  'bottom',
  'top',
  'right',
  'bottom-right',
  'top-right',
];

const mirrored = (anchor: Anchor): Anchor => {
  if (anchor.includes('left')) return anchor.replace('left', 'right') as Anchor;
  return anchor.replace('right', 'left') as Anchor;
};

/** How far the text stands off, em: right and down positive. */
function offset(anchor: Anchor, distanceEm: number): [number, number] {
  const diagonal = anchor.includes('-') ? Math.SQRT1_2 : 1;
  const x = anchor.includes('left') ? 1 : anchor.includes('right') ? -1 : 0;
  const y = anchor.includes('top') ? 1 : anchor.includes('bottom') ? -1 : 0;
  return [x * distanceEm * diagonal, y * distanceEm * diagonal];
}

/** Round a point, anticlockwise: text east of it, north-east, north … */
const ROUND: readonly Anchor[] = [
  'left',
  'bottom-left',
  'bottom',
  'bottom-right',
  'right',
  'top-right',
  'top',
  'top-left',
];

/** The nearer the better. */
const places = (anchors: readonly Anchor[], distancesEm: readonly number[]) =>
  distancesEm.flatMap((distanceEm) => anchors.flatMap((anchor) => [anchor, offset(anchor, distanceEm)]));

/** Labels stand on one side of their point: by each feature's `side`, as `eighthOf` gives it, and these eighths further. */
export const sideAnchors = (
  distancesEm: readonly number[],
  turns: readonly number[],
): ExpressionSpecification =>
  [
    'match',
    ['get', 'side'],
    ...ROUND.flatMap((_, side) => {
      const anchors = turns.flatMap((turn) => ROUND.slice((side + turn) % 8).slice(0, 1));
      return [side, ['literal', places(anchors, distancesEm)]];
    }),
    ['literal', places(ROUND, distancesEm)],
  ] as unknown as ExpressionSpecification;

export const EAST = 0;
export const WEST = 4;

/** A direction, x east and y north, as the nearest eighth of a turn: 0 east, 2 north, 4 west, 6 south. */
export const eighthOf = (x: number, y: number): number =>
  (Math.round(Math.atan2(y, x) / (Math.PI / 4)) + 8) % 8;

/** Names stand towards the middle of the map, so that its edge cuts none: by each feature's `west`. */
export function nameAnchors(distancesEm: readonly number[]): ExpressionSpecification {
  return [
    'case',
    ['==', ['get', 'west'], true],
    ['literal', places(EASTWARDS, distancesEm)],
    ['literal', places(EASTWARDS.map(mirrored), distancesEm)],
  ] as unknown as ExpressionSpecification;
}

/** Tells whether a longitude lies in the western half of the route. */
export function westOf(map: MapData): (lon?: number) => boolean {
  const bounds = boundsBetween(map.line, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const middle = bounds === null ? 0 : (bounds[0][0] + bounds[1][0]) / 2;
  return (lon = middle) => lon < middle;
}
