import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { BROKEN_RULES } from './broken-rules.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const table = readFileSync(new URL('./RULES.md', import.meta.url), 'utf8');

describe('the table of rules', () => {
  test.each(BROKEN_RULES)(
    '$group: "$rule" can still be broken where the list says, and has a test in the table',
    ({ rule, file, find }) => {
      expect(readFileSync(`${root}${file}`, 'utf8').split(find)).toHaveLength(2);
      const row = table.split('\n').find((line) => line.includes(`| ${rule} |`));
      expect(row).toBeDefined();
      expect(row).toMatch(/\.test\.ts: /);
    },
  );
});
