import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { SqlFile } from '../../server/store/libsql/sql-file.ts';
import { folderStore, STORE_FILE } from '../../server/store/open-store.ts';
import { newTrip } from '../store/new-trip.ts';
import { faultsOf } from './inspect.ts';
import { KINDS, type Kind } from './kinds.ts';
import { randomFrom } from './random.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const VERSION_1 = new URL('../fixtures/store/version-1.sql', import.meta.url);
/** Taps of the extract that is taken in: some batches. */
const TAPS = 1_500;
/** When a kill comes: so long at most after a word, milliseconds, about what a round of the work takes. */
const KILL: Record<Kind, { word: string; withinMs: number }> = {
  autosave: { word: 'open', withinMs: 60 },
  ingest: { word: 'open', withinMs: 1_500 },
  migration: { word: 'ready', withinMs: 25 },
  delete: { word: 'open', withinMs: 60 },
  backup: { word: 'open', withinMs: 150 },
};

/** One process that was killed, and what was found wrong afterwards. */
export interface Killed {
  kind: Kind;
  /** Milliseconds after it had begun. */
  afterMs: number;
  /** What it had acknowledged. */
  words: string[];
  faults: string[];
}

export interface FaultsOptions {
  times: number;
  seed: number;
  onKilled?: (killed: Killed) => void;
}

/** Kills processes that write to a data folder, of each kind in turn, and looks each time whether all is well. */
export async function killOver({ times, seed, onKilled }: FaultsOptions): Promise<Killed[]> {
  const scratch = mkdtempSync(join(tmpdir(), 'drystage-faults-'));
  const random = randomFrom(seed);
  try {
    const script = await bundled(scratch);
    const taps = join(scratch, 'taps.osm');
    writeFileSync(taps, tapsOsm());
    const all: Killed[] = [];
    for (let time = 0; time < times; time += 1) {
      const kind = KINDS[time % KINDS.length] ?? 'autosave';
      // A folder is used again, as it would be, but for one that is to be brought up.
      const folder = join(scratch, kind === 'migration' ? `migration-${time}` : kind);
      prepare(folder, kind);
      const { word, withinMs } = KILL[kind];
      const afterMs = random() * withinMs;
      const words = await killed([script, kind, folder, taps], word, afterMs);
      const faults = await faultsOf(folder, kind, words).catch((error) => [`it cannot be opened: ${error}`]);
      const one = { kind, afterMs, words, faults };
      if (kind === 'migration') rmSync(folder, { recursive: true, force: true });
      all.push(one);
      onKilled?.(one);
    }
    return all;
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

/** The child in one file of JavaScript, which starts in a tenth of a second. */
async function bundled(folder: string): Promise<string> {
  const outfile = join(folder, 'child.mjs');
  const here = JSON.stringify(pathToFileURL(join(ROOT, 'package.json')).href);
  await build({
    entryPoints: [fileURLToPath(new URL('./child.ts', import.meta.url))],
    bundle: true,
    outfile,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // Native packages are looked for from the project, and CommonJS ones ask for what is built in.
    define: { 'import.meta.url': here },
    banner: { js: `import { createRequire as ofHere } from 'node:module'; const require = ofHere(${here});` },
    logLevel: 'silent',
  });
  return outfile;
}

function tapsOsm(): string {
  const nodes = Array.from({ length: TAPS }, (_, at) => {
    const [lon, lat] = [88 + (at % 60) / 30, -35 - Math.floor(at / 60) / 30];
    return `<node id="${at + 1}" lon="${lon}" lat="${lat}"><tag k="amenity" v="drinking_water"/></node>`;
  });
  return `<osm version="0.6">${nodes.join('\n')}</osm>`;
}

function prepare(folder: string, kind: Kind): void {
  mkdirSync(folder, { recursive: true });
  if (kind === 'migration') {
    const file = new SqlFile(join(folder, STORE_FILE));
    file.script(readFileSync(VERSION_1, 'utf8'));
    file.close();
    return;
  }
  const store = folderStore(folder);
  // A backup takes a while, so that some are killed in the middle of it.
  const maps = new Uint8Array(kind === 'backup' ? 3_000_000 : 2);
  if (store.trips().length === 0) store.addTrip(newTrip({ maps }));
  store.close();
}

type Child = ChildProcessByStdio<null, Readable, Readable>;

/** Starts a process and kills it so long after a word of its; gives all its words. */
async function killed(args: readonly string[], word: string, afterMs: number): Promise<string[]> {
  const child: Child = spawn(process.execPath, [...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk.toString();
  });
  const closed = once(child, 'close');
  while (!out.includes(`${word}\n`) && child.exitCode === null) {
    await Promise.race([once(child.stdout, 'data'), closed]);
  }
  await setTimeout(afterMs);
  child.kill('SIGKILL');
  await closed;
  if (err !== '') throw new Error(`the process failed by itself: ${err}`);
  // A word that was cut off was not said.
  return out.split('\n').slice(0, -1);
}
