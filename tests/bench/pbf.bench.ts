import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { KIND_RULES } from '../../server/core/supply/tags/kinds.ts';
import { type Bench, type BenchRow, median } from './measure.ts';
import { sizeMb, syntheticPbf } from './pbf-synthetic.ts';

const FILE_BYTES = 250e6;
const RUNS = 5;
const TARGET_RATIO = 1.5;
const TARGET_MB = 200;

interface Run {
  /** The whole process, from start to exit. */
  processMs: number;
  /** The reading alone, where the process tells it. */
  readingMs: number | null;
  peakMb: number | null;
  note: string;
}

const ONCE = fileURLToPath(new URL('./pbf-once.ts', import.meta.url));

function ours(file: string, ...options: string[]): Run {
  const start = performance.now();
  const run = spawnSync(process.execPath, ['--import', 'tsx', ONCE, file, ...options], { encoding: 'utf8' });
  const processMs = performance.now() - start;
  if (run.status !== 0) throw new Error(`the reading failed: ${run.stderr}`);
  const told = JSON.parse(run.stdout) as { ms: number; peakMb: number; wanted: number };
  return { processMs, readingMs: told.ms, peakMb: told.peakMb, note: `${told.wanted} objects` };
}

/**
 * Filter expressions that look for what we look for. The forms that OSM has replaced and those of disused objects are
 * left out, which is less work for osmium than ours does.
 */
function expressions(): string[] {
  const values = new Map<string, Set<string>>();
  for (const [key, value] of KIND_RULES.flatMap((rule) => Object.entries(rule.forms[0] ?? {}).slice(0, 1)))
    values.set(key, (values.get(key) ?? new Set()).add(value));
  return [...[...values].map(([key, all]) => `nwr/${key}=${[...all].join(',')}`), 'nwr/drinking_water'];
}

const hasGnuTime = spawnSync('/usr/bin/time', ['-f', '%M', 'true']).status === 0;

function osmium(file: string, output: string): Run {
  const command = [
    'osmium',
    'tags-filter',
    '-R',
    '--no-progress',
    '-O',
    '-o',
    output,
    file,
    ...expressions(),
  ];
  const start = performance.now();
  const run = hasGnuTime
    ? spawnSync('/usr/bin/time', ['-f', '%M', ...command], { encoding: 'utf8' })
    : spawnSync(command[0]!, command.slice(1), { encoding: 'utf8' });
  const processMs = performance.now() - start;
  if (run.status !== 0) throw new Error(`osmium failed: ${run.stderr}`);
  const peakKb = hasGnuTime ? Number(run.stderr.trim().split('\n').at(-1)) : Number.NaN;
  return { processMs, readingMs: null, peakMb: Number.isNaN(peakKb) ? null : peakKb / 1024, note: '' };
}

function row(
  what: string,
  who: string,
  runs: readonly Run[],
  times: readonly number[],
  note: string,
): BenchRow {
  const peaks = runs.flatMap((run) => (run.peakMb === null ? [] : [run.peakMb]));
  const peak = peaks.length === 0 ? {} : { peakMb: Math.max(...peaks) };
  return { what, who, medianMs: median(times), runs: runs.length, ...peak, note };
}

/** Our filter against osmium's on the same made-up file, in turns. */
export const bench: Bench = async () => {
  const file = syntheticPbf(FILE_BYTES);
  const version = spawnSync('osmium', ['--version'], { encoding: 'utf8' }).stdout?.split('\n')[0];
  const folder = mkdtempSync(join(tmpdir(), 'drystage-bench-'));
  const mine: Run[] = [];
  const along: Run[] = [];
  const theirs: Run[] = [];
  try {
    for (let run = 0; run < RUNS; run += 1) {
      mine.push(ours(file));
      along.push(ours(file, 'near'));
      if (version !== undefined) theirs.push(osmium(file, join(folder, 'out.osm.pbf')));
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const what = `filter ${sizeMb(file).toFixed(0)} MB of .osm.pbf`;
  const reading = mine.map((run) => run.readingMs ?? run.processMs);
  const rows = [
    row(what, 'drystage', mine, reading, `the reading with its threads' start; ${mine[0]!.note}`),
    row(
      what,
      'drystage, whole process',
      mine,
      mine.map((run) => run.processMs),
      'with the start of Node and tsx',
    ),
  ];
  const planned = along.map((run) => run.readingMs ?? run.processMs);
  const times = (median(planned) / median(reading)).toFixed(2);
  rows.push(
    row(
      what,
      'drystage, near a route, with where its roads run',
      along,
      planned,
      `${times} times the plain reading`,
    ),
  );
  let met: boolean | null = null;
  if (theirs.length > 0) {
    const peers = theirs.map((run) => run.processMs);
    const ratio = median(peers) / median(reading);
    rows.push(row(what, version ?? 'osmium', theirs, peers, `${ratio.toFixed(2)} times our reading`));
    met = ratio >= TARGET_RATIO && rows.every((each) => (each.peakMb ?? 0) < TARGET_MB);
  }
  return {
    title: 'Filtering an .osm.pbf file',
    target: `at least ${TARGET_RATIO} times as fast as osmium tags-filter -R, under ${TARGET_MB} MB`,
    met,
    rows,
  };
};
