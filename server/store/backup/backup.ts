import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import { copyFile, type FileHandle, open, rename } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { InputProblem } from '../../core/input/problem.ts';
import { FolderLock } from '../libsql/folder-lock.ts';
import { requireStore } from '../libsql/schema.ts';
import { SqlFile } from '../libsql/sql-file.ts';
import { makeFolder, STORE_FILE } from '../open-store.ts';
import { numberOf } from '../sql/database.ts';
import { isRunning } from '../tending/temp-folders.ts';

/** What a backup holds. */
export interface BackupFacts {
  bytes: number;
  /** Deleted ones, which can be restored, among them. */
  trips: number;
  rigs: number;
  /** Kept extracts that are not in it. */
  extractsLeftOut: number;
}

/** Ends the name of a file that is not whole yet: NAME.PROCESS.drystage-part. */
const PART = /\.(\d+)\.drystage-part(?:-journal)?$/;
/** The rows of extracts: their files, which are large and can be had again, are in no backup. */
const WITHOUT_EXTRACTS = ['points', 'point_boxes', 'ground', 'ground_boxes', 'extracts']
  .map((table) => `DELETE FROM ${table};`)
  .join('');

/**
 * Writes the trips and rigs of a store into a file of their own, as they are at one moment, while others may write. The
 * file has its name only when it is whole, checked and on the disk. Throws InputProblem.
 */
export async function backUp(folder: string, to: string): Promise<BackupFacts> {
  const storePath = join(folder, STORE_FILE);
  if (!existsSync(storePath)) throw nothingKept(storePath);
  requireFree(to);
  return asWhole(to, (part) => {
    const store = new SqlFile(storePath);
    try {
      requireStore(store);
      store.run('VACUUM INTO ?', part);
    } finally {
      store.close();
    }
    const extractsLeftOut = leaveOutExtracts(part);
    return { ...checked(part, storePath), extractsLeftOut };
  });
}

/** How many they were. */
function leaveOutExtracts(path: string): number {
  const file = new SqlFile(path);
  try {
    const leftOut = count(file, 'extracts WHERE whole = 1');
    file.script(`BEGIN; ${WITHOUT_EXTRACTS} COMMIT; VACUUM`);
    return leftOut;
  } finally {
    file.close();
  }
}

/** Puts a backup into a data folder where no store is. Throws InputProblem, and leaves all as it was then. */
export async function restoreBackup(from: string, folder: string): Promise<BackupFacts> {
  if (!existsSync(from)) throw noBackup(from, 'no such file');
  makeFolder(folder);
  const storePath = join(folder, STORE_FILE);
  const lock = FolderLock.take(folder, 'server');
  try {
    // The journal of a store that was taken away would be played into the one that comes.
    if (lock === null || [storePath, `${storePath}-wal`].some((path) => existsSync(path)))
      throw inUse(storePath);
    return await asWhole(storePath, async (part) => {
      await copyFile(from, part);
      return checked(part, from);
    });
  } finally {
    lock?.release();
  }
}

/** What a file holds that is to be a store. */
function checked(path: string, source: string): Omit<BackupFacts, 'bytes'> {
  const file = new SqlFile(path);
  try {
    if (file.one('SELECT name FROM sqlite_master') === null) throw noBackup(source, 'an empty file');
    requireStore(file);
    // SQLite takes what a cut took from the last page for zeros.
    const pages = numberOf(file.one('PRAGMA page_count') ?? {}, 'page_count');
    const bytes = pages * numberOf(file.one('PRAGMA page_size') ?? {}, 'page_size');
    if (statSync(path).size !== bytes) throw noBackup(source, 'a file that was cut');
    requireIntact(file, source);
    return { trips: count(file, 'trips'), rigs: count(file, 'rigs'), extractsLeftOut: 0 };
  } finally {
    file.close();
  }
}

/** Makes a file under another name beside its own, which it gets when it is on the disk. */
async function asWhole(
  to: string,
  make: (part: string) => Omit<BackupFacts, 'bytes'> | Promise<Omit<BackupFacts, 'bytes'>>,
): Promise<BackupFacts> {
  sweepParts(dirname(resolve(to)));
  const part = `${resolve(to)}.${process.pid}.drystage-part`;
  try {
    await inFile(part, 'wx', async () => {}).catch((error: NodeJS.ErrnoException) => {
      throw unwritable(to, error.code ?? 'unknown error');
    });
    const facts = await make(part);
    await inFile(part, 'r+', (file) => file.sync());
    // Somebody else may have taken the name meanwhile.
    requireFree(to);
    await rename(part, to);
    return { bytes: statSync(to).size, ...facts };
  } catch (error) {
    throw error instanceof InputProblem && error.problem.code === 'store-full' ? noRoom(to) : error;
  } finally {
    for (const left of [part, `${part}-journal`]) rmSync(left, { force: true });
  }
}

async function inFile(path: string, flags: string, work: (file: FileHandle) => Promise<void>): Promise<void> {
  const file = await open(path, flags);
  try {
    await work(file);
  } finally {
    await file.close();
  }
}

/** Takes away what a process left in the folder that ended before its file was whole. */
function sweepParts(folder: string): void {
  for (const name of existsSync(folder) ? readdirSync(folder) : []) {
    const owner = PART.exec(name)?.[1];
    if (owner !== undefined && !isRunning(Number(owner))) rmSync(join(folder, name), { force: true });
  }
}

const count = (file: SqlFile, what: string): number =>
  numberOf(file.one(`SELECT count(*) AS n FROM ${what}`) ?? {}, 'n');

function requireIntact(file: SqlFile, source: string): void {
  const check = file.one('PRAGMA integrity_check')?.integrity_check;
  const strays = file.all('PRAGMA foreign_key_check');
  if (check === 'ok' && strays.length === 0) return;
  const came = `a damaged file (${check === 'ok' ? 'parts of trips that are not there' : check})`;
  throw new InputProblem({
    ...{ code: 'store-unusable', source, came, expected: 'one that passes its check' },
    remedy: 'Use an older backup; trips that still open can be saved as files (drystage trip export)',
  });
}

function requireFree(path: string): void {
  if (!existsSync(path)) return;
  const parts = { source: path, came: 'a file that is there already', expected: 'a free name' };
  throw new InputProblem({ code: 'file-unreadable', ...parts, remedy: 'Give another name' });
}

const unwritable = (source: string, code: string) =>
  new InputProblem({
    ...{ code: 'file-unreadable', source, came: `a file that cannot be written (${code})` },
    ...{ expected: 'a file in a folder that is there and can be written', remedy: 'Give another path' },
  });

const noRoom = (source: string) =>
  new InputProblem({
    ...{ code: 'store-full', source, came: 'no room left for it' },
    ...{ expected: 'room on the disk for twice what is kept', remedy: 'Make room, or give a path elsewhere' },
  });

const nothingKept = (source: string) =>
  new InputProblem({
    ...{ code: 'file-missing', source, came: 'a data folder in which nothing is kept' },
    ...{ expected: 'trips or rigs', remedy: 'Set DRYSTAGE_DATA to the folder that the server names' },
  });

const noBackup = (source: string, came: string) =>
  new InputProblem({
    ...{ code: 'file-missing', source, came, expected: 'a file that drystage backup wrote' },
    remedy: 'Check the path',
  });

const inUse = (source: string) =>
  new InputProblem({
    ...{ code: 'store-unusable', source, came: 'a data folder in which something is kept already' },
    expected: 'a folder without a store, so that nothing is overwritten',
    remedy:
      'Set DRYSTAGE_DATA to another folder, or stop the server and move drystage.db, with -wal and -shm, away',
  });
