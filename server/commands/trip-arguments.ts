import { parseArgs } from 'node:util';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import { refuse, refuseOption } from './refuse.ts';

/** What the commands on a route are told. */
export interface TripArguments {
  /** A file, or the name of a kept trip where `isKept`. */
  route: string;
  isKept: boolean;
  supplies: readonly string[];
  /** Of a kept trip there may be none: it has its own. */
  rigs: readonly string[];
  trip: string | null;
  part: NonNullable<TripFile['part']> | null;
  json: boolean;
}

const KNOWN = '--supply, --rig, --trip, --part, --json, --help';

interface TripWords {
  command: string;
  words: readonly string[];
  mostRigs: number;
  /** Whether a route is no file and the name of a kept trip. */
  isKept: (route: string) => boolean;
}

/** Reads the words after a command's name, with at most `mostRigs` rigs; null asks for its help. */
export function readTripArguments({
  command,
  words,
  mostRigs,
  isKept,
}: TripWords): Outcome<TripArguments | null> {
  let options: TripOptions;
  try {
    options = parse(words);
  } catch (error) {
    return refuseOption(error, KNOWN);
  }
  if (options.values.help === true) return { ok: true, value: null };
  const [route, second] = options.positionals;
  if (route === undefined) return refuse('ROUTE.gpx', 'no route', `a GPX file after ${command}`);
  if (second !== undefined) {
    return refuse(second, 'a second route', 'one, and each extract or rig after an option of its own');
  }
  return argumentsOf({ route, isKept: isKept(route) }, options.values, mostRigs);
}

function argumentsOf(
  { route, isKept }: Pick<TripArguments, 'route' | 'isKept'>,
  { supply, rig, trip = [], part = [], json = false }: TripOptions['values'],
  mostRigs: number,
): Outcome<TripArguments> {
  if (isKept && supply !== undefined) {
    return refuse('--supply', 'an extract for a kept trip', 'none: it has what it was read with');
  }
  const { supplies = [], rigs = [] } = { supplies: supply, rigs: rig };
  if (!isKept && supplies.length === 0) {
    return refuse('--supply', 'no extract', 'at least one --supply EXTRACT');
  }
  if (!isKept && rigs.length === 0) return refuse('--rig', 'no rig', '--rig RIG.yaml');
  const tooMany =
    refuseMany('rig', rigs, mostRigs) ?? refuseMany('trip', trip, 1) ?? refuseMany('part', part, 1);
  if (tooMany !== null) return tooMany;
  const [tripPath = null] = trip;
  return { ok: true, value: { route, isKept, supplies, rigs, trip: tripPath, part: partOf(part), json } };
}

function refuseMany(name: string, values: readonly string[], most: number): Outcome<never> | null {
  if (values.length <= most) return null;
  return refuse(`--${name}`, `${values.length} of them`, most === 1 ? 'one' : `at most ${most}`);
}

/** A part is a number from 1, else a name. */
function partOf([part]: readonly string[]): TripArguments['part'] {
  if (part === undefined) return null;
  return /^[1-9]\d*$/.test(part) ? Number(part) : part;
}

type TripOptions = ReturnType<typeof parse>;

const parse = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    strict: true,
    options: {
      supply: { type: 'string', multiple: true },
      rig: { type: 'string', multiple: true },
      trip: { type: 'string', multiple: true },
      part: { type: 'string', multiple: true },
      json: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });
