import type {
  Block,
  Sheet,
  SheetPart,
  SheetPartName,
  SheetRow,
} from '../../../server/app/sheet/model/model.ts';

/** A part of a sheet that has to be there. */
export function partOf({ parts }: Sheet, name: SheetPartName): SheetPart {
  const part = parts.find((each) => each.name === name);
  if (part === undefined) throw new Error(`the sheet has no part ${name}`);
  return part;
}

/** All rows of a part's tables. */
export const rowsOf = ({ blocks }: SheetPart): SheetRow[] =>
  blocks.flatMap((block) => (block.kind === 'table' ? block.rows : []));

/** A row as the texts of its cells. */
export const cellsOf = ({ cells }: SheetRow): string[] => cells.map(({ text }) => text);

/** Every text of a block, pictures aside. */
export function textsOf(block: Block): string[] {
  switch (block.kind) {
    case 'headline':
    case 'lines':
      return [...block.lines];
    case 'box':
      return [block.label, ...block.lines];
    case 'list':
      return [...block.items];
    case 'table':
      return block.rows.flatMap(({ cells }) => cells.flatMap(({ text, second }) => [text, second]));
    case 'pictures':
      return [];
  }
}

/** Lines of all headlines of a part. */
export const headlinesOf = ({ blocks }: SheetPart): string[] =>
  blocks.flatMap((block) => (block.kind === 'headline' ? block.lines : []));

/** Every text of a sheet. */
export const allTexts = ({ parts }: Sheet): string[] =>
  parts.flatMap(({ blocks }) => blocks.flatMap(textsOf));
