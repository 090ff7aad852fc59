import type { CsvRecord } from './csv.ts';
import { logFault, quoted } from './log-fault.ts';

/** What a column of a log holds. */
export type ColumnName =
  | 'odometer'
  | 'volume'
  | 'full'
  | 'missed'
  | 'surface'
  | 'mass'
  | 'note'
  | 'date'
  | 'people'
  | 'days';
export type DistanceUnit = 'km' | 'mi';
export type VolumeUnit = 'l' | 'gal (US)' | 'gal (imp)';
export type MassUnit = 'kg' | 'lb';

/** Where each column stands and as the header writes it, the units, and the columns that no one looks at. */
export interface LogColumns {
  kind: 'fuel' | 'water';
  at: Partial<Record<ColumnName, { index: number; title: string }>>;
  distance: DistanceUnit;
  volume: VolumeUnit;
  mass: MassUnit;
  unread: string[];
}

const PLAIN: Record<string, ColumnName> = {
  full: 'full',
  'full tank': 'full',
  'full or part': 'full',
  filled: 'full',
  missed: 'missed',
  'missed fill': 'missed',
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

interface Found {
  name: ColumnName;
  unit: string | null;
}

/** Reads the header: which column holds what, and in which unit. Throws InputProblem. */
export function readColumns(header: CsvRecord): LogColumns {
  const at: LogColumns['at'] = {};
  const units: Partial<Record<ColumnName, string>> = {};
  const unread: string[] = [];
  for (const [index, title] of header.cells.entries()) {
    const found = columnOf(title, header.line);
    if (found === null) {
      if (title !== '') unread.push(title);
      continue;
    }
    if (at[found.name] !== undefined) {
      throw logFault(
        `line ${header.line}`,
        `${quoted(title)} beside ${quoted(at[found.name]!.title)}`,
        'one column of each kind',
        'Take one of the two out',
      );
    }
    at[found.name] = { index, title };
    if (found.unit !== null) units[found.name] = found.unit;
  }
  const kind = kindOf(at, header);
  const needed: ColumnName[] =
    kind === 'fuel' ? ['odometer', 'volume', 'full'] : ['date', 'volume', 'people', 'days'];
  const missing = needed.filter((name) => at[name] === undefined);
  if (missing.length > 0) {
    throw logFault(
      `line ${header.line}`,
      `a ${kind} log without ${missing.map((name) => EXAMPLE[name]).join(', ')}`,
      needed.map((name) => EXAMPLE[name]).join(', '),
      'Add the column and its heading',
    );
  }
  return {
    kind,
    at,
    distance: (units.odometer ?? 'km') as DistanceUnit,
    volume: units.volume as VolumeUnit,
    mass: (units.mass ?? 'kg') as MassUnit,
    unread,
  };
}

const EXAMPLE: Partial<Record<ColumnName, string>> = {
  odometer: 'odometer_km (or odometer_mi)',
  volume: 'litres (or gal_us, gal_imp)',
  full: 'full',
  date: 'date',
  people: 'people',
  days: 'days',
};

function kindOf(at: LogColumns['at'], header: CsvRecord): 'fuel' | 'water' {
  if (at.odometer !== undefined) return 'fuel';
  if (at.people !== undefined) return 'water';
  throw logFault(
    `line ${header.line}`,
    `the columns ${header.cells.map(quoted).slice(0, 12).join(', ')}`,
    'odometer_km,litres,full for fuel, or date,litres,people,days for water',
    'Give a header line that names the columns and their units',
  );
}

/** What a heading means; null for one that is not known. */
function columnOf(title: string, line: number): Found | null {
  const words = title
    .normalize('NFKC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
  const text = words.join(' ');
  const plain = Object.hasOwn(PLAIN, text) ? PLAIN[text] : undefined;
  if (plain !== undefined) return { name: plain, unit: null };
  const [first = '', ...rest] = words;
  if (first === 'odometer' || first === 'odo') {
    const unit = rest.length === 1 && Object.hasOwn(DISTANCE, rest[0]!) ? DISTANCE[rest[0]!] : undefined;
    if (unit !== undefined) return { name: 'odometer', unit };
    throw unitFault(title, line, 'odometer_km or odometer_mi');
  }
  if (first === 'mass') {
    const unit = rest.length === 1 && Object.hasOwn(MASS, rest[0]!) ? MASS[rest[0]!] : undefined;
    if (unit !== undefined) return { name: 'mass', unit };
    throw unitFault(title, line, 'mass_kg or mass_lb');
  }
  return volumeOf(title, words, line);
}

function volumeOf(title: string, words: readonly string[], line: number): Found | null {
  const telling = words.filter((word) => !OF_VOLUME.has(word));
  const isGallons = telling.some((word) => GALLONS.has(word));
  if (!isGallons) {
    return telling.length === 1 && LITRES.has(telling[0]!) ? { name: 'volume', unit: 'l' } : null;
  }
  const which = telling.filter((word) => !GALLONS.has(word)).join(' ');
  if (which === 'us') return { name: 'volume', unit: 'gal (US)' };
  if (which === 'imp' || which === 'imperial' || which === 'uk') return { name: 'volume', unit: 'gal (imp)' };
  if (which === '') throw unitFault(title, line, 'gal_us (3.785 l) or gal_imp (4.546 l)');
  return null;
}

const unitFault = (title: string, line: number, expected: string) =>
  logFault(
    `line ${line}`,
    `the heading ${quoted(title)}, which does not tell its unit`,
    expected,
    'Name the unit in the heading',
  );
