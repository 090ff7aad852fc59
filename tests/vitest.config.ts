import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { STATE_MS, TEST_MS } from './helpers/patience.ts';

/** What all kinds of test have in common. */
const shared = {
  // No test writes into the folder or the database of whoever runs it.
  env: { DRYSTAGE_DATA: join(tmpdir(), `drystage-tests-${process.pid}`), DATABASE_URL: '' },
  testTimeout: TEST_MS,
  hookTimeout: TEST_MS,
  expect: { poll: { timeout: STATE_MS } },
};

/** Tests that change what all files of a thread share, or watch it: the memory in use, the environment, the clock. */
const APART = [
  'tests/cli/kept.test.ts',
  'tests/io/osm/memory.test.ts',
  'tests/web/api/api.test.ts',
  'tests/web/state/planner.test.ts',
  'tests/web/state/open-plan.test.ts',
];

const root = new URL('..', import.meta.url).pathname;
// A file that moves would run beside the others, and nobody would know.
for (const file of APART)
  if (!existsSync(join(root, file))) throw new Error(`${file} is not there: see APART`);

export default defineConfig({
  root,
  test: {
    reporters: ['default', './tests/helpers/reporter.ts'],
    maxWorkers: 2,
    tags: [
      {
        name: 'slow',
        description:
          'More than some half a second of processor time, with the workers and programs that it starts.',
      },
    ],
    projects: [
      {
        test: {
          ...shared,
          name: 'code',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**', 'tests/store/**', ...APART],
          // Every file finds the modules already loaded: that is a third of the whole time.
          isolate: false,
        },
      },
      { test: { ...shared, name: 'apart', include: APART } },
      {
        test: {
          ...shared,
          name: 'store',
          include: ['tests/store/**/*.test.ts'],
          // Whoever runs other tests alone waits for no database.
          globalSetup: ['tests/store/postgres/postgres-server.ts'],
          isolate: false,
        },
      },
      {
        test: {
          ...shared,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/global-setup.ts'],
          isolate: false,
          // After all others: the pages under test draw maps in software, and starve otherwise.
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
