import type { ColumnHead } from '../../../words/en/printed/shared/columns.ts';

/** A column: its head, the unit of all its figures on the line below, and which way it leans. */
export interface Column extends ColumnHead {
  readonly lean: 'left' | 'right';
}

/** A column of words. */
export const left = (head: ColumnHead): Column => ({ ...head, lean: 'left' });

/** A column of figures in one unit. */
export const right = (head: ColumnHead): Column => ({ ...head, lean: 'right' });

/** Lays rows out under their columns' heads and units, two blanks between columns. */
export function tableText(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const lines = [columns.map((column) => column.head), columns.map((column) => column.unit), ...rows];
  const widths = columns.map((_, index) => Math.max(...lines.map((line) => widthOf(line[index] ?? ''))));
  return lines.map((line) =>
    columns
      .map(({ lean }, index) => padded(line[index] ?? '', widths[index]!, lean))
      .join('  ')
      .trimEnd(),
  );
}

const widthOf = (text: string) => [...text].length;

function padded(text: string, width: number, lean: Column['lean']): string {
  const blanks = ' '.repeat(Math.max(0, width - widthOf(text)));
  return lean === 'left' ? text + blanks : blanks + text;
}
