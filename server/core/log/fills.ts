import type { Surface } from '../../contract/surface.ts';
import { CellReader } from './cells.ts';
import type { LogColumns } from './columns.ts';
import type { CsvRecord, CsvTable } from './csv.ts';
import { logFault, placeOf } from './log-fault.ts';
import { KG_PER_LB, KM_PER, LITRES_PER } from './units.ts';

/** One line of a log of fill-ups, in km, litres and kilograms. */
export interface Fill {
  line: number;
  odometerKm: number;
  /** As the log has it, in its own unit. */
  odometer: number;
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

const FULL = new Set(['full', 'yes', 'y', 'true', '1', 'x']);
const PART = new Set(['part', 'partial', 'no', 'n', 'false', '0']);
/** An odometer has seven digits at most, a rig's tanks 5,000 l (contract); ours. */
const MOST_ODOMETER = 9_999_999;
const MOST_VOLUME = 5000;

/**
 * The fill-ups in the order of driving. A log that has the newest first throughout is turned round (`turned`); one
 * whose odometer goes back anywhere else is refused, and so is a line that is there twice. Throws InputProblem.
 */
export function readFills(table: CsvTable, columns: LogColumns): { fills: Fill[]; turned: boolean } {
  const cells = new CellReader(table, columns);
  const fills = table.records.map((record) => fillOf(record, cells, columns));
  const turned =
    (fills[0]?.odometer ?? 0) > (fills.at(-1)?.odometer ?? 0) &&
    fills.every((fill, index) => fill.odometer <= (fills[index - 1] ?? fill).odometer);
  if (turned) fills.reverse();
  else refuseGoingBack(fills, columns);
  refuseTwice(fills);
  return { fills, turned };
}

function fillOf(record: CsvRecord, cells: CellReader, columns: LogColumns): Fill {
  const odometer = cells.neededNumber(record, 'odometer', {
    least: 0,
    most: MOST_ODOMETER,
    unit: columns.distance,
  });
  const volume = cells.number(record, 'volume', { above: 0, most: MOST_VOLUME, unit: columns.volume });
  const full = cells.flag(record, 'full', FULL, PART);
  if (full === null) {
    throw logFault(
      placeOf(record.line, columns.at.full!.title),
      'nothing',
      `${[...FULL].join(', ')}; or ${[...PART].join(', ')}`,
      'Say whether the tank was filled up; where nobody knows, write part',
    );
  }
  const mass = cells.number(record, 'mass', { least: 100, most: 140_000, unit: columns.mass });
  return {
    line: record.line,
    odometer,
    odometerKm: odometer * KM_PER[columns.distance],
    litres: volume === null ? null : volume * LITRES_PER[columns.volume],
    full,
    missed: cells.flag(record, 'missed', FULL, PART) ?? false,
    surface: cells.surface(record),
    massKg: mass === null ? null : columns.mass === 'lb' ? mass * KG_PER_LB : mass,
    note: cells.text(record, 'note'),
    identity: JSON.stringify([odometer, volume, full, cells.text(record, 'date')]),
  };
}

function refuseGoingBack(fills: readonly Fill[], columns: LogColumns): void {
  for (const [index, fill] of fills.entries()) {
    const before = fills[index - 1];
    if (before === undefined || fill.odometer >= before.odometer) continue;
    throw logFault(
      placeOf(fill.line, columns.at.odometer!.title),
      `${fill.odometer} after ${before.odometer} in line ${before.line}`,
      'an odometer that does not go back',
      `Correct line ${before.line} or line ${fill.line}, or put the lines in the order of driving; after a change of odometer begin a new log`,
    );
  }
}

function refuseTwice(fills: readonly Fill[]): void {
  const seen = new Map<string, number>();
  for (const { identity, line } of fills) {
    const before = seen.get(identity);
    if (before !== undefined) {
      const [first, second] = before < line ? [before, line] : [line, before];
      throw logFault(
        `line ${second}`,
        `the same fill-up as in line ${first}`,
        'each fill-up once',
        `Take one of the two out; if you did fill so twice there, add the two up in one line`,
      );
    }
    seen.set(identity, line);
  }
}
