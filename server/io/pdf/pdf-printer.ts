import { createRequire } from 'node:module';
import type { Font } from 'fontkit';
import type { PdfPrinter } from '../../app/ports.ts';

const require = createRequire(import.meta.url);

/** DejaVu Sans Condensed: Latin, Greek, Cyrillic, Armenian, Georgian, Hebrew, Arabic and signs; no Chinese, Thai or the like. */
const pathsOfLetters = () => ({
  normal: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
});

/**
 * pdfmake with letters that are embedded, loaded at the first use: most runs print nothing. It reads its letters and
 * nothing else, from disk or network. A sign is there when the regular letters have it; the bold ones have the same.
 */
export async function loadPdfPrinter(): Promise<PdfPrinter> {
  const [{ default: pdfmake }, fontkit] = await Promise.all([import('pdfmake'), import('fontkit')]);
  const paths = pathsOfLetters();
  const fonts = [paths.normal, paths.bold].map((path) => fontkit.openSync(path) as Font);
  pdfmake.setFonts({ [FAMILY]: paths });
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path: string) => path === paths.normal || path === paths.bold);
  return {
    hasSign: (sign) => fonts.every((font) => font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0)),
    print: (definition) => {
      const defaultStyle = { ...definition.defaultStyle, font: FAMILY };
      return pdfmake.createPdf({ ...definition, defaultStyle }).getBuffer();
    },
  };
}

/** pdfmake looks for a picture's letters under this name where the picture says none. */
const FAMILY = 'Roboto';
