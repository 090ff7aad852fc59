import type { Surface } from '../../contract/surface.ts';
import { CellReader, type FlagWords } from './cells.ts';
import type { FuelColumns } from './columns.ts';
import type { CsvRecord, CsvTable } from './csv.ts';
import { FaultyLog } from './faulty-log.ts';
import { KG_PER_LB, KM_PER, LITRES_PER } from './units.ts';

/** One line of a log of fill-ups, in km, litres and kilograms. */
export interface Fill {
  line: number;
  odometerKm: number;
  /** As the log has it, in its own unit; of the trip meters summed where it has no odometer. */
  odometer: number;
  /** The first with another odometer. */
  changed: boolean;
  /** And the way to it unknown: no one halt with the fill-up before. */
  restart: boolean;
  /** Null where the line does not tell. */
  litres: number | null;
  full: boolean;
  /** A fill-up between the line before and this one was not written down. */
  missed: boolean;
  surface: Surface | null;
  massKg: number | null;
  note: string;
  /** All of the line that tells one fill-up from another. */
  identity: string;
}

const FULL_OR_PART: FlagWords = {
  yes: ['full', 'yes', 'y', 'true', '1', 'x'],
  no: ['part', 'partial', 'no', 'n', 'false', '0'],
};
/** An odometer has seven digits at most, a rig's tanks 5,000 l (contract); ours. */
const MOST_ODOMETER = 9_999_999;
const MOST_TRIP = 9999;
const MOST_VOLUME = 5000;
const CHANGED: FlagWords = {
  yes: ['yes', 'y', 'true', '1', 'x', 'changed', 'new'],
  no: ['no', 'n', 'false', '0'],
};

/**
 * The fill-ups in the order of driving. A log that has the newest first throughout is turned round (`newestFirst`); one
 * whose odometer goes back anywhere else is refused, and so is a line that is there twice. Throws FaultyLog.
 */
export function readFills(table: CsvTable, columns: FuelColumns): { fills: Fill[]; newestFirst: boolean } {
  const cells = new CellReader(table, columns);
  const readings = columns.at.odometer === undefined ? tripReadings : odometerReadings;
  const fills = readings(table.records, cells, columns).map((reading) => fillOf(reading, cells, columns));
  const newestFirst =
    !fills.some(({ changed }) => changed) &&
    (fills[0]?.odometer ?? 0) > (fills.at(-1)?.odometer ?? 0) &&
    fills.every((fill, index) => fill.odometer <= (fills[index - 1] ?? fill).odometer);
  if (newestFirst) fills.reverse();
  else refuseGoingBack(fills, columns);
  refuseTwice(fills);
  return { fills, newestFirst };
}

/** A line with what its instruments say. */
interface Reading extends Pick<Fill, 'odometer' | 'odometerKm' | 'changed' | 'restart'> {
  readonly record: CsvRecord;
}

/**
 * Readings of the odometer. Where it was changed its kilometres go on from those before: by the trip meter, and without
 * one by a way that nobody knows.
 */
function odometerReadings(records: readonly CsvRecord[], cells: CellReader, columns: FuelColumns): Reading[] {
  const range = { least: 0, most: MOST_ODOMETER, unit: columns.distance };
  let aheadKm = 0;
  let beforeKm = 0;
  return records.map((record, index) => {
    const odometer = cells.neededNumber(record, 'odometer', range);
    const ownKm = odometer * KM_PER[columns.distance];
    const changed = index > 0 && cells.flag(record, 'changed', CHANGED) === true;
    const tripKm = changed ? tripKmOf(record, cells, columns) : null;
    if (changed) aheadKm = beforeKm + (tripKm ?? 0) - ownKm;
    beforeKm = ownKm + aheadKm;
    return { record, odometer, odometerKm: beforeKm, changed, restart: changed && tripKm === null };
  });
}

/** In place of an odometer: ways since the fill-up before, summed. The lines have to be in the order of driving. */
function tripReadings(records: readonly CsvRecord[], cells: CellReader, columns: FuelColumns): Reading[] {
  let km = 0;
  return records.map((record, index) => {
    const trip =
      index === 0 ? 0 : cells.neededNumber(record, 'trip', { least: 0, most: MOST_TRIP, unit: columns.trip });
    km += trip * KM_PER[columns.trip];
    return { record, odometer: km, odometerKm: km, changed: false, restart: false };
  });
}

function tripKmOf(record: CsvRecord, cells: CellReader, columns: FuelColumns): number | null {
  const trip = cells.number(record, 'trip', { least: 0, most: MOST_TRIP, unit: columns.trip });
  return trip === null ? null : trip * KM_PER[columns.trip];
}

function fillOf(
  { record, odometer, odometerKm, changed, restart }: Reading,
  cells: CellReader,
  columns: FuelColumns,
): Fill {
  const volume = cells.number(record, 'volume', { above: 0, most: MOST_VOLUME, unit: columns.volume });
  const full = cells.flag(record, 'full', FULL_OR_PART);
  if (full === null) {
    throw new FaultyLog({ place: cells.place(record, 'full'), fault: 'full-missing', facts: FULL_OR_PART });
  }
  const mass = cells.number(record, 'mass', { least: 100, most: 140_000, unit: columns.mass });
  return {
    line: record.line,
    odometer,
    odometerKm,
    changed,
    restart,
    litres: volume === null ? null : volume * LITRES_PER[columns.volume],
    full,
    missed: restart || (cells.flag(record, 'missed', FULL_OR_PART) ?? false),
    surface: cells.surface(record),
    massKg: mass === null ? null : columns.mass === 'lb' ? mass * KG_PER_LB : mass,
    note: cells.text(record, 'note'),
    identity: JSON.stringify([odometer, volume, full, cells.text(record, 'date')]),
  };
}

function refuseGoingBack(fills: readonly Fill[], columns: FuelColumns): void {
  for (const [index, { line, odometer, changed }] of fills.entries()) {
    const before = fills[index - 1];
    if (before === undefined || odometer >= before.odometer || changed) continue;
    throw new FaultyLog({
      place: { line, column: columns.at.odometer?.title ?? '' },
      fault: 'odometer-falls',
      facts: { odometer, line, before: before.odometer, beforeLine: before.line },
    });
  }
}

function refuseTwice(fills: readonly Fill[]): void {
  const lineOf = new Map<string, number>();
  for (const { identity, line } of fills) {
    const other = lineOf.get(identity);
    if (other !== undefined) {
      const place = { line: Math.max(other, line) };
      throw new FaultyLog({ place, fault: 'fill-twice', facts: { line: Math.min(other, line) } });
    }
    lineOf.set(identity, line);
  }
}
