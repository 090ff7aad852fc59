import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { massRoomOf } from '../../../server/core/plan/question/mass-room.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { failuresOf } from '../plan/by-hand/contracted.ts';
import { questionOf, rigOf, type SmallRoute, smallRoute } from '../plan/by-hand/small-routes.ts';
import { heldBasis } from '../plan/what-if/solved-basis.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** A rig whose permitted mass leaves `leftKg` for cans with both tanks full. */
function rigWith(route: SmallRoute, leftKg: number): RigFile {
  const rig = rigOf(route);
  const totalKg = 1000 + route.tankL.fuel * 0.845 + route.tankL.water + leftKg;
  return {
    ...rig,
    vehicle: {
      kerbKg: 1000,
      includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
      people: [{ kg: 75 }],
      permitted: { totalKg },
    },
  };
}

describe('a plan against one failure within a permitted mass', () => {
  it('bears every failure with what is really aboard', { tags: 'slow' }, () => {
    let found = 0;
    fc.assert(
      fc.property(
        smallRoute(5),
        fc.integer({ min: -15, max: 40 }),
        fc.boolean(),
        (route, leftKg, spendReserve) => {
          const room = massRoomOf(rigWith(route, leftKg));
          const problem = { ...questionOf(route), room, oneFailure: { spendReserve } };
          const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
          if (solved.status !== 'found') return;
          found += 1;
          const { held } = heldBasis(route, solved.choice);
          // Throws where a failure is not borne.
          failuresOf(held, spendReserve);
        },
      ),
      { numRuns: 400, seed: 20_270_108 },
    );
    expect(found).toBeGreaterThan(20);
  });
});
