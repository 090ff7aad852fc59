import { parseArgs } from 'node:util';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import { refuse, refuseOption } from './refuse.ts';

/** What the commands on a route are told. */
export interface TripArguments {
  route: string;
  supplies: string[];
  rigs: string[];
  trip: string | null;
  part: NonNullable<TripFile['part']> | null;
  json: boolean;
}

const KNOWN = '--supply, --rig, --trip, --part, --json, --help';

/** Reads what stands after a command's name, with at most `mostRigs` rigs; null asks for its help. */
export function readTripArguments(
  command: string,
  args: readonly string[],
  mostRigs: number,
): Outcome<TripArguments | null> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return refuseOption(error, KNOWN);
  }
  const { values, positionals } = parsed;
  if (values.help === true) return { ok: true, value: null };
  const [route, ...more] = positionals;
  if (route === undefined) return refuse('ROUTE.gpx', 'no route', `a GPX file after ${command}`);
  if (more.length > 0) {
    return refuse(more[0]!, 'a second route', 'one, and each extract or rig after an option of its own');
  }
  const { supply, rig, trip, part } = values;
  if (supply === undefined) return refuse('--supply', 'no extract', 'at least one --supply EXTRACT');
  if (rig === undefined) return refuse('--rig', 'no rig', '--rig RIG.yaml');
  for (const [name, given, most] of [
    ['rig', rig, mostRigs],
    ['trip', trip ?? [], 1],
    ['part', part ?? [], 1],
  ] as const) {
    if (given.length > most) {
      return refuse(`--${name}`, `${given.length} of them`, most === 1 ? 'one' : `at most ${most}`);
    }
  }
  const chosen = part?.[0];
  return {
    ok: true,
    value: {
      route,
      supplies: supply,
      rigs: rig,
      trip: trip?.[0] ?? null,
      part: chosen === undefined ? null : /^[1-9]\d*$/.test(chosen) ? Number(chosen) : chosen,
      json: values.json === true,
    },
  };
}

const parse = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
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
