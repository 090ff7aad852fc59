import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import type { CarryQuestion } from '../../../server/core/plan/question/carry-question.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { courseOf } from '../../helpers/course.ts';
import { KM_PER_DAY, questionOf, rigOf, type SmallRoute, smallRoute } from './by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Litres of the tanks kept for one grade, and a day's use of each. */
interface Grades {
  drinkingTankL: number;
  washingTankL: number;
  drinksL: number;
  washesL: number;
}

const gradesOf = fc.record({
  drinkingTankL: fc.integer({ min: 0, max: 12 }),
  washingTankL: fc.integer({ min: 0, max: 20 }),
  drinksL: fc.integer({ min: 1, max: 5 }),
  washesL: fc.integer({ min: 0, max: 6 }),
});

function gradedRig(route: SmallRoute, { drinkingTankL, washingTankL, drinksL, washesL }: Grades): RigFile {
  const rig = rigOf(route);
  const { litresPerDay: _all, ...water } = rig.water;
  const none = { low: 0, typical: 0, high: 0 };
  const even = (litres: number) => ({ low: litres, typical: litres, high: litres });
  return {
    ...rig,
    water: {
      ...water,
      tanks: [
        { name: 'any', litres: route.tankL.water },
        ...(drinkingTankL === 0
          ? []
          : [{ name: 'drinking', litres: drinkingTankL, grade: 'drinking' as const }]),
        ...(washingTankL === 0 ? [] : [{ name: 'washing', litres: washingTankL, grade: 'washing' as const }]),
      ],
    },
    crew: {
      people: [
        { drinking: even(drinksL), cooking: none, washingUp: none, washing: even(washesL), shower: 0 },
      ],
    },
  };
}

/** Fuel is plenty; water can be had everywhere, all alike. */
function problemWith(route: SmallRoute, grades: Grades): CarryQuestion {
  const plain = questionOf(route);
  const course = courseOf({
    commodity: 'water',
    rigFile: gradedRig(route, grades),
    lengthM: route.lengthKm * 1000,
  });
  return {
    ...plain,
    sides: { ...plain.sides, water: { ...plain.sides.water, course, startL: course.rig.water.drawableL } },
  };
}

/** Fewest cans over every choice of stops, both grades drawn by hand. */
function fewestByBruteForce(route: SmallRoute, grades: Grades, rates: { drinks: number; washes: number }) {
  const stops = [...route.stops].sort((a, b) => a.atKm - b.atKm);
  let best: number | null = null;
  for (let bits = 0; bits < 2 ** stops.length; bits += 1) {
    const places = [
      0,
      ...stops.filter((_, index) => (bits >> index) & 1).map(({ atKm }) => atKm),
      route.lengthKm,
    ];
    for (let cans = 0; cans <= route.mostCans.water; cans += 1) {
      if (best !== null && cans >= best) break;
      const holds = places.slice(1).every((toKm, index) => {
        const days = (toKm - places[index]!) / KM_PER_DAY;
        const full = index > 0 || route.cansAtStart ? cans * route.canL.water : 0;
        const needL = days * (rates.drinks + rates.washes);
        const reserveL = route.reserveL.water + route.shareOfNeed.water * needL;
        const allL = route.tankL.water + grades.drinkingTankL + grades.washingTankL + full;
        // Washing takes what is kept for it, then what serves both.
        const fromAnyL = Math.min(route.tankL.water, Math.max(0, days * rates.washes - grades.washingTankL));
        const drinkableL = allL - grades.washingTankL - fromAnyL - days * rates.drinks;
        return allL - needL >= reserveL - 1e-9 && drinkableL >= reserveL - 1e-9;
      });
      if (holds) best = cans;
    }
  }
  return best;
}

it('with two grades of water the plan has the fewest cans of all choices of stops, and drinking water at each end', {
  tags: 'slow',
}, () => {
  let byDrinking = 0;
  let found = 0;
  fc.assert(
    fc.property(smallRoute(), gradesOf, (drawn, grades) => {
      const route: SmallRoute = {
        ...drawn,
        tankL: { ...drawn.tankL, fuel: 1000 },
        startL: { ...drawn.startL, fuel: 1000 },
        stops: drawn.stops.map((stop) => ({ ...stop, detourKm: 0, offers: 'water', evidence: 'stated' })),
      };
      const problem = problemWith(route, grades);
      const store = problem.sides.water.course.rig.water.grades!;
      const rates = { drinks: store.drinkingPerDay.high, washes: store.washingPerDay.high };
      const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
      const cans = solved.status === 'found' ? solved.choice.cans.water : null;
      expect(cans).toBe(fewestByBruteForce(route, grades, rates));
      if (solved.status !== 'found') return;
      found += 1;
      for (const { figures } of drive(problem.sides, solved.choice).water) {
        expect(figures.grades!.drinking.marginL).toBeGreaterThanOrEqual(-1e-6);
        if (figures.grades!.drinking.marginL < figures.marginL - 1e-6) byDrinking += 1;
      }
    }),
    { numRuns: 300, seed: 20_261_127 },
  );
  expect(found).toBeGreaterThan(80);
  expect(byDrinking).toBeGreaterThan(25);
});
