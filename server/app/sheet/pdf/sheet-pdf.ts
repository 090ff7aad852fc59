import type { Paper } from '../../../contract/answers/sheet.ts';
import type { PdfPrinter } from '../../ports.ts';
import type { Sheet } from '../model/model.ts';
import { lettersOf } from './letters.ts';
import { pdfDefinition } from './pdf-definition.ts';

/** The sheet as a PDF file. `made`: the ISO date that it bears. */
export const sheetPdf = (
  sheet: Sheet,
  { paper, made, printer }: { paper: Paper; made: string; printer: PdfPrinter },
): Promise<Uint8Array> =>
  printer.print(pdfDefinition(sheet, { paper, made, letters: lettersOf(printer.hasSign) }));
