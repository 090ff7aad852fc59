import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fuzz } from './fuzz.ts';

it('no changed file ends the program, holds it up, fills memory or is taken as whole', {
  tags: 'slow',
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-fuzz-findings-'));
  const { findings, tried } = await fuzz({ seconds: 15, seed: 1, children: 1, findings: folder });
  if (findings.length === 0) rmSync(folder, { recursive: true });
  expect(findings).toEqual([]);
  expect(tried).toBeGreaterThan(20);
});
