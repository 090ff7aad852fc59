import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Instrumenter } from '@stryker-mutator/instrumenter';

/** One small fault that can be put into the code. */
export interface Mutant {
  /** Its file and its number among those of the file. */
  id: string;
  /** Relative to the project. */
  file: string;
  /** From 1. */
  line: number;
  /** The line as it stands, trimmed: with `from` and `to` it names the mutant while other lines change. */
  at: string;
  from: string;
  to: string;
  kind: string;
}

/** Names a mutant by what it says, not by where it stands. */
export const nameOf = ({ file, at, from, to }: Pick<Mutant, 'file' | 'at' | 'from' | 'to'>): string =>
  [file, at, from, to].join('\n');

const silent = () => {};
const LOGGER = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace: silent,
  debug: silent,
  info: silent,
  warn: silent,
  error: silent,
  fatal: silent,
};

/** All TypeScript files in these files and folders of the project, in a fixed order. */
export function sourcesIn(root: string, places: readonly string[]): string[] {
  return places.flatMap((place) => {
    if (statSync(join(root, place)).isFile()) return [place];
    return readdirSync(join(root, place), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
      .map((name) => `${place}/${name}`)
      .sort();
  });
}

/** The part of the instrumenter that its types keep to itself: it puts the mutants that are collected into the code. */
type Transform = NonNullable<ConstructorParameters<typeof Instrumenter>[3]>;
const { _transform: transform } = new Instrumenter(LOGGER) as unknown as { _transform: Transform };

/** Puts the chosen ones of all mutants into the code, each behind a switch. */
async function instrument(root: string, files: readonly string[], chosen: (id: string) => boolean) {
  const contents = files.map((name) => ({
    name,
    mutate: true,
    content: readFileSync(join(root, name), 'utf8'),
  }));
  const choosing: Transform = (ast, collector, context) => {
    let next = 0;
    const collect = (...[file, node, mutable, offset]: Parameters<typeof collector.collect>) => {
      const id = `${file}#${next}`;
      next += 1;
      const kept = chosen(id) ? mutable : { ...mutable, ignoreReason: 'not chosen' };
      // Numbered by file, so that files can be taken up without the others.
      return Object.assign(collector.collect(file, node, kept, offset), { id });
    };
    transform(ast, Object.create(collector, { collect: { value: collect } }), context);
  };
  const options = { plugins: null, excludedMutations: [], ignorers: [], noHeader: false };
  const { files: code, mutants } = await new Instrumenter(LOGGER, undefined, undefined, choosing).instrument(
    contents,
    options,
  );
  return { contents, code, mutants };
}

/** All mutants of these files. */
export async function mutantsOf(root: string, files: readonly string[]): Promise<Mutant[]> {
  const { contents, mutants } = await instrument(root, files, () => true);
  const lines = new Map(contents.map(({ name, content }) => [name, content.split('\n')]));
  return mutants.map(({ id, fileName, location: { start, end }, mutatorName, replacement }) => {
    const own = (lines.get(fileName) ?? []).slice(start.line, end.line + 1);
    const [first = ''] = own;
    const from = [...own.slice(0, -1), (own.at(-1) ?? '').slice(0, end.column)]
      .join('\n')
      .slice(start.column);
    return {
      id,
      file: fileName,
      line: start.line + 1,
      at: first.trim(),
      from,
      to: replacement,
      kind: mutatorName,
    };
  });
}

/** The code of the files that hold the chosen mutants, with each of these behind a switch. */
export async function switchedCode(root: string, chosen: readonly Mutant[]): Promise<Record<string, string>> {
  const ids = new Set(chosen.map(({ id }) => id));
  const files = [...new Set(chosen.map(({ file }) => file))];
  const { code } = await instrument(root, files, (id) => ids.has(id));
  return Object.fromEntries(code.map(({ name, content }) => [name, content]));
}

/** Folder that a mutant is counted under: three deep, `server/core/plan/drive` four. */
export function folderOf({ file }: Pick<Mutant, 'file'>): string {
  const folders = file.split('/').slice(0, -1);
  return folders.slice(0, folders[2] === 'plan' ? 4 : 3).join('/');
}

/** So many of the mutants, each folder with its share: by lot, the lot of each fixed by what it says. */
export function draw(mutants: readonly Mutant[], count: number, seed: number): Mutant[] {
  const lot = (mutant: Mutant) =>
    createHash('sha256')
      .update(`${seed}\n${nameOf(mutant)}`)
      .digest('hex');
  const byFolder = new Map<string, { mutant: Mutant; lot: string }[]>();
  for (const mutant of mutants) {
    const folder = byFolder.get(folderOf(mutant)) ?? [];
    folder.push({ mutant, lot: lot(mutant) });
    byFolder.set(folderOf(mutant), folder);
  }
  const share = Math.min(1, count / mutants.length);
  return [...byFolder.values()].flatMap((folder) =>
    folder
      .sort((a, b) => (a.lot < b.lot ? -1 : a.lot > b.lot ? 1 : 0))
      .slice(0, Math.ceil(folder.length * share))
      .map(({ mutant }) => mutant),
  );
}
