import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsAt, runOf } from '../../../../server/core/plan/drive/run.ts';
import { bestL, type Mishap, worstPlace } from '../../../../server/core/plan/what-if/mishap.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { stopFailsRows } from '../by-hand/contracted.ts';
import { smallBasis } from './small-basis.ts';

const runs = { numRuns: 300, seed: 20_261_125 };

describe('what goes wrong', () => {
  it('is never better for a stop that fails: the margin is at most that on reaching it', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        for (const row of stopFailsRows(basis)) {
          const into = basis.sides[row.commodity].stretches.find(
            ({ to }) => to.kind === 'passing' && to.id === row.id && to.atM === row.atKm! * 1000,
          )!;
          expect(row.marginL).toBeLessThanOrEqual(runOf(into).marginL + 1e-9);
        }
      }),
      runs,
    );
  });

  it('strikes where no sampled place is worse', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(smallBasis(), fc.integer({ min: 2, max: 40 }), ({ basis }, largest) => {
        const mishaps: Mishap[] = [
          { lostL: ({ tankL }) => Math.max(0, Math.min(largest, tankL)) },
          { lostL: ({ tankL }) => Math.max(0, tankL) },
          { lostL: () => 5, lostBackL: () => 7 },
        ];
        for (const commodity of COMMODITIES) {
          const driven = basis.sides[commodity].stretches.map(runOf);
          for (const mishap of mishaps) {
            const worst = worstPlace(driven, mishap)!;
            for (const run of driven) {
              const { from, to } = run.stretch;
              for (let step = 0; step <= 40; step += 1) {
                const atM = from.atM + (step / 40) * (to.atM - from.atM);
                for (const point of pointsAt(run, atM)) {
                  const onL = run.arriveL - mishap.lostL(point);
                  const backL =
                    point.backL === null
                      ? Number.NEGATIVE_INFINITY
                      : point.litres - point.backL - (mishap.lostBackL ?? mishap.lostL)(point);
                  expect(bestL(worst)).toBeLessThanOrEqual(Math.max(onL, backL) + 1e-6);
                }
              }
            }
          }
        }
      }),
      { ...runs, numRuns: 100 },
    );
  });
});
