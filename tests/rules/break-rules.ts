/**
 * Breaks each rule once, in a copy of the project, and writes down which test fails: RULES.md. Exits 1 when a broken
 * rule goes unnoticed. Takes some minutes; words after it try only the rules that hold them.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { BROKEN_RULES, type BrokenRule } from './broken-rules.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const TABLE = join(ROOT, 'tests/rules/RULES.md');
/** Inside a folder of the same depth, so that ../shared is found where it is. */
const copy = mkdtempSync(join(tmpdir(), 'drystage-rules-'));

interface JsonReport {
  testResults: { name: string; message: string; assertionResults: { status: string; fullName: string }[] }[];
}

/** The tests that fail in the copy, as "file: name"; a file that does not load counts as one. */
function failing(tests: string[], output: string): string[] {
  rmSync(output, { force: true });
  spawnSync(
    join(ROOT, 'node_modules/.bin/vitest'),
    [
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--reporter=json',
      `--outputFile=${output}`,
      ...tests.map((test) => `tests/${test}`),
    ],
    { cwd: join(copy, 'main'), stdio: 'ignore', env: { ...process.env, CI: 'true' } },
  );
  const report = JSON.parse(readFileSync(output, 'utf8')) as JsonReport;
  return report.testResults.flatMap((file) => {
    const name = file.name.slice(file.name.indexOf('/tests/') + 7);
    const failed = file.assertionResults.filter((one) => one.status === 'failed');
    if (failed.length === 0 && file.message !== '') throw new Error(`${name} does not load: ${file.message}`);
    return failed.map((one) => `${name}: ${one.fullName}`);
  });
}

function tryBreaking(rule: BrokenRule): string[] {
  const path = join(copy, 'main', rule.file);
  const text = readFileSync(path, 'utf8');
  if (text.split(rule.find).length !== 2) throw new Error(`${rule.file} does not hold once: ${rule.find}`);
  writeFileSync(
    path,
    text.replace(rule.find, () => rule.broken),
  );
  try {
    return failing(rule.tests, join(copy, 'report.json'));
  } finally {
    writeFileSync(path, text);
  }
}

/** The rows written before, by rule, so that some rules can be tried alone. */
function readRows(): Map<string, string> {
  const text = existsSync(TABLE) ? readFileSync(TABLE, 'utf8') : '';
  const rows = text.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| |'));
  return new Map(rows.map((row) => [row.split(' | ')[1]!, row]));
}

function writeRows(rows: ReadonlyMap<string, string>): void {
  const head = [
    '# Rules and the tests that hold them',
    '',
    'Written by `npx tsx tests/rules/break-rules.ts`, which breaks each rule of computation once (see broken-rules.ts)',
    'and notes the first test that fails. The table of tags is held row by row in tests/core/supply.',
    '',
    '| | rule | fails when it is broken |',
    '|---|---|---|',
  ];
  const lines = BROKEN_RULES.flatMap(({ rule }) => rows.get(rule) ?? []);
  writeFileSync(TABLE, `${[...head, ...lines].join('\n')}\n`);
}

try {
  execFileSync('git', ['clone', '-q', ROOT, join(copy, 'main')]);
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'main', 'node_modules'));
  symlinkSync(join(ROOT, '../shared'), join(copy, 'shared'));

  const words = process.argv.slice(2);
  const rows = readRows();
  const unnoticed: BrokenRule[] = [];
  for (const rule of BROKEN_RULES) {
    const name = `${rule.group}: ${rule.rule}`;
    if (words.length > 0 && !words.some((word) => name.includes(word))) continue;
    const [first, ...more] = tryBreaking(rule);
    console.log(`${first === undefined ? 'UNNOTICED' : 'noticed'}  ${name}`);
    if (first === undefined) unnoticed.push(rule);
    const cell = first === undefined ? '**no test**' : first.replaceAll('|', '\\|');
    const row = `| ${rule.group} | ${rule.rule} | ${cell}${more.length > 0 ? ` (and ${more.length} more)` : ''} |`;
    rows.set(rule.rule, row);
    writeRows(rows);
  }
  if (unnoticed.length > 0) process.exitCode = 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}
