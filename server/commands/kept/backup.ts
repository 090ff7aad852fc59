import { parseArgs } from 'node:util';
import { plain } from '../../app/text/lines/plain.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import { type BackupFacts, backUp, restoreBackup } from '../../store/backup/backup.ts';
import { databaseUrl, dataFolder } from '../../store/data-folder.ts';
import type { Command } from '../command.ts';
import { refuse, refuseOption } from '../refuse.ts';

const BACKUP_HELP = () => `npm run -s drystage -- backup FILE

Writes all kept trips (with routes, maps near them, notes, changes; deleted ones that can still be restored) and rigs
into one new file, as they are at one moment; a server may run and save meanwhile. FILE is there when it is whole and
has passed its check, not before.

Kept extracts are not in it: trips hold what they need of them. To have them again, add their files again.

  --help        this text

They are kept in ${dataFolder()} (DRYSTAGE_DATA chooses another folder).
Exit status as of gaps.
`;

const RESTORE_HELP = () => `npm run -s drystage -- restore FILE

Puts what a backup holds into the data folder, which must have no store yet: nothing is overwritten.

  --help        this text

The data folder is ${dataFolder()} (DRYSTAGE_DATA chooses another one).
Exit status as of gaps.
`;

/** All that is kept but extracts as one file. */
export const backup: Command = async (words) => {
  const read = fileOf(words, 'the path of the file to write');
  if (!read.ok) return read;
  if (read.value === null) return { ok: true, value: BACKUP_HELP() };
  requireFolder('pg_dump');
  const facts = await backUp(dataFolder(), read.value);
  const { extractsLeftOut: out } = facts;
  const rest = out === 0 ? '' : `Not in it: ${out} kept ${out === 1 ? 'extract' : 'extracts'}.\n`;
  return { ok: true, value: `${plain(read.value)}: ${told(facts)}.\n${rest}` };
};

/** What a backup holds, into a data folder without a store. */
export const restore: Command = async (words) => {
  const read = fileOf(words, 'the path of a backup');
  if (!read.ok) return read;
  if (read.value === null) return { ok: true, value: RESTORE_HELP() };
  requireFolder('pg_restore');
  const folder = dataFolder();
  const facts = await restoreBackup(read.value, folder);
  return { ok: true, value: `${folder}: ${told(facts)}.\n` };
};

/** What is kept in a database is not in the folder. */
function requireFolder(program: string): void {
  if (databaseUrl() === null) return;
  throw new InputProblem({
    code: 'command-invalid',
    place: 'DATABASE_URL',
    came: 'a command for the data folder while trips are kept in a database',
    expected: `${program}, the program of PostgreSQL`,
    remedy: `Use ${program} (README, "On PostgreSQL"), or leave DATABASE_URL out`,
  });
}

const many = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
const told = ({ trips, rigs, bytes }: BackupFacts): string =>
  `${many(trips, 'trip')}, ${many(rigs, 'rig')}, ${(bytes / 1e6).toFixed(1)} MB`;

/** The one word that the commands take; null asks for the help. */
function fileOf(words: readonly string[], expected: string): Outcome<string | null> {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      strict: true,
      options: { help: { type: 'boolean', short: 'h' } },
    });
    const [file, second] = positionals;
    if (values.help === true) return { ok: true, value: null };
    if (file === undefined) return refuse(null, 'no file', expected);
    if (second !== undefined) return refuse(second, 'a word too many', expected);
    return { ok: true, value: file };
  } catch (error) {
    return refuseOption(error, '--help');
  }
}
