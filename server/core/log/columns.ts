import type { NeededColumn } from '../phrases/log-faults.ts';
import type { CsvRecord } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';

/** What a column of a log holds. */
export type ColumnName = NeededColumn | 'trip' | 'changed' | 'missed' | 'surface' | 'mass' | 'note';
export type DistanceUnit = 'km' | 'mi';
export type VolumeUnit = 'l' | 'gal (US)' | 'gal (imp)';
export type MassUnit = 'kg' | 'lb';

/** Where a column stands, and its heading as the header writes it. */
export interface Column {
  index: number;
  title: string;
}
type ColumnsAt = Partial<Record<ColumnName, Column>>;

/** Where each column stands, the units, and the columns that no one looks at. */
export interface LogColumns {
  at: ColumnsAt;
  distance: DistanceUnit;
  /** Of the trip meter. */
  trip: DistanceUnit;
  volume: VolumeUnit;
  mass: MassUnit;
  unread: string[];
}
export interface FuelColumns extends LogColumns {
  kind: 'fuel';
  at: ColumnsAt & Record<(typeof FUEL_NEEDS)[number], Column>;
}
export interface WaterColumns extends LogColumns {
  kind: 'water';
  at: ColumnsAt & Record<(typeof WATER_NEEDS)[number], Column>;
}

/** And an odometer, or a trip meter in its place. */
const FUEL_NEEDS = ['volume', 'full'] as const;
const WATER_NEEDS = ['date', 'volume', 'people', 'days'] as const;

const PLAIN: Record<string, Exclude<ColumnName, 'odometer' | 'trip' | 'volume' | 'mass'>> = {
  full: 'full',
  'full tank': 'full',
  'full or part': 'full',
  filled: 'full',
  missed: 'missed',
  'missed fill': 'missed',
  'odometer changed': 'changed',
  'odometer change': 'changed',
  'new odometer': 'changed',
  surface: 'surface',
  note: 'note',
  notes: 'note',
  remark: 'note',
  remarks: 'note',
  comment: 'note',
  date: 'date',
  people: 'people',
  persons: 'people',
  days: 'days',
};
const DISTANCE: Record<string, DistanceUnit> = {
  km: 'km',
  kilometres: 'km',
  kilometers: 'km',
  mi: 'mi',
  mile: 'mi',
  miles: 'mi',
};
const LITRES = new Set(['l', 'litre', 'litres', 'liter', 'liters']);
const GALLONS = new Set(['gal', 'gals', 'gallon', 'gallons']);
const MASS: Record<string, MassUnit> = { kg: 'kg', lb: 'lb', lbs: 'lb' };
/** Words that may stand beside the unit of a volume. */
const OF_VOLUME = new Set(['fuel', 'water', 'volume', 'amount', 'quantity', 'used']);

/** What a heading means: the column, and the unit of one that has a unit. */
type Meaning =
  | { name: 'odometer'; distance: DistanceUnit }
  | { name: 'trip'; trip: DistanceUnit }
  | { name: 'volume'; volume: VolumeUnit }
  | { name: 'mass'; mass: MassUnit }
  | { name: Exclude<ColumnName, 'odometer' | 'trip' | 'volume' | 'mass'> };

/** Reads the header: which column holds what, and in which unit. Throws FaultyLog. */
export function readColumns(header: CsvRecord): FuelColumns | WaterColumns {
  const { line } = header;
  const columns: LogColumns = { at: {}, distance: 'km', trip: 'km', volume: 'l', mass: 'kg', unread: [] };
  for (const [index, title] of header.cells.entries()) {
    const meaning = meaningOf(title, line);
    if (meaning === null) {
      if (title !== '') columns.unread.push(title);
      continue;
    }
    const { name, ...unit } = meaning;
    const first = columns.at[name]?.title;
    if (first !== undefined) {
      throw new FaultyLog({ place: { line }, fault: 'column-twice', facts: { title, first } });
    }
    columns.at[name] = { index, title };
    Object.assign(columns, unit);
  }
  return kindOf(columns, header) === 'fuel' ? fuelColumns(columns, line) : waterColumns(columns, line);
}

