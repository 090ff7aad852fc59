import { expect, it } from 'vitest';
import type { CabRuns } from '../../../server/core/cab/cab-runs.ts';
import { cabState } from '../../../server/core/cab/cab-state.ts';
import { packRuns, unpackRuns } from '../../../server/core/cab/packed-runs.ts';
import { byHandWith } from './by-hand.ts';

function changed(runs: CabRuns, change: object): CabRuns {
  const side = {
    planned: runs.fuel.planned.map((run) => ({ ...run, ...change })),
    over: runs.fuel.planned.map((run) => ({ id: 'node/x', run: { ...run, ...change } })),
  };
  return { fuel: side, water: side };
}

const throughAFile = (runs: CabRuns): CabRuns => unpackRuns(JSON.parse(JSON.stringify(packRuns(runs))));

it('runs come out of a file as they went in, with all that is not known of their way', () => {
  const span = { fromM: 10.25, toM: 20.5 };
  for (const change of [
    {},
    { sketchy: [{ kind: 'bridge', ...span }] },
    { closed: [span] },
    { uncovered: [span] },
    { onward: null },
  ]) {
    const runs = changed(byHandWith(7.123456789012345), change);
    expect(throughAFile(runs)).toEqual(runs);
  }
});

it('what is kept for washing gets nobody back', () => {
  const runs = changed(byHandWith(10), { unfitL: 6 });
  const litres = { fuel: 100, water: 9 };
  const { water } = cabState(runs, { atM: 40_000, litres, left: false, failed: { fuel: [], water: [] } });
  // 9 l, 4 of them for the way back, and 6 that nobody may drink.
  expect('none' in water ? null : water.back?.arriveL).toBeCloseTo(-1, 9);
  expect('none' in water ? null : water.back?.verdict).toBe('short');
});
