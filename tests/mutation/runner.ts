import { dirname, relative } from 'node:path';
import fc from 'fast-check';
import type { RunnerTestCase, RunnerTestFile } from 'vitest';
import { TestRunner } from 'vitest';
import { REAL_MARK } from '../helpers/real.ts';
import { addNote, noteReader } from './notes.ts';
import { HELD_BY, HITS_FACTOR, PROPERTY_MS, QUIET_AS_IT_IS_MS, QUIET_MS, SEED, TRY_MS } from './settings.ts';

/** What the switches in the code look at: see the instrumenter of Stryker. */
interface Switches {
  activeMutant: string | undefined;
  currentTestId: string | undefined;
  hitCount: number | undefined;
  hitLimit: number;
  mutantCoverage: { static: Record<string, number>; perTest: Record<string, Record<string, number>> };
}
const scope = globalThis as { __stryker__?: Partial<Switches> };
scope.__stryker__ ??= {};
const switches: Switches = Object.assign(scope.__stryker__, {
  activeMutant: undefined,
  currentTestId: undefined,
  hitCount: undefined,
  hitLimit: Number.POSITIVE_INFINITY,
  mutantCoverage: scope.__stryker__.mutantCoverage ?? { static: {}, perTest: {} },
});

const ROOT = process.cwd();
const NOTES = process.env.MUTATION_NOTES ?? '';
const readNotes = noteReader(NOTES);
const noticed = new Set<string>();
const loaded = new Set<string>();
/** What each mutant has cost this process, ms: in tests of its own folder, and in all others. */
const spentMs = { own: new Map<string, number>(), other: new Map<string, number>() };
const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

fc.configureGlobal({ seed: SEED, interruptAfterTimeLimit: PROPERTY_MS, endOnFailure: true });

/**
 * Runs each test as it is, and then, as long as there is a mutant that it comes by and that no test has noticed, once
 * more with that mutant switched on. The modules stay loaded: what a mutant costs is the time of the tests that meet it.
 */
export default class MutantRunner extends TestRunner {
  override onCollectStart(file: RunnerTestFile): void {
    super.onCollectStart(file);
    switches.currentTestId = undefined;
  }

  async runTask(test: RunnerTestCase): Promise<void> {
    // Real data is not there on every machine: what it alone would notice does not count.
    if (test.fullTestName.includes(REAL_MARK)) return;
    const once = TestRunner.getTestFn(test);
    const startedMs = performance.now();
    const hits = await this.#hitsOf(test, once);
    const patienceMs = Math.max(QUIET_MS, 3 * (performance.now() - startedMs));
    for (const note of readNotes()) if (note.note === 'noticed') noticed.add(note.id);
    const left = Object.entries(hits).filter(([id]) => !noticed.has(id) && heldBy(id, test.file));
    if (left.length === 0) return;
    addNote(NOTES, { note: 'met', ids: left.map(([id]) => id) });
    const found: string[] = [];
    for (const [id, count] of left) {
      const spending = isOwn(id, test.file) ? spentMs.own : spentMs.other;
      const spent = spending.get(id) ?? 0;
      if (spent > TRY_MS) continue;
      addNote(NOTES, { note: 'trying', by: process.pid, id });
      const startMs = processorMs();
      if (await fails(() => endOf(once, patienceMs), id, count)) found.push(id);
      spending.set(id, spent + processorMs() - startMs);
    }
    addNote(NOTES, { note: 'idle', by: process.pid });
    if (found.length === 0) return;
    const name = `${relative(ROOT, test.file.filepath)}: ${test.name}`;
    // A test that does not pass twice as it is says nothing about mutants.
    try {
      await endOf(once, QUIET_AS_IT_IS_MS);
    } catch {
      addNote(NOTES, { note: 'unsteady', test: name });
      return;
    }
    for (const id of found) {
      noticed.add(id);
      addNote(NOTES, { note: 'noticed', id, test: name });
    }
  }

  /** How often a test that runs as it is comes by each mutant; throws as the test does. */
  async #hitsOf(test: RunnerTestCase, once: () => unknown): Promise<Record<string, number>> {
    const { perTest } = switches.mutantCoverage;
    switches.currentTestId = test.id;
    try {
      // What a mutant left behind in a test before, a server that still waits for a sender, can hold this one up for ever.
      await endOf(once, QUIET_AS_IT_IS_MS);
    } finally {
      switches.currentTestId = undefined;
    }
    const hits = perTest[test.id] ?? {};
    delete perTest[test.id];
    return hits;
  }

  override onAfterRunFiles(): void {
    super.onAfterRunFiles();
    const news = Object.keys(switches.mutantCoverage.static).filter((id) => !loaded.has(id));
    for (const id of news) loaded.add(id);
    if (news.length > 0) addNote(NOTES, { note: 'loaded', ids: news });
  }

  override async onAfterRunSuite(suite: Parameters<TestRunner['onAfterRunSuite']>[0]): Promise<void> {
    await super.onAfterRunSuite(suite);
    if ('filepath' in suite)
      addNote(NOTES, { note: 'file', file: relative(ROOT, (suite as RunnerTestFile).filepath) });
  }
}

/** How often is looked whether a test still does something, ms. */
const LOOK_MS = 1_000;
/** What the process itself uses of the processor between two looks while it only waits, ms at most. */
const WAITING_MS = 50;

/** The end of a test; throws when it has only waited for so long, which it would for ever. */
async function endOf(once: () => unknown, patienceMs: number): Promise<void> {
  let look: NodeJS.Timeout | undefined;
  let quietMs = 0;
  let usedMs = processorMs();
  const waitsForEver = new Promise<never>((_resolve, reject) => {
    look = setInterval(() => {
      const nowMs = processorMs();
      quietMs = nowMs - usedMs > WAITING_MS ? 0 : quietMs + LOOK_MS;
      usedMs = nowMs;
      if (quietMs > patienceMs) reject(new Error(`waits for ever: nothing done in ${quietMs} ms`));
    }, LOOK_MS);
  });
  try {
    await Promise.race([once(), waitsForEver]);
  } finally {
    clearInterval(look);
  }
}

async function fails(once: () => Promise<void>, id: string, count: number): Promise<boolean> {
  switches.activeMutant = id;
  switches.hitCount = 0;
  switches.hitLimit = HITS_FACTOR * count + 10_000;
  try {
    await once();
    return false;
  } catch {
    return true;
  } finally {
    switches.activeMutant = undefined;
    switches.hitCount = undefined;
  }
}

/** Whether a test stands in the folder that mirrors a mutant's own. */
const isOwn = (id: string, { filepath }: RunnerTestFile): boolean =>
  dirname(relative(ROOT, filepath)) === dirname(id).replace(/^server/, 'tests');

function heldBy(id: string, { filepath }: RunnerTestFile): boolean {
  const test = relative(ROOT, filepath);
  return HELD_BY.some(([source, tests]) => id.startsWith(source) && test.startsWith(tests));
}
