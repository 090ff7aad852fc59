import type { RouteDocument } from '../../../server/core/input/sources.ts';
import { documentOf, equatorLon } from '../../helpers/analyse-input.ts';

/** How a route runs. `spur`: out, back over a part of it, and off; `loop`: round, and over a part of it once more. */
export type RouteShape =
  | { readonly kind: 'straight'; readonly lengthKm: number }
  | { readonly kind: 'spur'; readonly outKm: number; readonly backKm: number; readonly offKm: number }
  | {
      readonly kind: 'loop';
      readonly beforeKm: number;
      readonly sideKm: number;
      readonly deepKm: number;
      readonly onKm: number;
    };

/** North of the equator one degree of latitude is 110,574 m (check-values G4). */
const KM_PER_DEGREE_NORTH = 110.574276;
/** Between two vertices: well below what is taken for a sketch. */
const STEP_KM = 2;

/** A place in kilometres east of the meridian and north of the equator. */
export interface Place {
  readonly eastKm: number;
  readonly northKm: number;
}

const place = (eastKm: number, northKm: number): Place => ({ eastKm, northKm });

/** Where a route turns, its ends included. */
function cornersOf(shape: RouteShape): readonly Place[] {
  switch (shape.kind) {
    case 'straight':
      return [place(0, 0), place(shape.lengthKm, 0)];
    case 'spur': {
      const turnKm = shape.outKm - shape.backKm;
      return [place(0, 0), place(shape.outKm, 0), place(turnKm, 0), place(turnKm, shape.offKm)];
    }
    case 'loop': {
      const { beforeKm, sideKm, deepKm, onKm } = shape;
      const farKm = beforeKm + sideKm;
      return [
        place(0, 0),
        place(farKm, 0),
        place(farKm, deepKm),
        place(beforeKm, deepKm),
        place(beforeKm, 0),
        place(farKm + onKm, 0),
      ];
    }
  }
}

const between = (a: number, b: number, share: number): number => a + share * (b - a);

/** Vertices of a route, a corner each and in between every two kilometres. */
function verticesOf(shape: RouteShape): Place[] {
  const [first, ...others] = cornersOf(shape);
  if (first === undefined) return [];
  const vertices = [first];
  let from = first;
  for (const to of others) {
    const lengthKm = Math.hypot(to.eastKm - from.eastKm, to.northKm - from.northKm);
    const steps = Math.max(1, Math.ceil(lengthKm / STEP_KM));
    for (let step = 1; step <= steps; step += 1) {
      const share = step / steps;
      vertices.push(place(between(from.eastKm, to.eastKm, share), between(from.northKm, to.northKm, share)));
    }
    from = to;
  }
  return vertices;
}

export const lonLatOf = ({ eastKm, northKm }: Place): [number, number] => [
  equatorLon(eastKm),
  northKm / KM_PER_DEGREE_NORTH,
];

/** A route as a reader would hand it in. */
export const documentOfShape = (shape: RouteShape): RouteDocument =>
  documentOf([verticesOf(shape).map(lonLatOf)]);

/** A place beside a share of a route, so many kilometres off it. */
export function placeBeside(shape: RouteShape, share: number, offKm: number): Place {
  const vertices = verticesOf(shape);
  const index = Math.min(vertices.length - 2, Math.floor(share * (vertices.length - 1)));
  const from = vertices[index];
  const to = vertices[index + 1];
  if (from === undefined || to === undefined) throw new Error('a route has two places at the least');
  const part = share * (vertices.length - 1) - index;
  const lengthKm = Math.hypot(to.eastKm - from.eastKm, to.northKm - from.northKm);
  const [alongEast, alongNorth] = [
    (to.eastKm - from.eastKm) / lengthKm,
    (to.northKm - from.northKm) / lengthKm,
  ];
  return place(
    between(from.eastKm, to.eastKm, part) - alongNorth * offKm,
    between(from.northKm, to.northKm, part) + alongEast * offKm,
  );
}
