import { beforeAll, describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import type { ExportPack } from '../../../server/app/export/pack.ts';
import { sheetHtml } from '../../../server/app/sheet/html/sheet-html.ts';
import type { Sheet } from '../../../server/app/sheet/model/model.ts';
import { sheetOf } from '../../../server/app/sheet/sheet-of.ts';
import { xmlText } from '../../../server/app/xml-text.ts';
import { demoPack } from '../export/packs.ts';
import { allTexts } from './texts.ts';

let pack: ExportPack;
let sheet: Sheet;
beforeAll(async () => {
  pack = await demoPack();
  sheet = sheetOf(pack);
});

const NASTY = '</td><script>alert(1)</script>"\' & بئر 水';

describe('the sheet as HTML', () => {
  it('holds every text of the sheet, escaped', () => {
    const html = sheetHtml(sheet);
    for (const text of [sheet.head, sheet.dates, sheet.foot, ...allTexts(sheet)])
      expect(html).toContain(xmlText(text));
    expect(html.match(/<svg /g)).toHaveLength(2);
  });

  it('asks for nothing from elsewhere and runs nothing, whatever names there are', () => {
    const planned = structuredClone(pack.planned);
    for (const { fuel } of planned.plan.sheet)
      if (fuel !== null) {
        fuel.at.name = NASTY;
        fuel.contact = { phone: NASTY, website: null, openingHours: NASTY };
      }
    const html = sheetHtml(sheetOf({ ...pack, planned, route: { ...pack.route, name: NASTY } }));
    expect(html).toContain('&lt;script&gt;');
    expect(html).not.toMatch(/<script|<link|<img|src=|href=|url\(|@import/);
    expect(html.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toContain('http://www.w3');
  });

  it('has pictures that are sound XML, with the stops by their numbers', async () => {
    const pictures = sheetHtml(sheet).match(/<svg .*?<\/svg>/g) ?? [];
    for (const xml of pictures)
      expect((await validateXML({ xml, normalization: 'format' })).errors).toEqual([]);
    const [map = '', strip = ''] = pictures;
    for (const number of pack.planned.plan.sheet.keys()) expect(map).toContain(`>${number + 1}</text>`);
    expect(strip).toContain('>2 Ketta fuel</text>');
    expect(strip).toContain('>back before 566</text>');
  });

  it('is of the size that is asked for', () => {
    expect(sheetHtml(sheet)).toContain('size: A4');
    expect(sheetHtml(sheet, 'letter')).toContain('size: letter');
  });
});
