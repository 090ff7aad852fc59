import { expect, it } from 'vitest';
import { killOver } from './faults.ts';
import { KINDS } from './kinds.ts';

/** As many processes are killed here; `npm run faults` kills a thousand. */
const TIMES = 50;

it(`a process that is killed ${TIMES} times leaves all that it acknowledged, and nothing half done`, {
  tags: 'slow',
}, async () => {
  const all = await killOver({ times: TIMES, seed: 20_260_501 });
  expect(all.filter(({ faults }) => faults.length > 0)).toEqual([]);
  for (const kind of KINDS) {
    const ofKind = all.filter((one) => one.kind === kind);
    expect(ofKind.length).toBeGreaterThanOrEqual(Math.floor(TIMES / KINDS.length));
    // Some were in the middle of their work, and had said so.
    expect(ofKind.some(({ words }) => words.length > 1)).toBe(true);
  }
});
