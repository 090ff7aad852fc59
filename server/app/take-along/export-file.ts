import type { Paper } from '../../contract/answers/sheet.ts';
import { csvFile } from '../export/csv-file.ts';
import { geojsonFile } from '../export/geojson-file.ts';
import { gpxFile } from '../export/gpx-file.ts';
import { icsFile } from '../export/ics-file.ts';
import type { ExportPack } from '../export/pack.ts';
import type { CabProgram, PdfPrinter } from '../ports.ts';
import { sheetPdf } from '../sheet/pdf/sheet-pdf.ts';
import { sheetOf } from '../sheet/sheet-of.ts';
import { takeAlongFile } from './take-along-file.ts';

/** What some of the files are made with. */
export interface ExportTools {
  readonly cabProgram: () => Promise<CabProgram>;
  readonly pdfPrinter: () => Promise<PdfPrinter>;
  readonly paper: Paper;
}

type Write = (pack: ExportPack, tools: ExportTools) => string | Promise<string | Uint8Array>;

/** The files to take along, by the ending of their name. */
export const EXPORT_FILES = {
  html: async (pack, { cabProgram }) => takeAlongFile(pack, await cabProgram()),
  pdf: async (pack, { pdfPrinter, paper }) =>
    sheetPdf(sheetOf(pack), { paper, made: pack.made, printer: await pdfPrinter() }),
  gpx: gpxFile,
  geojson: geojsonFile,
  csv: csvFile,
  ics: icsFile,
} as const satisfies Record<string, Write>;
export type ExportEnding = keyof typeof EXPORT_FILES;

/** Whether it is read by people: in their language and units. All others are read by programs, in English and metric. */
export const isForReaders = (format: string): boolean => FOR_READERS.includes(format);
const FOR_READERS: readonly string[] = ['html', 'pdf', 'sheet'];

export const isExportEnding = (ending: string): ending is ExportEnding => Object.hasOwn(EXPORT_FILES, ending);
