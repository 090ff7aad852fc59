import { unpackMaps, type WrittenMaps, writeMaps } from '../maps/trip-maps.ts';
import type { StoredTrip } from '../port/port.ts';
import { TRIP_FILE_VERSION, type WrittenTrip } from './written-trip.ts';

/** What of a kept trip goes into its file. */
export interface TripToWrite extends Pick<StoredTrip, 'name' | 'notes' | 'notice' | 'rig' | 'trip'> {
  route: { fileName: string; bytes: Uint8Array };
  /** As the store has them. */
  maps: Uint8Array;
  /** ISO time. */
  written: string;
}

/** The text of a trip's file: JSON with a line for each object of the map, so that it can be read and compared. */
export function tripFileText({ name, notes, notice, rig, trip, route, maps, written }: TripToWrite): string {
  const said = { name, notes, notice, rig, trip };
  const head = { drystage: 'trip', version: TRIP_FILE_VERSION, written, ...said } as const;
  const file: Omit<WrittenTrip, 'maps'> = { ...head, route: writtenRoute(route) };
  const lines = Object.entries(file).map(
    ([key, value]) => `${keyText(key)}${JSON.stringify(value, null, 1)}`,
  );
  return `{\n${[...lines, `${keyText('maps')}${mapsText(writeMaps(unpackMaps(maps)))}`].join(',\n')}\n}\n`;
}

function writtenRoute({ fileName, bytes }: TripToWrite['route']): WrittenTrip['route'] {
  const gpx = Buffer.from(bytes).toString('utf8');
  // A file in another encoding goes as its bytes.
  if (Buffer.from(gpx, 'utf8').equals(bytes)) return { fileName, gpx };
  return { fileName, gpxBase64: Buffer.from(bytes).toString('base64') };
}

const keyText = (key: string): string => `${JSON.stringify(key)}: `;

/** A list with each member on a line. */
const listText = (list: readonly unknown[]): string =>
  list.length === 0 ? '[]' : `[\n${list.map((member) => JSON.stringify(member)).join(',\n')}\n]`;

const groupText = (group: object): string =>
  `{\n${Object.entries(group)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${keyText(key)}${Array.isArray(value) ? listText(value) : JSON.stringify(value)}`)
    .join(',\n')}\n}`;

function mapsText({ extracts, extents, ground, groundLeftOut }: WrittenMaps): string {
  const written = extracts.length === 0 ? '[]' : `[\n${extracts.map(groupText).join(',\n')}\n]`;
  return [
    `{\n"extracts": ${written}`,
    `"extents": ${listText(extents)}`,
    `"ground": ${listText(ground)}`,
    `"groundLeftOut": ${groundLeftOut}\n}`,
  ].join(',\n');
}

/** What a trip's file is called: its name without what file systems do not bear. */
export function tripFileName(name: string): string {
  const plain = name
    .replace(/[^\p{L}\p{N} ._()-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '');
  return `${plain === '' ? 'trip' : plain}.drystage.json`;
}
