import { parseArgs } from 'node:util';
import type { Outcome } from '../../core/input/problem.ts';
import { refuse, refuseOption } from '../refuse.ts';

/** What the words after extract or trip say. */
export interface KeptWords {
  /** What is to be done; null asks for the help. */
  verb: string | null;
  /** What it is to be done with. */
  rest: readonly string[];
  name: string | null;
  json: boolean;
  /** What only `extract fetch` takes. */
  fetch: FetchWords;
}

export interface FetchWords {
  corridor: string | null;
  overpass: string | null;
  yes: boolean;
}

const OPTIONS = {
  name: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;
const FETCH_OPTIONS = {
  ...OPTIONS,
  corridor: { type: 'string' },
  overpass: { type: 'string' },
  yes: { type: 'boolean' },
} as const;

/** Reads the words after a command's name. */
export function readKeptWords(words: readonly string[], verbs: string): Outcome<KeptWords> {
  const isFetch = words.includes('fetch');
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      strict: true,
      options: isFetch ? FETCH_OPTIONS : (OPTIONS as typeof FETCH_OPTIONS),
    });
    const { name = null, json = false, help = false, corridor = null, overpass = null, yes = false } = values;
    const [verb, ...rest] = positionals;
    const read = { rest, name, json, fetch: { corridor, overpass, yes } };
    if (help) return { ok: true, value: { verb: null, ...read } };
    if (verb === undefined) return refuse(null, 'nothing to do', verbs);
    return { ok: true, value: { verb, ...read } };
  } catch (error) {
    return refuseOption(
      error,
      isFetch ? '--name, --corridor, --overpass, --yes, --json, --help' : '--name, --json, --help',
    );
  }
}

/** The one word that a verb takes; `what` as in "a file". */
export function oneOf({ verb, rest }: KeptWords, what: string): Outcome<string> {
  const [first, second] = rest;
  if (first === undefined) return refuse(verb, `no word after ${verb}`, what);
  if (second !== undefined) return refuse(second, 'a word too many', what);
  return { ok: true, value: first };
}
