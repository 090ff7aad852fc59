import type { Bbox } from '../../../../contract/common.ts';
import { BrokenBlock, pbfProblem } from './broken.ts';
import { Cursor } from './cursor.ts';
import type { Frame } from './framing.ts';
import { isoTime } from './iso-time.ts';

/** Says that ways hold the positions of their nodes; required or optional, as the writer likes. */
const LOCATED = 'LocationsOnWays';

/** Required features that this reader understands. */
const UNDERSTOOD = new Set(['OsmSchema-V0.6', 'DenseNodes', LOCATED]);

const REMEDIES = new Map([
  [
    'HistoricalInformation',
    'Make an extract of one moment of it, for example: osmium time-filter IN.osh.pbf -o OUT.osm.pbf',
  ],
]);

/** Nanodegrees in a degree: the unit of the header's box. */
const NANO = 1e9;

export interface HeaderBlock {
  /** Null when none, or none that can be a box on the Earth, is declared. */
  bounds: Bbox | null;
  boundsRefused: boolean;
  /** Ways hold the positions of their nodes. */
  isLocated: boolean;
  /** ISO time of the last edit that the whole file takes in (osmosis_replication_timestamp); null when it does not tell. */
  asOf: string | null;
  /** Where it says that its data come from; null when it does not tell. */
  origin: string | null;
}

/**
 * Reads the file's header.
 *
 * @throws InputProblem pbf-feature when the file requires what this reader does not know; pbf-broken.
 */
export function readHeaderBlock(bytes: Uint8Array, frame: Frame, source: string): HeaderBlock {
  try {
    return readFields(new Cursor(bytes), frame, source);
  } catch (error) {
    if (error instanceof BrokenBlock)
      throw pbfProblem({
        code: 'pbf-broken',
        source,
        byte: frame.frameStart,
        came: `a file header with ${error.message}`,
      });
    throw error;
  }
}

function readFields(cursor: Cursor, frame: Frame, source: string): HeaderBlock {
  let box: Bbox | null = null;
  let asOf: string | null = null;
  let origin: string | null = null;
  let isLocated = false;
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 10) box = readBox(cursor);
    else if (tag === 34 || tag === 42) {
      const feature = cursor.text();
      if (tag === 34) holdUnderstood(feature, frame, source);
      isLocated ||= feature === LOCATED;
    } else if (tag === 138) origin = cursor.text();
    else if (tag === 256) asOf = isoTime(cursor.integer() * 1000) ?? null;
    else cursor.skip(tag);
  }
  return { ...judgedBox(box), isLocated, asOf, origin };
}

function judgedBox(box: Bbox | null): Pick<HeaderBlock, 'bounds' | 'boundsRefused'> {
  const usable = box !== null && isBox(box);
  return { bounds: usable ? box : null, boundsRefused: box !== null && !usable };
}

function holdUnderstood(feature: string, frame: Frame, source: string): void {
  if (!UNDERSTOOD.has(feature)) throw unknownFeature(feature, frame, source);
}

function unknownFeature(feature: string, frame: Frame, source: string) {
  return pbfProblem({
    code: 'pbf-feature',
    source,
    byte: frame.frameStart,
    came: `a file that requires "${feature}"`,
    expected: `nothing beyond ${[...UNDERSTOOD].join(', ')}`,
    remedy:
      REMEDIES.get(feature) ??
      'Write the file anew without it, for example with: osmium cat IN.osm.pbf -o OUT.osm.pbf',
  });
}

function readBox(outer: Cursor): Bbox {
  const { start, end } = outer.range();
  const cursor = new Cursor(outer.bytes, start, end);
  const box: Bbox = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 8) box[0] = cursor.signed() / NANO;
    else if (tag === 16) box[2] = cursor.signed() / NANO;
    else if (tag === 24) box[3] = cursor.signed() / NANO;
    else if (tag === 32) box[1] = cursor.signed() / NANO;
    else cursor.skip(tag);
  }
  return box;
}

function isBox([west, south, east, north]: Bbox): boolean {
  const inRange = (value: number, most: number) => Math.abs(value) <= most;
  return (
    inRange(west, 180) && inRange(east, 180) && inRange(south, 90) && inRange(north, 90) && south <= north
  );
}
