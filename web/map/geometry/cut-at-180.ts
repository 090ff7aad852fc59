import { bboxClip, rewind } from '@turf/turf';
import type { Feature, Geometry, MultiPolygon, Polygon, Position } from 'geojson';

/** Degrees between two neighbouring positions beyond which the way between them is taken to cross the 180th meridian. */
const HALF_TURN = 180;
const WHOLE_TURN = 360;
const POLE = 90;
/** Web Mercator ends here (EPSG:3857). */
const MAP_END = 85.0511;

/** Longitudes that run on past ±180 instead of jumping to the other side. */
function runOn(positions: readonly Position[]): [number, number][] {
  let shift = 0;
  let beforeLon: number | null = null;
  return positions.map(([lon = 0, lat = 0]) => {
    if (beforeLon !== null && Math.abs(lon - beforeLon) > HALF_TURN)
      shift += lon < beforeLon ? WHOLE_TURN : -WHOLE_TURN;
    beforeLon = lon;
    return [lon + shift, lat];
  });
}

/** A ring that runs on; one that goes round a pole does not close, and takes the pole with it. */
function ringRunOn(ring: readonly Position[]): Position[] {
  const positions = runOn(ring);
  const [first] = positions;
  const last = positions.at(-1);
  if (first === undefined || last === undefined || first[0] === last[0]) return positions;
  const pole = first[1] < 0 ? -POLE : POLE;
  return [...positions, [last[0], pole], [first[0], pole], first];
}

/** The turns by which what lies between these longitudes must be shifted to be seen between -180 and 180. */
function shiftsOf(positions: readonly Position[]): number[] {
  const lons = positions.map(([lon = 0]) => lon);
  const west = lons.reduce((least, lon) => Math.min(least, lon), Number.POSITIVE_INFINITY);
  const east = lons.reduce((most, lon) => Math.max(most, lon), Number.NEGATIVE_INFINITY);
  const from = Math.floor((west + HALF_TURN) / WHOLE_TURN);
  const to = Math.ceil((east - HALF_TURN) / WHOLE_TURN);
  return Array.from({ length: Math.max(1, to - from + 1) }, (_, turn) => from + turn);
}

/**
 * Areas of a globe as areas of a flat map between -180 and 180 degrees: each polygon by itself, cut at the 180th
 * meridian, outer rings counter-clockwise (RFC 7946, 3.1.6 and 3.1.9), up to the latitudes where Web Mercator ends. A
 * polygon whose ring jumps from one side to the other is taken to cross the meridian there.
 */
export function areasCutAt180(geometry: Geometry): Feature<Polygon>[] {
  const polygons =
    geometry.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : [];
  return polygons.flatMap((rings) => {
    const whole = rings.map(ringRunOn);
    return shiftsOf(whole[0] ?? []).flatMap((turn) => {
      const west = turn * WHOLE_TURN - HALF_TURN;
      const { geometry: part } = bboxClip({ type: 'Polygon', coordinates: whole }, [
        west,
        -MAP_END,
        west + WHOLE_TURN,
        MAP_END,
      ]);
      return (part as Polygon | MultiPolygon).type === 'Polygon' && part.coordinates.length > 0
        ? [areaOf(part as Polygon, turn)]
        : [];
    });
  });
}

function areaOf({ coordinates }: Polygon, turn: number): Feature<Polygon> {
  const shifted = coordinates.map((ring) => ring.map(([lon = 0, lat = 0]) => [lon - turn * WHOLE_TURN, lat]));
  return {
    type: 'Feature',
    geometry: rewind({ type: 'Polygon', coordinates: shifted }) as Polygon,
    properties: {},
  };
}
