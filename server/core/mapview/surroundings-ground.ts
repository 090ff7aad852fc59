import type { Feature, LineString, Polygon } from 'geojson';
import type { GroundMark } from '../../contract/answers/map.ts';
import type { Bbox } from '../../contract/common.ts';
import type { LonLat } from '../geodesy/lon-lat.ts';
import type { Surrounding, Surroundings } from '../input/sources.ts';
import { pairsOf } from '../lists/pairs.ts';
import { placesOf } from '../surroundings/line-index.ts';
import { finestOf, thinGround, thinned } from './thin-ground.ts';

type Ring = LineString['coordinates'];

/** What of the surroundings is drawn as lines, and as what. */
const DRAWN_LINES: Partial<Record<Surrounding['what'], GroundMark['what']>> = {
  river: 'river',
  canal: 'river',
  border: 'border',
};

/** Vertices of these at most (ours): they come beside the roads in every reply. */
const MAX_VERTICES = 20_000;

/** Rivers, canals, lakes and borders near the route as ground to draw, without the bends that a map of the box could not show. */
export function surroundingsGround(
  { objects }: Surroundings,
  box: Bbox,
): Feature<LineString | Polygon, GroundMark>[] {
  const lines = objects.flatMap(({ what, name, lines: drawn }) => {
    const as = DRAWN_LINES[what];
    return as === undefined
      ? []
      : drawn.map(
          (line): Feature<LineString, GroundMark> => ({
            type: 'Feature',
            geometry: { type: 'LineString', coordinates: positionsOf(line) },
            properties: { what: as, name, rank: what },
          }),
        );
  });
  const tolerance = finestOf(box);
  const lakes = objects
    .filter(({ what }) => what === 'lake')
    .flatMap((lake) => lakeAreas(lake, (ring) => thinned(ring, tolerance)));
  const { ground } = thinGround(lines, box, MAX_VERTICES);
  return [...lakes, ...(ground as Feature<LineString, GroundMark>[])];
}

const positionsOf = (line: Float64Array): Ring => placesOf(line).map(({ lon, lat }) => [lon, lat]);

/** A lake's shores as areas, islands as holes in them. */
function lakeAreas({ lines, name }: Surrounding, thin: (ring: Ring) => Ring): Feature<Polygon, GroundMark>[] {
  const rings = ringsOf(lines.map((line) => placesOf(line)));
  const around = rings.map((ring, index) => rings.filter((other, o) => o !== index && isIn(ring, other)));
  return rings.flatMap((shore, index) => {
    if ((around[index]?.length ?? 0) % 2 === 1) return [];
    const islands = rings.filter((_, i) => around[i]?.length === 1 && around[i]?.[0] === shore);
    const coordinates = [shore, ...islands]
      .map((ring) => thin(ring.map(({ lon, lat }) => [lon, lat])))
      .filter((ring) => ring.length >= 4);
    return coordinates.length === 0
      ? []
      : [
          {
            type: 'Feature' as const,
            geometry: { type: 'Polygon' as const, coordinates },
            properties: { what: 'lake' as const, name, rank: 'lake' },
          },
        ];
  });
}

const isSame = (a: LonLat | undefined, b: LonLat | undefined): boolean =>
  a !== undefined && a.lon === b?.lon && a.lat === b.lat;

/** Lines joined at their ends, whichever way they run; what does not close is left out. */
function ringsOf(lines: readonly LonLat[][]): LonLat[][] {
  const left = [...lines];
  const rings: LonLat[][] = [];
  for (let chain = left.shift(); chain !== undefined; chain = left.shift()) {
    while (!isSame(chain[0], chain.at(-1))) {
      const end: LonLat | undefined = chain.at(-1);
      const next = left.findIndex((line) => isSame(line[0], end) || isSame(line.at(-1), end));
      const [piece = []] = next === -1 ? [] : left.splice(next, 1);
      if (piece.length === 0) break;
      chain = [...chain, ...(isSame(piece[0], end) ? piece : piece.toReversed()).slice(1)];
    }
    if (chain.length >= 4 && isSame(chain[0], chain.at(-1))) rings.push(chain);
  }
  return rings;
}

/** Whether a ring's first place lies inside another: a parallel to the east crosses its sides an odd number of times. */
function isIn([first]: readonly LonLat[], ring: readonly LonLat[]): boolean {
  if (first === undefined) return false;
  const crossed = pairsOf(ring).filter(([a, b]) => {
    if (a.lat <= first.lat === b.lat <= first.lat) return false;
    return a.lon + ((first.lat - a.lat) / (b.lat - a.lat)) * (b.lon - a.lon) > first.lon;
  });
  return crossed.length % 2 === 1;
}
