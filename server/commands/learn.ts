import { parseArgs } from 'node:util';
import { readLearnOptions } from '../app/input/learn-options.ts';
import { learnLog } from '../app/learn-log.ts';
import { learnText } from '../app/text/learn-text.ts';
import type { Outcome } from '../core/input/problem.ts';
import { readLogFile } from '../io/log-file.ts';
import type { CommandIo } from './command-io.ts';
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

/** Runs `learn` with what stands after it on the command line. */
export async function learn(args: readonly string[], io: CommandIo): Promise<Outcome<null>> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return refuseOption(error, '--surface, --people, --json, --help');
  }
  const { values, positionals } = parsed;
  if (values.help === true) {
    io.out(HELP);
    return { ok: true, value: null };
  }
  const [path, ...more] = positionals;
  if (path === undefined) return refuse('LOG.csv', 'no log', 'a CSV file after learn');
  if (more.length > 0) return refuse(more[0]!, 'a second log', 'one');
  for (const [name, given] of Object.entries({ surface: values.surface, people: values.people })) {
    if (given !== undefined && given.length > 1) return refuse(`--${name}`, `${given.length} of them`, 'one');
  }
  const given = { surface: values.surface?.[0], people: values.people?.[0] };
  const options = readLearnOptions(given, 'command-invalid', '--');
  if (!options.ok) return options;
  const text = await readLogFile(path);
  if (!text.ok) return text;
  const learned = learnLog(text.value, path, options.value);
  if (!learned.ok) return learned;
  io.out(values.json === true ? `${JSON.stringify(learned.value)}\n` : learnText(learned.value));
  return { ok: true, value: null };
}

const parse = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    strict: true,
    options: {
      surface: { type: 'string', multiple: true },
      people: { type: 'string', multiple: true },
      json: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });
