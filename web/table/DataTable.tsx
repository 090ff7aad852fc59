import { type ReactNode, useCallback, useEffect, useId, useMemo, useRef, useState } from 'react';
import { type CsvCell, csvText } from '../../server/words/parts/csv-text.ts';
import { saveFile } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatFigure } from '../units/units.ts';
import { type FindBy, found, isWorthNarrowing, MANY_ROWS, type Matter } from './narrow.ts';
import { type Direction, type SortValue, sortedBy } from './order.ts';

export interface Column<Row> {
  key: string;
  head: string;
  /** Set in the head, after the word. */
  unit?: string;
  align?: 'end';
  /** Share of the table's width; columns without one share the rest by their content. */
  width?: string;
  /** What the column sorts by. */
  value: (row: Row) => SortValue;
  cell: (row: Row) => ReactNode;
}

/** One column of the saved file; its head names the unit. */
export interface CsvColumn<Row> {
  head: string;
  value: (row: Row) => CsvCell | boolean;
}

interface DataTableProps<Row> {
  caption: string;
  /** The first column is the row's head: its content is a button that selects the row. */
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  /** Of a table whose rows stand for several things: each of them as a row, to be found and saved. */
  singles?: readonly Row[];
  rowKey: (row: Row) => string;
  /** Whether a row is the selected one, where its key alone does not say so. */
  holds?: (row: Row, selected: string) => boolean;
  selected: string | null;
  onSelect: (row: Row | null) => void;
  onPoint: (row: Row | null) => void;
  details: (row: Row) => ReactNode;
  csv: { name: string; columns: readonly CsvColumn<Row>[] };
  empty: string;
  /** Of a long table: what is shown until all of it is asked for. */
  matter?: Matter<Row>;
  /** Of a long table: what rows are found by. */
  findBy?: FindBy<Row>;
}

const cellOf = (value: CsvCell | boolean): CsvCell =>
  typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;

/** Rows drawn at once: more make typing and hovering slow, fewer make leafing tedious (ours). */
const PAGE_ROWS = 60;

/** A table that sorts by its heads, leafs when it is long, opens a row's details in place and saves itself as CSV. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { columns, rowKey, selected } = props;
  const { singles = props.rows } = props;
  const isSelected = useIsSelected(props);
  const narrowed = useNarrowed(props, isSelected);
  const { rows } = narrowed;
  const [order, setOrder] = useState<{ key: string; direction: Direction } | null>(null);
  const [page, setPage] = useState(0);
  const captionId = useId();

  const inOrder = useCallback(
    (all: readonly Row[]): readonly Row[] => {
      const column = columns.find((each) => each.key === order?.key);
      return column === undefined || order === null ? all : sortedBy(all, column.value, order.direction);
    },
    [columns, order],
  );
  const sorted = useMemo(() => inOrder(rows), [inOrder, rows]);

  const pages = Math.max(1, Math.ceil(sorted.length / PAGE_ROWS));
  const shownPage = Math.min(page, pages - 1);
  const shown = sorted.slice(shownPage * PAGE_ROWS, (shownPage + 1) * PAGE_ROWS);

  // A row chosen on the map or the strip may be on another page.
  useEffect(() => {
    if (selected === null) return;
    const at = sorted.findIndex((row) => isSelected(row));
    if (at >= 0) setPage(Math.floor(at / PAGE_ROWS));
  }, [selected, sorted, isSelected]);

  const sortBy = (key: string) => {
    setPage(0);
    setOrder((last) =>
      last?.key === key && last.direction === 'ascending'
        ? { key, direction: 'descending' }
        : { key, direction: 'ascending' },
    );
  };
  const save = () =>
    saveFile(
      `${props.csv.name}.csv`,
      'text/csv;charset=utf-8',
      csvText(
        props.csv.columns.map((column) => column.head),
        // All of the table, whatever of it is shown.
        inOrder(singles).map((row) => props.csv.columns.map((column) => cellOf(column.value(row)))),
      ),
    );

  return (
    <div className="data-table">
      <div className="table-title">
        <h3 id={captionId}>{props.caption}</h3>
        <button
          type="button"
          className="quiet"
          aria-label={t`Save as CSV: ${props.caption}`}
          onClick={save}
          disabled={props.rows.length === 0}
        >
          {t('Save as CSV')}
        </button>
      </div>
      <Narrowing table={props} narrowed={narrowed} />
      {rows.length === 0 ? (
        <p className="empty">{props.rows.length === 0 ? props.empty : t('Nothing here is named so.')}</p>
      ) : (
        <table aria-labelledby={captionId} aria-rowcount={sorted.length + 1}>
          <thead>
            <tr>
              {columns.map((column) => (
                <th
                  key={column.key}
                  scope="col"
                  className={column.align === 'end' ? 'end' : undefined}
                  style={{ width: column.width }}
                  aria-sort={order?.key === column.key ? order.direction : 'none'}
                >
                  <button type="button" onClick={() => sortBy(column.key)}>
                    {column.head}
                    {column.unit === undefined ? '' : `\u00a0${column.unit}`}
                    <span className="arrow" aria-hidden="true">
                      {order?.key === column.key ? (order.direction === 'ascending' ? '↑' : '↓') : ''}
                    </span>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody onMouseLeave={() => props.onPoint(null)}>
            {shown.map((row) => (
              <TableRow key={rowKey(row)} row={row} table={props} open={isSelected(row)} />
            ))}
          </tbody>
        </table>
      )}
      <Rest table={props} narrowed={narrowed} />
      {pages > 1 && (
        <nav className="pages" aria-label={t`Pages of ${props.caption}`}>
          <button type="button" disabled={shownPage === 0} onClick={() => setPage(shownPage - 1)}>
            {t('Previous')}
          </button>
          <span aria-live="polite">{tx`${formatFigure(shownPage * PAGE_ROWS + 1, 0)} to ${formatFigure(Math.min(sorted.length, (shownPage + 1) * PAGE_ROWS), 0)} of ${formatFigure(sorted.length, 0)}`}</span>
          <button type="button" disabled={shownPage === pages - 1} onClick={() => setPage(shownPage + 1)}>
            {t('Next')}
          </button>
        </nav>
      )}
    </div>
  );
}

function useIsSelected<Row>({ rowKey, selected, holds }: DataTableProps<Row>): (row: Row) => boolean {
  return useCallback(
    (row: Row) => selected !== null && (rowKey(row) === selected || holds?.(row, selected) === true),
    [rowKey, selected, holds],
  );
}

/** Which rows the reader chose to see. A row that is chosen on the map or the strip is always among them. */
function useNarrowed<Row>(table: DataTableProps<Row>, isSelected: (row: Row) => boolean) {
  const { rows, singles = rows, matter, findBy } = table;
  const [all, setAll] = useState(false);
  const [typed, setTyped] = useState('');
  const worth = useMemo(() => isWorthNarrowing(rows, matter), [rows, matter]);
  const mattering = useMemo(() => {
    if (matter === undefined || !worth) return rows;
    const those = rows.filter((row) => matter.of(row) || isSelected(row));
    return matter.order === undefined ? those : those.toSorted(matter.order);
  }, [rows, matter, worth, isSelected]);
  const shown = useMemo(() => {
    if (findBy !== undefined && typed.trim() !== '') return found(singles, typed, findBy.of);
    return all ? rows : mattering;
  }, [rows, singles, findBy, all, typed, mattering]);
  return { rows: shown, worth, all, setAll, typed, setTyped, mattering: mattering.length };
}
type Narrowed<Row> = ReturnType<typeof useNarrowed<Row>>;

