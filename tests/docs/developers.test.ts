import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Folders that a path of the document may start from. */
const FROM = ['', 'server', 'server/core'];
const ENDS = ['', '.ts', '.tsx', '.mjs'];
/** Such as `core/gaps/course.ts`: two names with a slash, no flag, no address, no pattern, nothing for a reader to fill in. */
const PATH = /^[a-z][\w.-]*(?:\/[\w.-]+)+\/?$/;

const pathsIn = (text: string): string[] =>
  [...text.matchAll(/`([^`\n]+)`/g)].flatMap(([, code = '']) => (PATH.test(code) ? [code] : []));

const exists = (path: string): boolean =>
  FROM.some((from) => ENDS.some((end) => existsSync(join(ROOT, from, `${path}${end}`))));

describe('the documents for developers', () => {
  test.each([
    ['DEVELOPERS.md', 30],
    ['.github/SECURITY.md', 10],
  ])('%s names no file or folder that is not there', (name, fewest) => {
    const paths = pathsIn(readFileSync(join(ROOT, name), 'utf8'));
    expect(paths.length).toBeGreaterThan(fewest);
    expect(paths.filter((path) => !exists(path))).toEqual([]);
  });

  test('would be told of one that is not', () => {
    expect(pathsIn('a `plan/question/leg` and `npm run x`').filter((path) => !exists(path))).toEqual([
      'plan/question/leg',
    ]);
  });
});
