import { writeFileSync } from 'node:fs';
import { folderOf, type Mutant } from './mutants.ts';

/**
 * What has become of a mutant: a test failed with it; all tests that come by it passed; no test comes by it; or it
 * counts only while modules are loaded, where it cannot be switched on.
 */
export type Verdict =
  | { kind: 'noticed'; test: string }
  | { kind: 'unnoticed' }
  | { kind: 'never-met' }
  | { kind: 'loading-only' };

/** Prints the score by folder and what went unnoticed, keeps all of it in `path`, and gives the percentage of core. */
export function print(verdicts: ReadonlyMap<Mutant, Verdict>, path: string): number {
  const counted = [...verdicts].filter(([, { kind }]) => kind !== 'loading-only');
  const missed = counted.filter(([, { kind }]) => kind !== 'noticed');
  for (const [{ file, line, from, to }, { kind }] of missed)
    console.log(`${kind}  ${file}:${line}  ${short(from)}  ->  ${short(to)}`);
  const folders = [...new Set(counted.map(([mutant]) => folderOf(mutant)))].sort();
  console.log('');
  for (const folder of folders) printRow(folder, counted, (mutant) => folderOf(mutant) === folder);
  printRow('all', counted, () => true);
  writeFileSync(
    path,
    `${JSON.stringify(
      [...verdicts].map(([mutant, verdict]) => ({ ...mutant, ...verdict })),
      null,
      1,
    )}\n`,
  );
  return printRow('core', counted, ({ file }) => file.startsWith('server/core/'));
}

function printRow(
  name: string,
  counted: readonly (readonly [Mutant, Verdict])[],
  belongs: (mutant: Mutant) => boolean,
): number {
  const own = counted.filter(([mutant]) => belongs(mutant));
  const noticed = own.filter(([, { kind }]) => kind === 'noticed').length;
  const percent = own.length === 0 ? 100 : (100 * noticed) / own.length;
  console.log(
    `${name.padEnd(32)} ${String(noticed).padStart(6)} of ${String(own.length).padStart(6)}  ${percent.toFixed(1).padStart(5)} %`,
  );
  return percent;
}

const short = (text: string): string => {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 70 ? `${line.slice(0, 67)}…` : line;
};
