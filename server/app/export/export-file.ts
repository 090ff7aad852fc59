import { csvFile } from './csv-file.ts';
import { geojsonFile } from './geojson-file.ts';
import { gpxFile } from './gpx-file.ts';
import { icsFile } from './ics-file.ts';
import type { ExportPack } from './pack.ts';

/** The files to take along, by the ending of their name. */
export const EXPORT_FILES = {
  gpx: gpxFile,
  geojson: geojsonFile,
  csv: csvFile,
  ics: icsFile,
} as const satisfies Record<string, (pack: ExportPack) => string>;
export type ExportEnding = keyof typeof EXPORT_FILES;

export const isExportEnding = (ending: string): ending is ExportEnding => Object.hasOwn(EXPORT_FILES, ending);
