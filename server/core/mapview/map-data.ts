import type { FeatureCollection, LineString, Point } from 'geojson';
import type { MapData } from '../../contract/answers/map.ts';
import type { Analysed } from '../analyse/analyse.ts';
import { numberAt } from '../lists/at.ts';
import { cutLine, roundDegrees } from './cut-line.ts';
import { type RoutePiece, routePieces } from './route-pieces.ts';
import type { DrawnLine } from './simplify-line.ts';
import { type SupplyMark, supplyMarks } from './supply-marks.ts';

/** Everything of the map that an analysis changes; the ground stays as it was loaded. */
export interface ChangingMapData extends Pick<MapData, 'bbox' | 'notice'> {
  /** `atM`: of each vertex, metres along the route. */
  line: { coordinates: [number, number][]; atM: number[] };
  route: FeatureCollection<LineString, RoutePiece>;
  supplies: FeatureCollection<Point, SupplyMark>;
}

/**
 * What the map draws of an analysis; `line` is the route thinned by simplifyLine. Longitudes run on past ±180 where the
 * route crosses the 180th meridian, supplies with them, so that nothing is torn apart.
 */
export function mapDataOf(
  { analysis, route, points }: Analysed,
  line: DrawnLine,
  notice: string | null,
): ChangingMapData {
  const middleLon = (numberAt(route.lon, 0) + numberAt(route.lon, route.lon.length - 1)) / 2;
  const { lengthM } = analysis.route;
  return {
    bbox: analysis.route.bbox,
    line: {
      coordinates: Array.from(line.lon, (lon, i) => [roundDegrees(lon), roundDegrees(numberAt(line.lat, i))]),
      atM: Array.from(line.atM, Math.round),
    },
    route: {
      type: 'FeatureCollection',
      features: (['fuel', 'water'] as const)
        .flatMap((commodity) => routePieces(analysis[commodity], commodity, lengthM))
        .map((piece) => ({
          type: 'Feature',
          geometry: { type: 'LineString', coordinates: cutLine(line, piece.fromM, piece.toM) },
          properties: piece,
        })),
    },
    supplies: {
      type: 'FeatureCollection',
      features: supplyMarks(analysis, points).map(({ lon, lat, mark }) => ({
        type: 'Feature',
        geometry: { type: 'Point', coordinates: [nearLon(lon, middleLon), lat] },
        properties: mark,
      })),
    },
    notice,
  };
}

/** The longitude shifted by whole turns to lie within 180 degrees of another. */
function nearLon(lon: number, to: number): number {
  return roundDegrees(lon - 360 * Math.round((lon - to) / 360));
}
