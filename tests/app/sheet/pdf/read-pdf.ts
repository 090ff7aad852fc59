import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as an independent reader finds it: points, and its words in the order of the file. */
export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly text: string;
  /** Right-most place that a text reaches. */
  readonly reachesPt: number;
}

/** Pages of a PDF file, read by pdf.js. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) => ('str' in item ? [item] : []));
    pages.push({
      widthPt: width,
      heightPt: height,
      text: words
        .map(({ str, hasEOL }) => (hasEOL ? `${str} ` : str))
        .join('')
        .replaceAll(/[\s\u00a0]+/g, ' '),
      reachesPt: Math.max(0, ...words.map(({ transform, width: wide }) => transform[4] + wide)),
    });
  }
  await document.destroy();
  return pages;
}
