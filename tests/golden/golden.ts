/**
 * Golden answers: what the command line says about a set of trips, written before a change that must not change any
 * answer, and held against what it says afterwards.
 *
 *   npm run golden -- write FOLDER      before
 *   npm run golden -- compare FOLDER    after; exit status 1 where an answer differs
 *
 * Texts are compared to the letter. Figures of JSON may differ by one part in 10^12 (another order of summing); keys
 * may be added, none may go.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { REAL_FOLDER } from '../helpers/real.ts';
import { type GoldenCase, goldenCases } from './cases.ts';
import { differences } from './differences.ts';

const CLI = fileURLToPath(new URL('../../server/cli.mjs', import.meta.url));
const run = promisify(execFile);

const [verb, folder, only] = process.argv.slice(2);
if ((verb !== 'write' && verb !== 'compare') || folder === undefined) {
  console.error('usage: golden write|compare FOLDER [PART-OF-A-NAME]');
  process.exit(2);
}

interface Answered {
  status: number;
  stdout: string;
  stderr: string;
}

async function answer({ words, files = {} }: GoldenCase): Promise<Answered> {
  const scratch = mkdtempSync(join(tmpdir(), 'drystage-golden-'));
  try {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(scratch, name), text);
    const args = words.map((word) => (word.startsWith('@') ? join(scratch, word.slice(1)) : word));
    const told = { maxBuffer: 1 << 30, env: { ...process.env, NO_COLOR: '1' } };
    const plain = (text: string) => text.replaceAll(`${scratch}/`, '').replaceAll(REAL_FOLDER, 'real/');
    return await run(process.execPath, [CLI, ...args], told).then(
      ({ stdout, stderr }) => ({ status: 0, stdout: plain(stdout), stderr: plain(stderr) }),
      (fault: { code?: number; stdout: string; stderr: string }) => ({
        status: fault.code ?? -1,
        stdout: plain(fault.stdout),
        stderr: plain(fault.stderr),
      }),
    );
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

mkdirSync(folder, { recursive: true });
const chosen = goldenCases().filter(({ name }) => only === undefined || name.includes(only));
let differing = 0;
for (const one of chosen) {
  const path = join(folder, `${one.name.replaceAll(/[^a-z0-9]+/gi, '-')}.json`);
  const now = await answer(one);
  if (verb === 'write') {
    writeFileSync(path, JSON.stringify(now));
    console.log(`${one.name}: exit ${now.status}, ${now.stdout.length + now.stderr.length} characters`);
    continue;
  }
  const found = differences(JSON.parse(readFileSync(path, 'utf8')) as Answered, now);
  if (found.length > 0) differing += 1;
  console.log(`${one.name}: ${found.length === 0 ? 'the same' : `${found.length} differences`}`);
  for (const line of found.slice(0, 8)) console.log(`    ${line}`);
}
console.log(`${chosen.length - differing} passed, ${differing} failed`);
process.exit(differing === 0 ? 0 : 1);
