import { cabWords } from '../../words/cab.ts';
import type { ExportPack } from '../export/pack.ts';
import type {
  Block,
  Picture,
  SheetCell,
  SheetColumn,
  SheetPart,
  SheetRow,
  SheetTable,
} from '../sheet/model/model.ts';
import { sheetOf } from '../sheet/sheet-of.ts';
import { xmlText } from '../xml-text.ts';

/** The sheet of a trip for a narrow screen, part by part to be opened: it needs no script. */
export function papersHtml(pack: ExportPack): string {
  const sheet = sheetOf(pack);
  return [
    '<section class="papers">',
    `<p class="soft">${xmlText(sheet.dates)}</p>`,
    // What is for somebody at home is on the sheet.
    ...sheet.parts.filter(({ name }) => name !== 'home').map(partHtml),
    `<p class="soft">${xmlText(sheet.foot)}</p>`,
    '</section>',
  ].join('\n');
}

const partHtml = ({ heading, blocks }: SheetPart): string =>
  `<details><summary><h2>${xmlText(heading ?? cabWords().papers.answer)}</h2></summary>${blocks.map(blockHtml).join('\n')}</details>`;

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'headline':
      return block.lines.map((line) => `<h3>${xmlText(line)}</h3>`).join('');
    case 'box':
      return `<div class="box"><h3>${xmlText(block.label)}</h3>${paragraphs(block.lines)}</div>`;
    case 'lines':
      return paragraphs(block.lines);
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${xmlText(item)}</li>`).join('')}</ul>`;
    case 'table':
      return `<div class="rows">${block.rows.map((row) => rowHtml(row, block)).join('')}</div>`;
    case 'pictures':
      return block.pictures.map(pictureHtml).join('');
  }
}

/** A picture of more signs than this shows nothing on a screen so small, and would be most of the file (ours). */
const MOST_SIGNS = 200_000;

const pictureHtml = ({ svg, alt }: Picture): string =>
  svg.length > MOST_SIGNS
    ? `<p>${xmlText(cabWords().papers.leftOut(alt))}</p>`
    : `<figure role="img" aria-label="${xmlText(alt)}">${svg}</figure>`;

const paragraphs = (lines: readonly string[]): string =>
  lines.map((line) => `<p>${xmlText(line)}</p>`).join('');

/** A row of a table as its cells each below its head, groups of columns under each other: no table is wide here. */
function rowHtml({ cells, goesOn }: SheetRow, { columns }: SheetTable): string {
  const groups: string[][] = [[]];
  for (const [index, cell] of cells.entries()) {
    const column = columns[index];
    if (column?.startsGroup === true) groups.push([]);
    if (cell.text === '' && cell.second === '') continue;
    groups.at(-1)?.push(factHtml(cell, column));
  }
  return groups
    .filter((facts) => facts.length > 0)
    .map((facts, index) => `<dl${goesOn || index > 0 ? ' class="goes-on"' : ''}>${facts.join('')}</dl>`)
    .join('');
}

function factHtml(cell: SheetCell, column: SheetColumn | undefined): string {
  const { head = '', unit = '' } = column ?? {};
  const label = unit === '' ? head : `${head}, ${unit}`;
  return `<div><dt>${xmlText(label)}</dt><dd>${cellHtml(cell)}</dd></div>`;
}

function cellHtml({ text, second, strong, verdict }: SheetCell): string {
  const words = verdict === null ? xmlText(text) : `<span class="is-${verdict}">${xmlText(text)}</span>`;
  const main = strong ? `<b>${words}</b>` : words;
  return `${main}${second === '' ? '' : `<small>${xmlText(second)}</small>`}`;
}
