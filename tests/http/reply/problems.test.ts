import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../../server/core/input/problem.ts';
import { PROBLEM_KINDS } from '../../../server/http/reply/problem-reply.ts';

const document = readFileSync(new URL('../../../server/http/PROBLEMS.md', import.meta.url), 'utf8');
const rows = [...document.matchAll(/^\| `([\w-]+)` +\| (\d{3}) +\| ([^|]+) \| ([^|]+) \|$/gm)];

describe('the document of problems', () => {
  it('lists exactly the codes of the program, in its order', () => {
    expect(rows.map((row) => row[1])).toEqual([...PROBLEM_CODES]);
  });

  it('gives each code the status and title that replies have', () => {
    for (const [, code, status, title] of rows) {
      const kind = PROBLEM_KINDS[code as keyof typeof PROBLEM_KINDS];
      expect({ code, status: Number(status), title: title?.trim() }).toEqual({ code, ...kind });
    }
  });

  it('says of each code when it comes', () => {
    for (const row of rows) expect(row[4]?.trim()).toMatch(/^[A-Z`].{15,}\.$/);
  });
});
