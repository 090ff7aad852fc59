import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'vite';
import type { Graph } from './graph.ts';

export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** A file's imports: files of the house by their path from its root, packages by their name. */
export interface Module {
  files: ReadonlySet<string>;
  packages: ReadonlySet<string>;
}

/** The modules of the house below some folders, by path from the root. */
export function readModules(folders: readonly string[]): Map<string, Module> {
  const paths = folders
    .flatMap((folder) =>
      readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((path) =>
        join(folder, path),
      ),
    )
    .filter(
      (path) =>
        /\.(ts|tsx|mjs)$/.test(path) && !path.endsWith('.d.ts') && !/\/(dist|node_modules)\//.test(path),
    );
  return new Map(paths.map((path) => [path, moduleOf(path, readFileSync(join(ROOT, path), 'utf8'))]));
}

export const graphOf = (modules: ReadonlyMap<string, Module>): Graph =>
  new Map(
    [...modules].map(([path, { files }]) => [path, new Set([...files].filter((file) => modules.has(file)))]),
  );

/** What a source text imports: by `import`, `export from`, `import()`, also of types, and as a thread's `new URL(…)`. */
export function moduleOf(path: string, source: string): Module {
  const { program, errors } = parseSync(path, source);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  const found = new Set<string>();
  collect(program, found);
  const names = [...found];
  const isFile = (name: string) => name.startsWith('.');
  return {
    files: new Set(
      names.filter(isFile).map((name) => normalize(join(dirname(path), name.replace(/\?.*$/, '')))),
    ),
    packages: new Set(names.filter((name) => !isFile(name))),
  };
}

/** Walks the tree of a source text for the names of what it imports. */
function collect(node: unknown, found: Set<string>): void {
  if (Array.isArray(node)) {
    for (const member of node) collect(member, found);
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  const name = importedBy(node as SyntaxNode);
  if (name !== null) found.add(name);
  for (const member of Object.values(node)) collect(member, found);
}

interface SyntaxNode {
  type?: string;
  source?: SyntaxNode | null;
  callee?: { name?: string };
  arguments?: SyntaxNode[];
  value?: unknown;
}

const WITH_SOURCE = [
  'ImportDeclaration',
  'ImportExpression',
  'ExportNamedDeclaration',
  'ExportAllDeclaration',
  'TSImportType',
];

function importedBy({ type = '', source, callee, arguments: given }: SyntaxNode): string | null {
  if (WITH_SOURCE.includes(type)) return textOf(source);
  const isUrl = type === 'NewExpression' && callee?.name === 'URL' && given?.length === 2;
  const text = isUrl ? textOf(given[0]) : null;
  return text !== null && /^\..*\.(ts|mjs)$/.test(text) ? text : null;
}

const textOf = (node: SyntaxNode | null | undefined): string | null =>
  typeof node?.value === 'string' ? node.value : null;
