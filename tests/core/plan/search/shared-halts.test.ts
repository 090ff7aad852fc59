import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

describe('a way that has halted at a stop for one commodity', () => {
  it('is not taken for as good as one that has not, while the other may still be halted for there', () => {
    // A town at km 210: half a day's wait for water; at km 212 a quarter for fuel, 5 km off the route. Fuel must be had
    // there: 7 hours, at 10 km/h. Water need not: two cans from km 20 take it to the end.
    const route = bareRoute({
      lengthKm: 310,
      tankL: { fuel: 27, water: 12 },
      startL: { fuel: 45, water: 41 },
      canL: { fuel: 6, water: 7 },
      reserveL: { fuel: 3, water: 2 },
      mostCans: { fuel: 5, water: 5 },
      owned: { fuel: 0, water: 2 },
      waterLPerDay: 3,
      stops: [
        bareStop(20, { offers: 'water', evidence: 'stated' }),
        bareStop(210, { offers: 'water', waitDays: 0.5 }),
        bareStop(22, { evidence: 'stated' }),
        bareStop(212, { evidence: 'stated', detourKm: 5, waitDays: 0.25 }),
      ],
    });
    const solved = solveCarry(questionOf(route), { solver, seconds: 60, clock: () => 0 });
    const aims = solved.status === 'found' ? solved.choice.aims : [];
    expect(aims.find(({ aim }) => aim === 'lost-h')?.value).toBeCloseTo(7, 6);
    expect(aims.find(({ aim }) => aim === 'driving-m')?.value).toBeCloseTo(10_000, 6);
  });
});