/** By what the reader chooses among the rows of a long table. */
function Narrowing<Row>({ table, narrowed }: { table: DataTableProps<Row>; narrowed: Narrowed<Row> }) {
  const { matter, findBy, rows, singles = rows, caption } = table;
  const { worth, all, setAll, typed, setTyped, mattering } = narrowed;
  if (singles.length <= MANY_ROWS || (!worth && findBy === undefined)) return null;
  return (
    <div className="narrowing">
      {matter !== undefined && worth && (
        <>
          <button type="button" aria-pressed={!all} onClick={() => setAll(false)}>
            {matter.words} {formatFigure(mattering, 0)}
          </button>
          <button
            type="button"
            aria-pressed={all}
            onClick={() => setAll(true)}
          >{tx`All ${formatFigure(rows.length, 0)}`}</button>
        </>
      )}
      {findBy !== undefined && (
        <input
          type="search"
          aria-label={t`Find in ${caption}, by name or ${findBy.unit}`}
          placeholder={t`name or ${findBy.unit}`}
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
        />
      )}
    </div>
  );
}

/** What is left out at first, with a way to it. */
function Rest<Row>({ table, narrowed }: { table: DataTableProps<Row>; narrowed: Narrowed<Row> }) {
  const { worth, all, setAll, typed, mattering } = narrowed;
  if (table.matter === undefined || !worth || all || typed.trim() !== '') return null;
  return (
    <button type="button" className="quiet rest" onClick={() => setAll(true)}>
      {table.matter.rest(formatFigure(table.rows.length - mattering, 0))}
    </button>
  );
}

function TableRow<Row>({ row, table, open }: { row: Row; table: DataTableProps<Row>; open: boolean }) {
  const line = useRef<HTMLTableRowElement>(null);
  const toggle = () => table.onSelect(open ? null : row);
  useEffect(() => {
    if (open) line.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <>
      {/* The whole row takes the mouse as a larger target; the keyboard has the button in its first cell. */}
      <tr
        ref={line}
        className={open ? 'open' : undefined}
        onClick={toggle}
        onMouseEnter={() => table.onPoint(row)}
      >
        {table.columns.map((column, index) =>
          index === 0 ? (
            <th key={column.key} scope="row">
              <button
                type="button"
                className="row-button"
                aria-expanded={open}
                onFocus={() => table.onPoint(row)}
                onClick={(event) => {
                  event.stopPropagation();
                  toggle();
                }}
              >
                {column.cell(row)}
              </button>
            </th>
          ) : (
            <td key={column.key} className={column.align === 'end' ? 'end' : undefined}>
              {column.cell(row)}
            </td>
          ),
        )}
      </tr>
      {open && (
        <tr className="details">
          <td colSpan={table.columns.length}>{table.details(row)}</td>
        </tr>
      )}
    </>
  );
}
