import { beforeAll, describe, expect, it } from 'vitest';
import type { ExportPack } from '../../../../server/app/export/pack.ts';
import type { PdfPrinter } from '../../../../server/app/ports.ts';
import { sheetPdf } from '../../../../server/app/sheet/pdf/sheet-pdf.ts';
import { sheetOf } from '../../../../server/app/sheet/sheet-of.ts';
import { loadPdfPrinter } from '../../../../server/io/pdf/pdf-printer.ts';
import { demoPack } from '../../export/packs.ts';
import { allTexts } from '../texts.ts';
import { type ReadPage, readPdf } from './read-pdf.ts';

let pack: ExportPack;
let printer: PdfPrinter;
beforeAll(async () => {
  pack = await demoPack();
  printer = await loadPdfPrinter();
});

const bytesOf = (of: ExportPack, paper: 'a4' | 'letter' = 'a4') =>
  sheetPdf(sheetOf(of), { paper, made: of.made, printer });
const pagesOf = async (of: ExportPack, paper: 'a4' | 'letter' = 'a4'): Promise<ReadPage[]> =>
  readPdf(await bytesOf(of, paper));

/** Blanks aside: where a line ends is the printer's business. */
const bare = (text: string): string => text.replaceAll(/[\s\u00a0]/g, '');

/** The demo with other names at its stops, in turn. */
function named(names: readonly string[]): ExportPack {
  const planned = structuredClone(pack.planned);
  for (const [index, { fuel, water }] of planned.plan.sheet.entries())
    for (const supply of [fuel, water])
      if (supply !== null) supply.at.name = names[index % names.length] ?? null;
  return { ...pack, planned };
}

describe('the sheet as PDF', { tags: 'slow' }, () => {
  it('is of the size that is asked for, four pages and one for somebody at home, nothing off the paper', async () => {
    // Points by ISO 216 and ANSI/ASME Y14.1, as every reader has them.
    for (const [paper, widthPt, heightPt] of [
      ['a4', 595.28, 841.89],
      ['letter', 612, 792],
    ] as const) {
      const pages = await pagesOf(pack, paper);
      expect(pages.length).toBeLessThanOrEqual(5);
      expect(pages.at(-1)?.text).toContain('For somebody at home');
      for (const [index, page] of pages.entries()) {
        expect(page.widthPt).toBeCloseTo(widthPt, 1);
        expect(page.heightPt).toBeCloseTo(heightPt, 1);
        expect(page.reachesPt).toBeLessThan(widthPt - 36);
        expect(page.text).toContain(`${index + 1} of ${pages.length}`);
        expect(page.text).toContain('Never ration drinking water.');
      }
    }
  });

  it('holds every text of the sheet, the answer first', async () => {
    const pages = await pagesOf(pack);
    const text = bare(pages.map((page) => page.text).join(''));
    expect(pages[0]?.text).toContain('With this plan the reserve is kept all the way.');
    for (const one of allTexts(sheetOf(pack))) expect(text).toContain(bare(one));
    // In the pictures as well.
    expect(text).toContain(bare('2 Ketta fuel'));
    expect(text).toContain(bare('back before 566'));
  });

  it('has letters for names far beyond Latin, and says so where it has none', async () => {
    const names = ['Σταθμός', 'Станция Вода', 'Ełk Źródło', 'Ağrı − ½ →', 'Հայաստան'];
    const text = bare((await pagesOf(named(names))).map((page) => page.text).join(''));
    for (const name of names) expect(text).toContain(bare(name));
    expect(text).not.toContain('▯');
    const lacking = (await pagesOf(named(['水站 Ketta', 'Ketta']))).map((page) => page.text).join(' ');
    expect(lacking).toContain('▯▯ Ketta');
    expect(lacking).toContain('▯ stands for a letter that this file does not have');
    expect(text).not.toContain(bare('stands for a letter'));
  });

  it('has names that run from right to left in their own order, with their numbers as they are', async () => {
    const pages = await pagesOf(named(['بئر الماء', '12 تحנة', 'בית 34']));
    const text = pages.map((page) => page.text).join(' ');
    for (const words of ['بئر الماء', '12', '34']) expect(text).toContain(words);
    expect(text).not.toContain('▯');
  });

  it('is the same whenever it is made of the same', async () => {
    const [one, two] = [await bytesOf(pack), await bytesOf(pack)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });
});
