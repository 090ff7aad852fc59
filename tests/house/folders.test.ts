import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from './imports/modules.ts';

/** A folder holds as many files as can be seen at a glance; what is more is split by meaning. */
const MOST_FILES = 15;

/** What a build leaves behind. */
const BUILT = 'web/dist/';

const filesBelow = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(ROOT.length))
    .filter((path) => !path.startsWith(BUILT));

/** The folders that hold more files than they may, and how many. */
function crowdedFolders(files: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const file of files) counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
  return new Map([...counts].filter(([, count]) => count > MOST_FILES));
}

it.each(['server', 'web', 'tests'])(`no folder of %s holds more than ${MOST_FILES} files`, (folder) => {
  const files = filesBelow(folder);
  expect(files.length).toBeGreaterThan(100);
  expect([...crowdedFolders(files)]).toEqual([]);
});

it('files of a folder below are not its own', () => {
  const files = Array.from({ length: MOST_FILES }, (_, index) => `a/${index}.ts`);
  expect([...crowdedFolders([...files, 'a/b/c.ts'])]).toEqual([]);
  expect([...crowdedFolders([...files, 'a/c.ts'])]).toEqual([['a', MOST_FILES + 1]]);
});
