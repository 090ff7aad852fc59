import { createContext, runInContext } from 'node:vm';
import { build, type Rolldown } from 'vite';
import { describe, expect, it } from 'vitest';
import { type AnalyseInput, analyse } from '../../../server/core/analyse/analyse.ts';
import { DIESEL, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { ROOT } from './modules.ts';

const ENTRY = 'tests/house/imports/core-entry.ts';

/** The source text of the whole core as one script for a browser, which puts its functions into the global `core`. */
async function bundle(): Promise<{ code: string; missing: string[] }> {
  const result = await build({
    configFile: false,
    root: ROOT,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry: ENTRY, name: 'core', formats: ['iife'] } },
  });
  const [output] = [result].flat() as Rolldown.RolldownOutput[];
  const [chunk] = output?.output ?? [];
  if (chunk === undefined) throw new Error('nothing was bundled');
  // What is built into Node stands for nothing in a browser.
  const missing = chunk.moduleIds.filter((id) => id.includes('browser-external'));
  return { code: chunk.code, missing: [...missing, ...chunk.imports, ...chunk.dynamicImports] };
}

describe('the core in a browser', () => {
  it('needs nothing of Node, and gives the same answer', { tags: 'slow' }, async () => {
    const { code, missing } = await bundle();
    expect(missing).toEqual([]);
    // A fresh context knows the language alone: no process, no Buffer, no require. Every browser has a TextEncoder, too.
    const context = createContext({ TextEncoder }, { codeGeneration: { strings: false, wasm: false } });
    runInContext(code, context);
    const inBrowser = runInContext('core.analyse', context) as (input: AnalyseInput) => unknown;
    const features = [pointFeature('node/1', 640, DIESEL, 2), pointFeature('node/2', 200, TAP, 1)];
    const input = inputOf({ features });
    expect(JSON.stringify(inBrowser(input))).toBe(JSON.stringify(analyse(input)));
    expect(analyse(input)).toMatchObject({ ok: true });
  });
});
