import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { TEST_MS } from '../helpers/patience.ts';
import { HELD_BY, TEST_ORDER } from './settings.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const code = JSON.parse(readFileSync(process.env.MUTATION_CODE ?? '', 'utf8')) as Record<string, string>;
const done = JSON.parse(process.env.MUTATION_DONE ?? '[]') as string[];

/** Hands out the code with its mutants in the place of the files. */
const switched: Plugin = {
  name: 'switched-code',
  enforce: 'pre',
  load: (id) => code[relative(root, id)],
};

/** The lowest folders first, see TEST_ORDER; in a folder properties last. */
class LowestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): string => {
      const path = relative(root, moduleId);
      const place = TEST_ORDER.indexOf(path.split('/')[2] ?? '');
      const last = path.includes('propert') ? 1 : 0;
      return `${String(place < 0 ? TEST_ORDER.length : place).padStart(2, '0')} ${last} ${path}`;
    };
    return [...files].sort((a, b) => (rank(a) < rank(b) ? -1 : 1));
  }
}

/** The tests that mutants are tried by; started by run.ts. */
export default defineConfig({
  root,
  plugins: [switched],
  test: {
    include: HELD_BY.map(([, tests]) => `${tests}**/*.test.ts`),
    exclude: done,
    isolate: false,
    maxWorkers: 2,
    sequence: { sequencer: LowestFirst },
    tags: [{ name: 'slow' }],
    testTimeout: TEST_MS,
    hookTimeout: TEST_MS,
    runner: fileURLToPath(new URL('runner.ts', import.meta.url)),
    reporters: ['dot'],
  },
});
