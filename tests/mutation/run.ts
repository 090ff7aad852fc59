/**
 * Puts small faults into the code, one at a time, and counts those that no test notices: see README.md.
 *
 *   run.ts sample [SEED]       those drawn with the fixed seed, or another
 *   run.ts all [PLACE ...]     all of them, or all in these files and folders; of places in tests/, only their tests
 *
 * Exits 1 where fewer of core's are noticed than the floor.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { EXPLAINED } from './explained.ts';
import { draw, type Mutant, mutantsOf, nameOf, sourcesIn, switchedCode } from './mutants.ts';
import { addNote, noteReader } from './notes.ts';
import { print, type Verdict } from './report.ts';
import { FLOOR_PERCENT, LOT, MUTATED, SAMPLE, SEED, STUCK_S } from './settings.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const VITEST = join(ROOT, 'node_modules/.bin/vitest');
/** Of this run alone: two at a time must not read each other's notes. */
mkdirSync(join(ROOT, '.tmp'), { recursive: true });
const FOLDER = mkdtempSync(join(ROOT, '.tmp/mutation-'));
const CODE = join(FOLDER, 'code.json');
const NOTES = join(FOLDER, 'notes.jsonl');

/** Seconds of the processor that a process has used, as Linux tells; elsewhere what has passed. */
function processorSeconds(pid: number): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
    // User and system time, in hundredths of a second.
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return performance.now() / 1000;
  }
}

/** What has become of each mutant of a lot, as far as the notes tell. */
class Standing {
  readonly noticed = new Map<string, string>();
  readonly met = new Set<string>();
  readonly loaded = new Set<string>();
  readonly unsteady = new Set<string>();
  readonly files = new Set<string>();
  /** By process: which mutant it is trying, and the processor's seconds it had used when that was first seen. */
  readonly trying = new Map<number, { id: string; fromS: number }>();
  readonly #read = noteReader(NOTES);

  update(): void {
    for (const note of this.#read()) {
      if (note.note === 'noticed') this.noticed.set(note.id, note.test);
      if (note.note === 'met') for (const id of note.ids) this.met.add(id);
      if (note.note === 'loaded') for (const id of note.ids) this.loaded.add(id);
      if (note.note === 'unsteady') this.unsteady.add(note.test);
      if (note.note === 'file') this.files.add(note.file);
      if (note.note === 'idle') this.trying.delete(note.by);
      if (note.note === 'trying') this.trying.set(note.by, { id: note.id, fromS: processorSeconds(note.by) });
    }
  }

  verdictOn({ id }: Mutant): Verdict {
    const test = this.noticed.get(id);
    if (test !== undefined) return { kind: 'noticed', test };
    if (this.met.has(id)) return { kind: 'unnoticed' };
    return { kind: this.loaded.has(id) ? 'loading-only' : 'never-met' };
  }
}

/**
 * Runs the tests of the files that are left. A mutant that holds its test up, or with which the process of its test
 * ended, is noticed: the tests must be started again then, which the answer says.
 */
async function runTests(standing: Standing, tests: readonly string[]): Promise<'done' | 'again'> {
  const child = spawn(VITEST, ['run', '--config', 'tests/mutation/vitest.config.ts', ...tests], {
    cwd: ROOT,
    // With a group of its own, so that its workers end with it.
    detached: true,
    stdio: 'ignore',
    env: {
      ...process.env,
      MUTATION_CODE: CODE,
      MUTATION_NOTES: NOTES,
      MUTATION_DONE: JSON.stringify([...standing.files]),
    },
  });
  let ended = false;
  let isStopped = false;
  const end = once(child, 'close').then(([, signal]) => {
    ended = true;
    // A mutant can end the process of its test, not that of the run.
    if (signal !== null && !isStopped) throw new Error(`the tests were ended from outside: ${signal}`);
  });
  while (!ended) {
    await Promise.race([end, setTimeout(1_000)]);
    standing.update();
    const stuck = [...standing.trying].some(([by, { fromS }]) => processorSeconds(by) - fromS > STUCK_S);
    if (!stuck || ended || child.pid === undefined) continue;
    isStopped = true;
    process.kill(-child.pid, 'SIGKILL');
    await end;
  }
  standing.update();
  const lost = [...standing.trying.values()].map(({ id }) => id);
  for (const id of lost) addNote(NOTES, { note: 'noticed', id, test: 'its process was held up or ended' });
  standing.trying.clear();
  return lost.length > 0 ? 'again' : 'done';
}

async function tryLot(lot: readonly Mutant[], tests: readonly string[]): Promise<Map<Mutant, Verdict>> {
  writeFileSync(CODE, JSON.stringify(await switchedCode(ROOT, lot)));
  writeFileSync(NOTES, '');
  const standing = new Standing();
  while ((await runTests(standing, tests)) === 'again')
    console.log(`started again: ${standing.files.size} files done`);
  for (const test of standing.unsteady) console.log(`does not pass twice in a row, and is left out: ${test}`);
  return new Map(lot.map((mutant) => [mutant, standing.verdictOn(mutant)]));
}

const [mode = 'sample', ...rest] = process.argv.slice(2);
const [first = ''] = rest;
const isSeeded = mode === 'sample' && /^\d+$/.test(first);
const seed = isSeeded ? Number(first) : SEED;
const places = isSeeded ? rest.slice(1) : rest;
const tests = places.filter((place) => place.startsWith('tests/'));
const sources = places.filter((place) => !tests.includes(place));
const explained = new Set(EXPLAINED.map(nameOf));
const startMs = performance.now();
const all = await mutantsOf(ROOT, sourcesIn(ROOT, sources.length > 0 ? sources : MUTATED));
const open = all.filter((mutant) => !explained.has(nameOf(mutant)));
const chosen = mode === 'all' ? open : draw(open, SAMPLE, seed);
console.log(`${all.length} mutants, ${all.length - open.length} of them explained; ${chosen.length} to try`);
const names = new Set(all.map(nameOf));
if (sources.length === 0)
  for (const row of EXPLAINED)
    if (!names.has(nameOf(row))) console.log(`explained, but not there any more: ${row.file}: ${row.at}`);
const verdicts = new Map<Mutant, Verdict>();
for (let from = 0; from < chosen.length; from += LOT) {
  for (const [mutant, verdict] of await tryLot(chosen.slice(from, from + LOT), tests))
    verdicts.set(mutant, verdict);
}
const report = join(FOLDER, 'report.json');
const percent = print(verdicts, report);
console.log(`\nEach mutant with what became of it: ${report}`);
console.log(`${Math.round((performance.now() - startMs) / 1000)} s`);
if (percent < FLOOR_PERCENT) {
  console.log(`Of core ${percent.toFixed(1)} % are noticed; at least ${FLOOR_PERCENT} % must be.`);
  process.exitCode = 1;
}
