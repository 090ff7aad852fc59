import { plain } from './app/text/lines/plain.ts';
import type { Command } from './commands/command.ts';
import type { CommandIo } from './commands/command-io.ts';
import { compare } from './commands/compare.ts';
import { exportTrip } from './commands/export.ts';
import { GAPS_HELP, gaps } from './commands/gaps.ts';
import { backup, restore } from './commands/kept/backup.ts';
import { extract } from './commands/kept/extract.ts';
import { notes } from './commands/kept/notes.ts';
import { trip } from './commands/kept/trip.ts';
import { learn } from './commands/learn.ts';
import { plan } from './commands/plan.ts';
import { refuse } from './commands/refuse.ts';
import { InputProblem, type Outcome, problemLine } from './core/input/problem.ts';
import { VERSION } from './io/program.ts';
import { asDiskProblem } from './store/extracts/disk-problem.ts';

const COMMANDS: Readonly<Record<string, Command>> = {
  gaps,
  learn,
  compare,
  plan,
  export: exportTrip,
  extract,
  trip,
  notes,
  backup,
  restore,
};
const EXPECTED =
  'gaps, learn, compare, plan, export, extract, trip, notes, backup or restore as the first word';

/** Runs the command and gives its exit status; an unusable input is one line on `err`. */
export async function runCommand(words: readonly string[], io: CommandIo): Promise<number> {
  const outcome = await answerTo(words, io);
  if (outcome.ok) {
    io.out(outcome.value);
    return 0;
  }
  io.err(`${plain(problemLine(outcome.problem))}\n`);
  return 2;
}

/** The text of the command that the first word names; an input that its readers refuse comes out as its problem. */
async function answerTo([name, ...rest]: readonly string[], io: CommandIo): Promise<Outcome<string>> {
  if (name === '--help' || name === '-h') return { ok: true, value: GAPS_HELP };
  if (name === '--version' || name === '-v') return { ok: true, value: `${VERSION}\n` };
  if (name === undefined) return refuse(null, 'no command', EXPECTED);
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined) return refuse(null, `the command "${name}"`, EXPECTED);
  try {
    return await command(rest, io);
  } catch (error) {
    const known = asDiskProblem(error);
    if (known instanceof InputProblem) return { ok: false, problem: known.problem };
    throw known;
  }
}
