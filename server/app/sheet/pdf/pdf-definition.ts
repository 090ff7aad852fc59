import type { Content, ContentTable, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Paper } from '../../../contract/answers/sheet.ts';
import type { Verdict } from '../../../contract/common.ts';
import { language } from '../../../words/parts/language.ts';
import { printed } from '../../../words/printed.ts';
import type { Block, Picture, Sheet, SheetCell, SheetPart, SheetTable } from '../model/model.ts';
import { LACKING_SIGN, type Letters } from './letters.ts';

const words = () => printed().paper.page;

/** Points of a millimetre. */
const PT_PER_MM = 72 / 25.4;
const pt = (mm: number): number => mm * PT_PER_MM;

/** Widths by ISO 216 and ANSI/ASME Y14.1. */
const PAGES: Record<Paper, { size: 'A4' | 'LETTER'; widthPt: number }> = {
  a4: { size: 'A4', widthPt: pt(210) },
  letter: { size: 'LETTER', widthPt: pt(215.9) },
};
const MARGIN_PT = pt(14);
const TOP_PT = pt(16);
const BOTTOM_PT = pt(15);
const BASE = 8.4;
const SMALL = 6.6;
const CELL = 7.6;

/** What goes on a verdict's word: lines of different kinds, no colour. */
const DECORATION: Record<Verdict, object> = {
  enough: {},
  short: { decoration: 'underline', decorationStyle: 'double' },
  'into-reserve': { decoration: 'underline', decorationStyle: 'dashed' },
  unknown: { decoration: 'underline', decorationStyle: 'dotted' },
};

interface Setting {
  readonly letters: Letters;
  /** Between the margins. */
  readonly widthPt: number;
}

/** The sheet as pdfmake takes it: pages of a size with head and foot, blocks in turn, no heading alone at the foot of a page. */
export function pdfDefinition(
  sheet: Sheet,
  { paper, letters, made }: { paper: Paper; letters: Letters; made: string },
): TDocumentDefinitions {
  const { size, widthPt } = PAGES[paper];
  const setting = { letters, widthPt: widthPt - 2 * MARGIN_PT };
  const content = sheet.parts.map((part) => partContent(part, setting));
  return {
    pageSize: size,
    pageMargins: [MARGIN_PT, TOP_PT, MARGIN_PT, BOTTOM_PT],
    info: { title: sheet.title, creator: 'Drystage', creationDate: new Date(`${made}T00:00:00Z`) },
    language: language(),
    defaultStyle: { fontSize: BASE, lineHeight: 1.12 },
    header: besides(letters.runs(sheet.head), sheet.dates, [MARGIN_PT, pt(8), MARGIN_PT, 0]),
    footer: (page, pages) =>
      besides(letters.runs(sheet.foot), words().ofPages(page, pages), [MARGIN_PT, pt(4), MARGIN_PT, 0]),
    content: [...content, ...lackingNote(sheet, letters)],
    pageBreakBefore: ({ headlineLevel }, { getFollowingNodesOnPage }) =>
      headlineLevel === 1 && getFollowingNodesOnPage().length === 0,
  };
}

/** A line with something at either end. */
const besides = (left: Content, right: string, margin: [number, number, number, number]): Content => ({
  columns: [
    { stack: [left], width: '*' },
    { text: right, alignment: 'right', width: 'auto' },
  ],
  columnGap: 10,
  fontSize: 7,
  margin,
});

function partContent({ heading, startsPage, blocks, name }: SheetPart, setting: Setting): Content {
  const head: Content[] =
    heading === null
      ? []
      : [{ text: heading, bold: true, fontSize: 11.5, headlineLevel: 1, margin: [0, 2, 0, 3] }];
  return {
    stack: [...head, ...blocks.map((block) => blockContent(block, name === 'answer', setting))],
    margin: [0, 0, 0, 5],
    ...(startsPage ? { pageBreak: 'before' } : {}),
  };
}

function blockContent(block: Block, isAnswer: boolean, setting: Setting): Content {
  const { runs } = setting.letters;
  switch (block.kind) {
    case 'headline':
      return {
        stack: block.lines.map(runs),
        bold: true,
        fontSize: isAnswer ? 17 : 11.5,
        lineHeight: 1.05,
        margin: [0, isAnswer ? 0 : 4, 0, 4],
      };
    case 'box':
      return boxContent(block.label, block.lines.map(runs));
    case 'lines':
      return {
        stack: block.lines.map((line) => ({ stack: [runs(line)], unbreakable: true })),
        fontSize: isAnswer ? BASE + 1 : BASE - 0.6,
        margin: [0, 0, 0, 4],
      };
    case 'list':
      return listContent(block.items.map(runs), block.toTick);
    case 'table':
      return tableContent(block, setting);
    case 'pictures':
      return picturesContent(block.pictures, setting);
  }
}

const boxContent = (label: string, lines: readonly Content[]): Content => ({
  table: {
    widths: ['*'],
    dontBreakRows: true,
    body: [[{ stack: [{ text: label, bold: true }, ...lines] }]],
  },
  layout: {
    hLineWidth: () => 1.6,
    vLineWidth: () => 1.6,
    paddingLeft: () => 6,
    paddingRight: () => 6,
    paddingTop: () => 4,
    paddingBottom: () => 4,
  },
  margin: [0, 0, 0, 6],
});

/** A square to tick off, or a dot. */
const listContent = (items: readonly Content[], toTick: boolean): Content => ({
  stack: items.map((item) => ({
    columns: [
      { text: toTick ? '☐' : '•', width: toTick ? 13 : 9, fontSize: toTick ? BASE + 2 : BASE - 0.4 },
      { stack: [item], width: '*', margin: [0, toTick ? 1.5 : 0, 0, 0] },
    ],
  })),
  fontSize: BASE - 0.6,
  margin: [0, 0, 0, 4],
});

/** Between the text of a cell and its sides. */
const PADDING_PT = 2;

function tableContent({ columns, rows }: SheetTable, { letters, widthPt }: Setting): ContentTable {
  const shares = columns.reduce((sum, { width }) => sum + width, 0);
  const roomPt = widthPt - 2 * PADDING_PT * columns.length;
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: columns.map(({ width }) => (roomPt * width) / shares),
      body: [
        columns.map(
          ({ head, unit, lean }): TableCell => ({
            text: [{ text: head, bold: true }, { text: unit === '' ? '' : ` ${unit}` }],
            alignment: lean,
            fontSize: SMALL + 0.2,
          }),
        ),
        ...rows.map(({ cells }) =>
          cells.map((cell, index) => cellContent(cell, columns[index]?.lean ?? 'left', letters)),
        ),
      ],
    },
    layout: {
      // The line above row `index`; the head is row 0, and there is none above what goes on.
      hLineWidth: (index) =>
        index === 0 || index > rows.length ? 0 : index === 1 ? 1 : rows[index - 1]?.goesOn === true ? 0 : 0.4,
      vLineWidth: () => 0,
      paddingLeft: () => PADDING_PT,
      paddingRight: () => PADDING_PT,
      paddingTop: () => 1.3,
      paddingBottom: () => 1.1,
    },
    margin: [0, 0, 0, 5],
  };
}

const cellContent = (
  { text, second, strong, verdict }: SheetCell,
  lean: 'left' | 'right',
  { runs }: Letters,
): TableCell => ({
  stack: [
    { stack: [runs(text)], bold: strong, ...(verdict === null ? {} : DECORATION[verdict]) },
    ...(second === '' ? [] : [{ stack: [runs(second)], fontSize: SMALL }]),
  ],
  fontSize: CELL,
  alignment: lean,
});

/** Beside each other, each as wide as it is, or all smaller where there is no room. */
function picturesContent(pictures: readonly Picture[], { letters, widthPt }: Setting): Content {
  const gapPt = pt(3);
  const allPt = pictures.reduce((sum, { widthMm }) => sum + pt(widthMm), gapPt * (pictures.length - 1));
  const scale = Math.min(1, widthPt / allPt);
  return {
    columns: pictures.map(({ svg, widthMm }) => ({
      svg: letters.printable(svg),
      width: pt(widthMm) * scale,
    })),
    columnGap: gapPt,
    unbreakable: true,
    margin: [0, 4, 0, 8],
  };
}

/** Said where some sign of some text has no letter. */
const lackingNote = (sheet: Sheet, { printable }: Letters): Content[] =>
  isLacking(sheet, printable) ? [{ text: words().lacking(LACKING_SIGN), fontSize: BASE - 0.6 }] : [];

const isLacking = (sheet: Sheet, printable: Letters['printable']): boolean => {
  const texts = JSON.stringify(sheet);
  return printable(texts) !== texts;
};
