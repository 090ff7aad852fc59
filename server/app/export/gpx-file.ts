import { wrapLongitude } from '../../core/geodesy/longitude.ts';
import { numberAt } from '../../core/lists/at.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { xmlText } from '../xml-text.ts';
import { creditOf } from './credit.ts';
import { type Mark, marksOf } from './marks.ts';
import type { ExportPack } from './pack.ts';

/** GPX 1.1: every place to know as a waypoint, and the route as one track. */
export function gpxFile(pack: ExportPack): string {
  const { route } = pack;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Drystage" xmlns="http://www.topografix.com/GPX/1/1">',
    `<metadata><name>${xmlText(route.name)}</name><desc>${xmlText(creditOf(pack))}</desc></metadata>`,
    ...marksOf(pack).map(waypoint),
    `<trk><name>${xmlText(route.name)}</name>`,
    ...segmentsOf(route),
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
}

/** Elements in the order of the schema. Seven decimals of a degree are a centimetre. */
const waypoint = ({ lat, lon, name, words, kind }: Mark): string =>
  `<wpt lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"><name>${xmlText(name)}</name><desc>${xmlText(words)}</desc><type>${kind}</type></wpt>`;

/** A segment ends where the line only jumps: no one drives there. */
function segmentsOf({ lon, lat, eleM, atM, sketchy }: RouteLine): string[] {
  const jumps = sketchy.filter(({ kind }) => kind === 'bridge');
  const segments: string[][] = [[]];
  for (let i = 0; i < lon.length; i += 1) {
    const m = numberAt(atM, i);
    // What lies inside a jump was put there to measure it.
    if (jumps.some(({ fromM, toM }) => fromM < m && m < toM)) continue;
    const point = pointOf(i, { lon, lat, eleM });
    if (jumps.some(({ toM }) => toM === m)) segments.push([point]);
    else segments.at(-1)?.push(point);
  }
  return segments
    .filter((points) => points.length > 0)
    .map((points) => `<trkseg>\n${points.join('\n')}\n</trkseg>`);
}

function pointOf(i: number, { lon, lat, eleM }: Pick<RouteLine, 'lon' | 'lat' | 'eleM'>): string {
  const ele = eleM === null ? Number.NaN : numberAt(eleM, i);
  const height = Number.isFinite(ele) ? `<ele>${ele.toFixed(1)}</ele>` : '';
  return `<trkpt lat="${numberAt(lat, i).toFixed(7)}" lon="${wrapLongitude(numberAt(lon, i)).toFixed(7)}">${height}</trkpt>`;
}
