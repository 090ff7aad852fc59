import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A server of two files, started in a process of its own. */
let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drystage-source-'));
  mkdirSync(join(folder, 'server/low'), { recursive: true });
  mkdirSync(join(folder, 'node_modules'));
  for (const name of ['esbuild', 'tsx'])
    symlinkSync(join(ROOT, 'node_modules', name), join(folder, 'node_modules', name));
  cpSync(join(ROOT, 'server/start/from-source.mjs'), join(folder, 'server/start/from-source.mjs'));
  writeFileSync(join(folder, 'package-lock.json'), '{}');
  writeFileSync(
    join(folder, 'server/start.ts'),
    "import { litres, place } from './low/litres.ts';\nexport const text: string = [litres, place].join(' ');\n",
  );
  writeLitres(20);
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

const writeLitres = (litres: number): void =>
  writeFileSync(
    join(folder, 'server/low/litres.ts'),
    `export const litres: number = ${litres};\nexport const place = import.meta.url;\n`,
  );

function started(): string {
  const text = `import { load } from '${folder}/server/start/from-source.mjs';
    console.log((await load('start.ts')).text);`;
  return execFileSync(process.execPath, ['--input-type=module', '-e', text], { encoding: 'utf8' }).trim();
}

const bundles = (): string[] => readdirSync(join(folder, 'node_modules/.cache/drystage'));
const said = (litres: number): string => `${litres} file://${folder}/server/low/litres.ts`;

describe('TypeScript from source', () => {
  it('is bundled once, each file knowing its own place', { tags: 'slow' }, () => {
    expect(started()).toBe(said(20));
    const first = bundles();
    expect(first).toHaveLength(1);
    expect(started()).toBe(said(20));
    expect(bundles()).toEqual(first);
  });

  it('is bundled anew after any of its files has changed, and the old bundle goes', { tags: 'slow' }, () => {
    expect(started()).toBe(said(20));
    const first = bundles();
    writeLitres(60);
    expect(started()).toBe(said(60));
    expect(bundles()).toHaveLength(1);
    expect(bundles()).not.toEqual(first);
  });

  it('is taken as it is where no bundle can be kept', { tags: 'slow' }, () => {
    // A file where the folder should be: that hinders whoever runs the tests, root too.
    writeFileSync(join(folder, 'node_modules/.cache'), '');
    chmodSync(join(folder, 'node_modules/.cache'), 0o400);
    expect(started()).toBe(said(20));
  });
});
