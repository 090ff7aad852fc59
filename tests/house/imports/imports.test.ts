import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { folderGraph, type Graph, knots, wayRound } from './graph.ts';
import { wrongArrows } from './layers.ts';
import { graphOf, moduleOf, ROOT, readModules } from './modules.ts';

const modules = readModules(['server', 'web']);
const files = graphOf(modules);
const folders = folderGraph(files);

const roundAbout = (graph: Graph) => knots(graph).map((knot) => wayRound(graph, knot).join(' -> '));

describe('the imports of server and web', () => {
  it('are read from all of them', () => {
    expect(modules.size).toBeGreaterThan(500);
    expect(files.get('server/cli.ts')).toContain('server/command.ts');
  });

  it('make no cycle of files', () => {
    expect(roundAbout(files)).toEqual([]);
  });

  it('make no cycle of folders', () => {
    expect(roundAbout(folders)).toEqual([]);
  });

  it('keep to the layers', () => {
    expect(wrongArrows(modules)).toEqual([]);
  });

  it('of core are compiled without the types of Node and the browser', () => {
    const { compilerOptions } = JSON.parse(readFileSync(`${ROOT}/server/core/tsconfig.json`, 'utf8'));
    const { compilerOptions: shared } = JSON.parse(readFileSync(`${ROOT}/tsconfig.json`, 'utf8'));
    const { lib, types } = { ...shared, ...compilerOptions };
    expect({ lib, types }).toEqual({ lib: ['ES2023'], types: ['geojson'] });
  });
});

const graph = (edges: Record<string, string[]>): Graph =>
  new Map(Object.entries(edges).map(([node, targets]) => [node, new Set(targets)]));

describe('the check of imports', () => {
  it('finds a cycle of two, one of three, and two apart', () => {
    expect(roundAbout(graph({ a: ['b'], b: ['a'] }))).toEqual(['a -> b -> a']);
    expect(roundAbout(graph({ a: ['b'], b: ['c'], c: ['b', 'd'], d: ['b'] }))).toEqual(['b -> c -> b']);
    expect(knots(graph({ a: ['b'], b: ['a', 'c'], c: ['d'], d: ['c'] }))).toHaveLength(2);
  });

  it('finds none where all arrows point one way', () => {
    expect(knots(graph({ a: ['b', 'c', 'd'], b: ['d'], c: ['b', 'd'], d: [] }))).toEqual([]);
  });

  it('finds a cycle of folders where no files make one', () => {
    const edges = graph({ 'x/a.ts': ['y/b.ts'], 'y/b.ts': [], 'y/c.ts': ['x/d.ts'], 'x/d.ts': [] });
    expect(knots(edges)).toEqual([]);
    expect(roundAbout(folderGraph(edges))).toEqual(['x -> y -> x']);
  });

  it('sees every way to import', () => {
    const source = [
      "import { a } from './a.ts';",
      "import type { B } from '../b.ts';",
      "import './c.css';",
      "import land from './land.json?url';",
      "import { readFileSync } from 'node:fs';",
      "export * from './d.ts';",
      "export { e } from './e.ts';",
      "const f = await import('./f.ts');",
      "type G = import('./g.ts').G;",
      "new Worker(new URL('./h.mjs', import.meta.url));",
      '// import "./none.ts"',
      'const text = "import \'./none.ts\'";',
    ].join('\n');
    const { files, packages } = moduleOf('web/map/x.ts', source);
    expect([...files].sort()).toEqual(
      ['a.ts', 'c.css', 'd.ts', 'e.ts', 'f.ts', 'g.ts', 'h.mjs', 'land.json']
        .map((name) => `web/map/${name}`)
        .concat('web/b.ts')
        .sort(),
    );
    expect([...packages]).toEqual(['node:fs']);
  });

  it.each([
    [
      'server/core/a.ts',
      "import '../app/b.ts';",
      'server/core/a.ts -> server/app/b.ts: server/core/ may not import it',
    ],
    [
      'server/core/a.ts',
      "import '../words/b.ts';",
      'server/core/a.ts -> server/words/b.ts: server/core/ may not import it',
    ],
    ['server/core/a.ts', "import 'node:fs';", 'server/core/a.ts -> node:fs: server/core/ may not import it'],
    ['server/core/a.ts', "import 'buffer';", 'server/core/a.ts -> buffer: server/core/ may not import it'],
    [
      'server/app/a.ts',
      "import '../io/b.ts';",
      'server/app/a.ts -> server/io/b.ts: server/app/ may not import it',
    ],
    [
      'server/io/a.ts',
      "import '../app/b.ts';",
      'server/io/a.ts -> server/app/b.ts: server/io/ may not import it',
    ],
    [
      'server/io/a.ts',
      "import '../http/b.ts';",
      'server/io/a.ts -> server/http/b.ts: server/io/ may not import it',
    ],
    [
      'server/work/a.ts',
      "import '../http/b.ts';",
      'server/work/a.ts -> server/http/b.ts: server/work/ may not import it',
    ],
    ['web/a.ts', "import '../server/core/b.ts';", 'web/a.ts -> server/core/b.ts: web/ may not import it'],
    ['server/core/a.ts', "import '../contract/b.ts'; import './c.ts'; import 'flatbush';", null],
    ['server/io/a.ts', "import '../app/ports.ts'; import 'node:fs';", null],
    ['server/cli.ts', "import './http/b.ts';", null],
    ['elsewhere/a.ts', '', 'elsewhere/a.ts lies in no layer'],
  ])('%s with %s: %s', (path, source, line) => {
    expect(wrongArrows(new Map([[path, moduleOf(path, source)]]))).toEqual(line === null ? [] : [line]);
  });
});
