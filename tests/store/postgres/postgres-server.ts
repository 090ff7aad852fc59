import { type ExecFileSyncOptions, execFileSync, spawn } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The database that this run started, or why there is none. */
    postgres: { url: string } | { why: string };
  }
}

/** Where systems have the programs of the server beside the path, which often has the clients alone. */
const DEBIAN = '/usr/lib/postgresql';

function programs(): string | null {
  const folders = [
    ...(process.env.PATH ?? '').split(':'),
    ...(existsSync(DEBIAN) ? readdirSync(DEBIAN).map((version) => join(DEBIAN, version, 'bin')) : []),
  ];
  return (
    folders.find((folder) => ['initdb', 'postgres'].every((name) => existsSync(join(folder, name)))) ?? null
  );
}

/** A user that is not root, whom PostgreSQL refuses: that of Debian's package, else nobody's number. */
function otherUser(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const numberOf = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { stdio: 'pipe' }));
  try {
    return { uid: numberOf('-u'), gid: numberOf('-g') };
  } catch {
    return { uid: 65_534, gid: 65_534 };
  }
}

/** What the server says of itself in its lock file; nothing where that is not there yet. */
function statusOf(path: string): string {
  try {
    return readFileSync(path, 'utf8').split('\n')[7] ?? '';
  } catch {
    return '';
  }
}

interface Running {
  url: string;
  stop: () => Promise<void>;
}

/** Starts a PostgreSQL of one's own in a temporary folder, on a socket there. Throws where it cannot. */
export async function startPostgres(): Promise<Running> {
  const bin = programs();
  if (bin === null)
    throw new Error('initdb and postgres are not installed (Debian: apt-get install postgresql)');
  const folder = mkdtempSync(join(tmpdir(), 'drystage-postgres-'));
  const user = otherUser();
  if (user !== null) chownSync(folder, user.uid, user.gid);
  const options: ExecFileSyncOptions = { cwd: folder, stdio: 'pipe', ...user };
  const data = join(folder, 'data');
  const init = ['--no-sync', '--auth=trust', '--username=drystage', '--encoding=UTF8', '--locale=C', data];
  try {
    execFileSync(join(bin, 'initdb'), init, options);
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  const settings = [
    'fsync=off',
    'full_page_writes=off',
    'shared_buffers=16MB',
    'listen_addresses=',
    'autovacuum=off',
  ];
  const server = spawn(
    join(bin, 'postgres'),
    ['-D', data, '-k', folder, ...settings.flatMap((setting) => ['-c', setting])],
    { cwd: folder, stdio: 'ignore', ...user },
  );
  const ended = new Promise<void>((done) => void server.once('exit', () => done()));
  const stop = async () => {
    // At once: nothing of it is wanted again.
    server.kill('SIGQUIT');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
  const until = Date.now() + 20_000;
  const isReady = () => statusOf(join(data, 'postmaster.pid')).startsWith('ready');
  while (!isReady())
    if (server.exitCode !== null || Date.now() > until) {
      await stop();
      throw new Error('postgres did not start');
    } else await new Promise((again) => void setTimeout(again, 20));
  return { url: `postgresql://drystage@localhost/postgres?host=${encodeURIComponent(folder)}`, stop };
}

/** One for the whole run; tests that want it are skipped where there is none, and the run says why. */
export default async function globalSetup(project: TestProject): Promise<() => Promise<void>> {
  try {
    const { url, stop } = await startPostgres();
    project.provide('postgres', { url });
    return stop;
  } catch (error) {
    project.provide('postgres', {
      why: (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? '',
    });
    return async () => {};
  }
}
