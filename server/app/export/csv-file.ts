import { type CsvCell, csvText } from '../../words/parts/csv-text.ts';
import { PRINTED } from '../../words/printed.ts';
import { type Mark, marksOf } from './marks.ts';
import type { ExportPack } from './pack.ts';

const { columns } = PRINTED.export;

/** Every place to know as CSV (RFC 4180): a line each, units in the heads, litres to a tenth, places to 10 m. */
export const csvFile = (pack: ExportPack): string =>
  csvText(
    [
      columns.kind,
      columns.commodity,
      columns.name,
      columns.at,
      columns.lon,
      columns.lat,
      columns.arrive,
      columns.fill,
      columns.leave,
      columns.words,
    ],
    marksOf(pack).map(cellsOf),
  );

const cellsOf = ({ kind, commodities, name, atKm, lon, lat, supply, words }: Mark): CsvCell[] => [
  kind,
  commodities.join(' '),
  name,
  rounded(atKm, 2),
  rounded(lon, 6),
  rounded(lat, 6),
  rounded(supply?.arriveL, 1),
  rounded(supply?.fillL, 1),
  rounded(supply?.leaveL, 1),
  words,
];

const rounded = (value: number | null | undefined, decimals: number): number | null =>
  value === null || value === undefined ? null : Number(value.toFixed(decimals));