function kindOf({ at }: LogColumns, { line, cells }: CsvRecord): 'fuel' | 'water' {
  if (at.odometer !== undefined || at.trip !== undefined) return 'fuel';
  if (at.people !== undefined) return 'water';
  throw new FaultyLog({ place: { line }, fault: 'kind-unclear', facts: { titles: cells } });
}

function fuelColumns(columns: LogColumns, line: number): FuelColumns {
  const { at } = columns;
  if (hasAll(at, FUEL_NEEDS)) return { ...columns, kind: 'fuel', at };
  throw missingColumn('fuel', at, ['odometer', ...FUEL_NEEDS], line);
}

function waterColumns(columns: LogColumns, line: number): WaterColumns {
  const { at } = columns;
  if (hasAll(at, WATER_NEEDS)) return { ...columns, kind: 'water', at };
  throw missingColumn('water', at, WATER_NEEDS, line);
}

const hasAll = <Name extends ColumnName>(
  at: ColumnsAt,
  names: readonly Name[],
): at is ColumnsAt & Record<Name, Column> => names.every((name) => at[name] !== undefined);

function missingColumn(
  kind: 'fuel' | 'water',
  at: ColumnsAt,
  needed: readonly NeededColumn[],
  line: number,
): FaultyLog {
  const missing = needed.filter(
    (name) => at[name] === undefined && !(name === 'odometer' && at.trip !== undefined),
  );
  return new FaultyLog({ place: { line }, fault: 'column-missing', facts: { kind, missing, needed } });
}

/** What a heading means; null for one that is not known. */
function meaningOf(title: string, line: number): Meaning | null {
  const words = title
    .normalize('NFKC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
  const name = entryOf(PLAIN, words.join(' '));
  if (name !== undefined) return { name };
  const [first = '', ...rest] = words;
  const unit = rest.length === 1 ? rest[0] : undefined;
  if (first === 'odometer' || first === 'odo') {
    const distance = entryOf(DISTANCE, unit);
    if (distance !== undefined) return { name: 'odometer', distance };
    throw missingUnit(title, line, 'odometer');
  }
  if (first === 'trip') {
    const trip = entryOf(DISTANCE, rest[0] === 'meter' ? rest[1] : unit);
    if (trip !== undefined) return { name: 'trip', trip };
    throw missingUnit(title, line, 'trip');
  }
  if (first === 'mass') {
    const mass = entryOf(MASS, unit);
    if (mass !== undefined) return { name: 'mass', mass };
    throw missingUnit(title, line, 'mass');
  }
  return volumeOf(title, words, line);
}

const entryOf = <Value>(table: Readonly<Record<string, Value>>, word: string | undefined) =>
  word !== undefined && Object.hasOwn(table, word) ? table[word] : undefined;

function volumeOf(title: string, words: readonly string[], line: number): Meaning | null {
  const unitWords = words.filter((word) => !OF_VOLUME.has(word));
  const which = unitWords.filter((word) => !GALLONS.has(word)).join(' ');
  const isGallons = unitWords.some((word) => GALLONS.has(word));
  if (!isGallons) {
    return unitWords.length === 1 && LITRES.has(which) ? { name: 'volume', volume: 'l' } : null;
  }
  if (which === 'us') return { name: 'volume', volume: 'gal (US)' };
  if (which === 'imp' || which === 'imperial' || which === 'uk')
    return { name: 'volume', volume: 'gal (imp)' };
  if (which === '') throw missingUnit(title, line, 'gallons');
  return null;
}

const missingUnit = (title: string, line: number, of: 'odometer' | 'trip' | 'mass' | 'gallons') =>
  new FaultyLog({ place: { line }, fault: 'unit-missing', facts: { title, of } });
