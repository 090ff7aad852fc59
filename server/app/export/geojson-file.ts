import type { FeatureCollection } from 'geojson';
import { wrapLongitude } from '../../core/geodesy/longitude.ts';
import { numberAt } from '../../core/lists/at.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { creditOf } from './credit.ts';
import { type Mark, marksOf } from './marks.ts';
import type { ExportPack } from './pack.ts';

/** GeoJSON (RFC 7946): the route as a line, cut where it crosses the 180th meridian (3.1.9), and every place to know as a point. */
export function geojsonFile(pack: ExportPack): string {
  const collection: FeatureCollection & { note: string } = {
    type: 'FeatureCollection',
    note: creditOf(pack),
    features: [
      {
        type: 'Feature',
        geometry: { type: 'MultiLineString', coordinates: linesOf(pack.route) },
        properties: { kind: 'route', name: pack.route.name, lengthKm: round(pack.route.lengthM / 1000, 3) },
      },
      ...marksOf(pack).map((mark) => ({
        type: 'Feature' as const,
        geometry: { type: 'Point' as const, coordinates: [round(mark.lon, 7), round(mark.lat, 7)] },
        properties: propertiesOf(mark),
      })),
    ],
  };
  return `${JSON.stringify(collection, null, 1)}\n`;
}

const propertiesOf = ({ kind, commodities, atKm, name, words, supply }: Mark) => ({
  kind,
  commodities: [...commodities],
  atKm: round(atKm, 3),
  name,
  words,
  ...(supply === null
    ? {}
    : {
        arriveL: supply.arriveL === null ? null : round(supply.arriveL, 2),
        fillL: round(supply.fillL, 2),
        leaveL: supply.leaveL === null ? null : round(supply.leaveL, 2),
        cansFull: supply.cansFull,
      }),
});

function round(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale;
}

/** The turn round the globe that a longitude lies on; 180 itself belongs to the turn before. */
const turnOf = (lon: number): number => Math.ceil((lon - 180) / 360);

/** The line in pieces, each on one side of the 180th meridian, which they both touch. */
function linesOf({ lon, lat }: RouteLine): number[][][] {
  const lines: number[][][] = [];
  let line: number[][] = [];
  for (let i = 0; i < lon.length; i += 1) {
    const [x, y] = [numberAt(lon, i), numberAt(lat, i)];
    const before = i === 0 ? x : numberAt(lon, i - 1);
    if (turnOf(before) !== turnOf(x)) {
      const edge = 180 + 360 * Math.min(turnOf(before), turnOf(x));
      const share = (edge - before) / (x - before);
      const atY = round(numberAt(lat, i - 1) + share * (y - numberAt(lat, i - 1)), 7);
      const isEast = x > before;
      line.push([isEast ? 180 : -180, atY]);
      lines.push(line);
      line = [[isEast ? -180 : 180, atY]];
    }
    line.push([round(wrapLongitude(x), 7), round(y, 7)]);
  }
  return [...lines, line];
}
