import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as an independent reader finds it: points, and its words in the order of the file. */
export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly text: string;
  /** Right-most place that a text reaches. */
  readonly reachesPt: number;
  /** The lowest place of a text, from the foot of the page; what stands in its margin is left out. */
  readonly lowestPt: number;
}

/** What stands lower is the foot of a page. */
const FOOT_PT = 40;

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
      lowestPt: Math.min(height, ...words.map(({ transform }) => transform[5]).filter((y) => y > FOOT_PT)),
    });
  }
  await document.destroy();
  return pages;
}
