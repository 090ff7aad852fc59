import type { Paper } from '../../../contract/answers/sheet.ts';
import { language } from '../../../words/parts/language.ts';
import { xmlText } from '../../xml-text.ts';
import type {
  Block,
  Picture,
  Sheet,
  SheetCell,
  SheetColumn,
  SheetPart,
  SheetRow,
  SheetTable,
} from '../model/model.ts';
import { SHEET_CSS, sheetPageCss } from './sheet-css.ts';

/** The sheet as one HTML file that needs nothing else: for a browser to show and to print. */
export const sheetHtml = (sheet: Sheet, paper: Paper = 'a4'): string =>
  [
    '<!doctype html>',
    `<html lang="${language()}">`,
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${xmlText(sheet.title)}</title>`,
    `<style>${sheetPageCss(paper)}${SHEET_CSS}</style>`,
    '</head>',
    '<body class="sheet-page">',
    `<header class="sheet-head"><span>${xmlText(sheet.head)}</span><span>${xmlText(sheet.dates)}</span></header>`,
    '<main>',
    ...sheet.parts.map(partHtml),
    '</main>',
    `<footer class="sheet-foot">${xmlText(sheet.foot)}</footer>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');

/** One part, everything in it escaped. */
function partHtml({ name, heading, startsPage, blocks }: SheetPart): string {
  const head = heading === null ? '' : `<h2 class="sheet-heading">${xmlText(heading)}</h2>`;
  const classes = `sheet-part sheet-part-${name}${startsPage ? ' sheet-starts-page' : ''}`;
  return `<section class="${classes}">${head}${blocks.map((block) => blockHtml(block, name)).join('\n')}</section>`;
}

function blockHtml(block: Block, part: SheetPart['name']): string {
  switch (block.kind) {
    case 'headline': {
      const tag = part === 'answer' ? 'h1' : 'h3';
      return block.lines.map((line) => `<${tag} class="sheet-headline">${xmlText(line)}</${tag}>`).join('');
    }
    case 'box':
      return `<div class="sheet-box"><h3 class="sheet-label">${xmlText(block.label)}</h3>${paragraphs(block.lines)}</div>`;
    case 'lines':
      return `<div class="sheet-lines">${paragraphs(block.lines)}</div>`;
    case 'list': {
      const classes = block.toTick ? 'sheet-list sheet-to-tick' : 'sheet-list';
      return `<ul class="${classes}">${block.items.map((item) => `<li>${xmlText(item)}</li>`).join('')}</ul>`;
    }
    case 'table':
      return tableHtml(block);
    case 'pictures':
      return `<div class="sheet-pictures">${block.pictures.map(pictureHtml).join('')}</div>`;
  }
}

const paragraphs = (lines: readonly string[]): string =>
  lines.map((line) => `<p>${xmlText(line)}</p>`).join('');

const pictureHtml = ({ svg, alt }: Picture): string =>
  `<figure class="sheet-picture" role="img" aria-label="${xmlText(alt)}">${svg}</figure>`;

function tableHtml({ columns, rows }: SheetTable): string {
  const widths = columns.reduce((sum, { width }) => sum + width, 0);
  const cols = columns
    .map(({ width }) => `<col style="width:${((100 * width) / widths).toFixed(2)}%">`)
    .join('');
  return [
    `<table class="sheet-table"><colgroup>${cols}</colgroup>`,
    `<thead><tr>${columns.map(headHtml).join('')}</tr></thead>`,
    `<tbody>${rows.map((row) => rowHtml(row, columns)).join('')}</tbody></table>`,
  ].join('');
}

const headHtml = ({ head, unit, lean }: SheetColumn): string =>
  `<th scope="col" class="sheet-${lean}">${xmlText(head)}${unit === '' ? '' : ` <span class="sheet-unit">${xmlText(unit)}</span>`}</th>`;

const rowHtml = ({ cells, goesOn }: SheetRow, columns: readonly SheetColumn[]): string =>
  `<tr${goesOn ? ' class="sheet-goes-on"' : ''}>${cells.map((cell, index) => cellHtml(cell, columns[index]?.lean ?? 'left')).join('')}</tr>`;

function cellHtml({ text, second, strong, verdict }: SheetCell, lean: SheetColumn['lean']): string {
  const marked = verdict === null ? xmlText(text) : `<span class="sheet-${verdict}">${xmlText(text)}</span>`;
  const main = strong ? `<b>${marked}</b>` : marked;
  return `<td class="sheet-${lean}">${main}${second === '' ? '' : `<small>${xmlText(second)}</small>`}</td>`;
}
