import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { arch, cpus, platform, release, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Bench, BenchGroup, BenchRow } from './measure.ts';

/** First line that a program prints, or that it is absent. */
function versionOf(program: string, args: readonly string[]): string {
  try {
    return (
      execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).split('\n')[0] ??
      ''
    );
  } catch {
    return 'not installed';
  }
}

function printMachine(): void {
  const [cpu] = cpus();
  console.log(`date    ${new Date().toISOString()}`);
  console.log(
    `machine ${cpu?.model.trim() ?? 'unknown'}, ${cpus().length} cores, ${(totalmem() / 1e9).toFixed(1)} GB`,
  );
  console.log(`system  ${platform()} ${release()} ${arch()}`);
  console.log(`node    ${process.version}`);
  console.log(`osmium  ${versionOf('osmium', ['--version'])}`);
  console.log(`psql    ${versionOf('psql', ['--version'])}`);
}

const ms = (value: number) => (value >= 100 ? value.toFixed(0) : value.toFixed(value >= 10 ? 1 : 3));

function rowLine(row: BenchRow, first: BenchRow): string {
  const parts = [`${ms(row.medianMs)} ms median of ${row.runs}`];
  if (row !== first)
    parts.push(`${(row.medianMs / first.medianMs).toPrecision(3)} × the time of ${first.who}`);
  if (row.peakMb !== undefined) parts.push(`${row.peakMb.toFixed(0)} MB at most`);
  if (row.note !== undefined) parts.push(row.note);
  return `  ${row.who}: ${row.what}\n    ${parts.join(', ')}`;
}

function printGroup(group: BenchGroup): void {
  const outcome = group.met === null ? 'not judged' : group.met ? 'met' : 'NOT met';
  console.log(`\n${group.title}: target ${group.target}: ${outcome}`);
  const [first] = group.rows;
  if (first === undefined) return;
  for (const row of group.rows) console.log(rowLine(row, first));
}

/** Runs the benchmarks whose paths hold one of the words given, all without words; one after the other. */
async function main(words: readonly string[]): Promise<void> {
  const folder = fileURLToPath(new URL('.', import.meta.url));
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.bench.ts'))
    .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
    .sort();
  printMachine();
  const missed: string[] = [];
  for (const name of names) {
    try {
      const { bench } = (await import(`./${name}`)) as { bench: Bench };
      const group = await bench();
      printGroup(group);
      if (group.met === false) missed.push(name);
    } catch (error) {
      console.log(`\n${name} failed: ${error instanceof Error ? error.message : String(error)}`);
      missed.push(name);
    }
  }
  console.log(
    `\n${names.length} benchmarks, ${missed.length} not met${missed.length > 0 ? `: ${missed.join(', ')}` : ''}`,
  );
  if (missed.length > 0) process.exitCode = 1;
}

await main(process.argv.slice(2));
