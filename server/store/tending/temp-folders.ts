import { readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Folders and files that a process of ours makes for a while, by the number of the process. */
const OURS = /^drystage-(?:memory-)?(\d+)-/;
/** Younger ones are left: their process may be of another kind of machine in this one. Ours. */
const LEAST_AGE_MS = 3_600_000;

/** Takes away what ended processes left in the folder for temporary files. */
export async function sweepTempFolders(folder: string = tmpdir(), now: number = Date.now()): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const owner = OURS.exec(name)?.[1];
    if (owner === undefined || isRunning(Number(owner))) continue;
    const path = join(folder, name);
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: now }));
    if (now - mtimeMs > LEAST_AGE_MS) await rm(path, { recursive: true, force: true }).catch(() => {});
  }
}

/** Whether there is a process of that number. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Of another user, but there.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
