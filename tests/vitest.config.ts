import { defineConfig } from 'vitest/config';

/** What both kinds of test have in common. */
const shared = { testTimeout: 120_000, hookTimeout: 120_000 };

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    reporters: ['default', './tests/helpers/reporter.ts'],
    maxWorkers: 2,
    projects: [
      {
        test: {
          ...shared,
          name: 'code',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**'],
        },
      },
      {
        test: {
          ...shared,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/global-setup.ts'],
          // The pages under test draw maps in software: one at a time, or they starve each other.
          fileParallelism: false,
          // What is waited for comes when it comes: on a machine with much else to do that can be seconds.
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
