import type { Paper } from '../../../contract/answers/sheet.ts';

const PAGE_NAMES: Record<Paper, string> = { a4: 'A4', letter: 'letter' };

/** The size of the paper, which only a file of its own may set. */
export const sheetPageCss = (
  paper: Paper,
): string => `@page { size: ${PAGE_NAMES[paper]} portrait; margin: 11mm 14mm 13mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; } }
html { background: #fff; }
`;

/** Black on white, whatever the reader's colours are; widths, lines and words tell apart, never a hue. */
export const SHEET_CSS = `
.sheet-page { margin: 0 auto; max-width: 182mm; padding: 4mm; background: #fff; }
.sheet-page, .sheet-part { color: #000; font: 9.5pt/1.35 "Overpass Variable", Overpass, "DejaVu Sans Condensed", Arial, sans-serif; font-variant-numeric: tabular-nums; }
.sheet-head { display: flex; justify-content: space-between; gap: 4mm; font-size: 8pt; margin-bottom: 3mm; }
.sheet-foot { margin-top: 4mm; border-top: 0.3mm solid #000; padding-top: 1mm; font-size: 8pt; }
.sheet-part { margin: 0 0 3mm; }
.sheet-headline { margin: 0 0 2mm; font-size: 17pt; line-height: 1.2; font-weight: 800; break-after: avoid; }
h3.sheet-headline { font-size: 12pt; margin-top: 3mm; }
.sheet-heading { margin: 0 0 1.5mm; font-size: 12pt; font-weight: 700; break-after: avoid; }
.sheet-box { border: 0.6mm solid #000; padding: 2mm 3mm; margin: 0 0 3mm; break-inside: avoid; }
.sheet-label { margin: 0 0 1mm; font-size: 9.5pt; font-weight: 800; }
.sheet-box p, .sheet-lines p { margin: 0 0 0.6mm; }
.sheet-lines { margin: 0 0 2mm; font-size: 8.5pt; line-height: 1.25; }
.sheet-part-answer .sheet-lines { font-size: 9.5pt; }
.sheet-list { margin: 0 0 2mm; padding-left: 5mm; font-size: 8.5pt; line-height: 1.25; }
.sheet-list li { margin-bottom: 0.6mm; break-inside: avoid; }
.sheet-to-tick { list-style: none; padding-left: 6mm; }
.sheet-to-tick li { position: relative; }
.sheet-to-tick li::before { content: ""; position: absolute; left: -6mm; top: 0.5mm; width: 3mm; height: 3mm; border: 0.3mm solid #000; }
.sheet-table { width: 100%; border-collapse: collapse; margin: 0 0 2mm; table-layout: fixed; font-size: 8.5pt; line-height: 1.25; }
.sheet-table th { font-weight: 700; font-size: 7.5pt; vertical-align: bottom; border-bottom: 0.4mm solid #000; padding: 0.5mm 1mm; }
.sheet-table td { vertical-align: top; border-top: 0.2mm solid #777; padding: 0.7mm 1mm; overflow-wrap: anywhere; }
.sheet-table tr { break-inside: avoid; }
.sheet-table tr.sheet-goes-on td { border-top-color: transparent; padding-top: 0; }
.sheet-table small { display: block; font-size: 7pt; }
.sheet-unit { font-weight: 400; }
.sheet-left { text-align: left; }
.sheet-right { text-align: right; }
.sheet-short { border: 0.4mm solid #000; padding: 0 0.6mm; }
.sheet-into-reserve { border-bottom: 0.4mm dashed #000; }
.sheet-unknown { border: 0.3mm dotted #000; padding: 0 0.6mm; }
.sheet-pictures { display: flex; flex-wrap: wrap; gap: 3mm; align-items: flex-start; break-inside: avoid; }
.sheet-picture { margin: 0; }
.sheet-picture svg { display: block; max-width: 100%; }
.sheet-starts-page { break-before: page; }
@media screen { .sheet-starts-page { margin-top: 8mm; border-top: 0.6mm solid #000; padding-top: 4mm; } }
@media print {
  .sheet-page { padding: 0; max-width: none; }
}
`;
