import { parseArgs } from 'node:util';
import { readLearnOptions } from '../app/input/learn-options.ts';
import { learnLog } from '../app/learn-log.ts';
import { learnText } from '../app/text/learn-text.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { LearnOptions } from '../core/log/learn.ts';
import { readLogFile } from '../io/log-file.ts';
import type { Command } from './command.ts';
import { jsonLine } from './json-line.ts';
import { refuse, refuseOption } from './refuse.ts';

const LEARN_USAGE = 'npm run -s drystage -- learn LOG.csv [--surface SURFACE] [--people NUMBER] [--json]';

const HELP = `${LEARN_USAGE}

Learns from a log what the vehicle uses of fuel, or a crew of water: low, typical and high, with the lines for the rig.

  LOG.csv            CSV (comma, semicolon or tab) whose header names columns and units. Fill-ups, in the order of
                     driving: odometer_km or odometer_mi; litres, gal_us or gal_imp; full (full or part); and if you
                     like missed (yes: a fill-up before this line was not written down), surface, mass_kg, note, date.
                     Water: date (the first day), litres, people, days, note.
  --surface SURFACE  of a log of fill-ups, only what was driven on this surface throughout
  --people NUMBER    of a water log, the crew to plan for; default: the most that the log has
  --json             the whole result as JSON
  --help             this text

Five intervals from full tank to full tank are needed, or five lines of water. Exit status as of gaps.
`;

/** What a log teaches. */
export const learn: Command = async (words) => {
  let options: LearnWords;
  try {
    options = parse(words);
  } catch (error) {
    return refuseOption(error, '--surface, --people, --json, --help');
  }
  const { values, positionals } = options;
  if (values.help === true) return { ok: true, value: HELP };
  const [path, second] = positionals;
  if (path === undefined) return refuse('LOG.csv', 'no log', 'a CSV file after learn');
  if (second !== undefined) return refuse(second, 'a second log', 'one');
  const { surface = [], people = [], json = false } = values;
  if (surface.length > 1) return refuse('--surface', `${surface.length} of them`, 'one');
  if (people.length > 1) return refuse('--people', `${people.length} of them`, 'one');
  const ask = readLearnOptions({ surface: surface[0], people: people[0] }, 'command-invalid', '--');
  return ask.ok ? learnFromFile(path, ask.value, json) : ask;
};

async function learnFromFile(path: string, options: LearnOptions, json: boolean): Promise<Outcome<string>> {
  const text = await readLogFile(path);
  if (!text.ok) return text;
  const outcome = learnLog(text.value, path, options);
  if (!outcome.ok) return outcome;
  return { ok: true, value: json ? jsonLine(outcome.value) : learnText(outcome.value) };
}

type LearnWords = ReturnType<typeof parse>;

const parse = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    strict: true,
    options: {
      surface: { type: 'string', multiple: true },
      people: { type: 'string', multiple: true },
      json: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });
