import { fileURLToPath } from 'node:url';
import { fuzz } from './fuzz.ts';

/** npm run fuzz -- [SECONDS, or COUNTx] [SEED]: reads changed files until the time is up, or so many. */
const [much = '60', seed = String(Date.now() % 1_000_000)] = process.argv.slice(2);
const isCount = much.endsWith('x');
const { findings, tried, outcomes, mostMb } = await fuzz({
  seconds: isCount ? Number.POSITIVE_INFINITY : Number(much),
  ...(isCount && { count: Number.parseInt(much, 10) }),
  seed: Number(seed),
  children: 2,
  findings: fileURLToPath(new URL('../../.tmp/fuzz/', import.meta.url)),
  onFinding: ({ format, number, wrong, path }) => console.log(`${format} ${number}: ${wrong}\n  ${path}`),
});
console.log(
  `${tried} inputs of seed ${seed}, ${outcomes} kinds of outcome, ${mostMb} MB at most, ${findings.length} findings`,
);
process.exitCode = findings.length === 0 ? 0 : 1;
