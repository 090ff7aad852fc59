import type { Commodity, Evidence } from '../../server/contract/common.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { Edge } from '../../server/core/gaps/course.ts';
import { drive } from '../../server/core/plan/drive/drive.ts';
import type { Solution } from '../../server/core/plan/model/choice.ts';
import type { MipSolver } from '../../server/core/plan/model/mip.ts';
import type { CarryQuestion } from '../../server/core/plan/question/carry-question.ts';
import { massRoomOf } from '../../server/core/plan/question/mass-room.ts';
import type { CarrySide } from '../../server/core/plan/side/carry-side.ts';
import { solveCarry } from '../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../server/io/solver.ts';
import { courseOf, endEdge, startEdge } from '../helpers/course.ts';
import type { Bench, BenchGroup, BenchRow } from './measure.ts';
import { median } from './measure.ts';

/** Stops some 60 km apart, each with fuel, water or both, up to 5 km off the route: the vehicle passes several by. */
const STEP_KM = 60;

const RIG: RigFile = {
  fuel: {
    kind: 'diesel',
    litresPer100Km: { low: 14, typical: 15.5, high: 17 },
    tanks: [{ name: 'main', litres: 90, unusableLitres: 3 }],
    cans: { litres: 20, owned: 4, emptyKg: 4.7 },
    reserve: { km: 100, shareOfNeed: 0.1 },
  },
  water: {
    litresPerDay: { low: 11, typical: 14, high: 18 },
    tanks: [{ name: 'under floor', litres: 50 }],
    cans: { litres: 20, owned: 4, emptyKg: 1.8 },
    reserve: { days: 1 },
  },
  pace: { hoursPerDay: 7, kmPerHour: { slow: 35, typical: 45, fast: 60 } },
  // So near to the limit that not all cans can be full at once.
  vehicle: { kerbKg: 2400, permitted: { totalKg: 2640 } },
};

/** A seeded generator (mulberry32), so that every run solves the same models. */
function randomOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function problemWith(stops: number, seed: number): CarryQuestion {
  const random = randomOf(seed);
  const lengthM = (stops + 1) * STEP_KM * 1000;
  const edges: Record<Commodity, Edge[]> = { fuel: [startEdge], water: [startEdge] };
  for (let stop = 1; stop <= stops; stop += 1) {
    const atM = Math.round((stop + random() * 0.8 - 0.4) * STEP_KM * 1000);
    const detourM = random() < 0.4 ? 0 : Math.round(random() * 5000);
    const offers = random();
    const evidence: Evidence = random() < 0.4 ? 'implied' : 'stated';
    const edge: Edge = { kind: 'passing', id: `node/${stop}`, name: null, atM, detourM, evidence };
    if (offers < 0.7) edges.fuel.push(edge);
    if (offers > 0.3) edges.water.push(edge);
  }
  const side = (commodity: Commodity): CarrySide => {
    const course = courseOf({ commodity, rigFile: RIG, lengthM });
    return {
      commodity,
      course,
      edges: [...edges[commodity], endEdge(lengthM)],
      startL: course.rig[commodity].drawableL,
      cansAtStart: true,
      canL: 20,
      cansDrinkable: true,
      mostCans: 4,
    };
  };
  return { sides: { fuel: side('fuel'), water: side('water') }, room: massRoomOf(RIG), oneFailure: null };
}

function measured(stops: number, seeds: readonly number[], seconds: number, solver: MipSolver) {
  const times: number[] = [];
  const bare: number[] = [];
  const outcomes: Solution[] = [];
  for (const seed of seeds) {
    const problem = problemWith(stops, seed);
    let solvingMs = 0;
    const timed: MipSolver = (...asked) => {
      const begin = performance.now();
      const answer = solver(...asked);
      solvingMs += performance.now() - begin;
      return answer;
    };
    const start = performance.now();
    const clock = () => performance.now() / 1000;
    const outcome = solveCarry(problem, { solver: timed, seconds, clock });
    if (outcome.status === 'found') drive(problem.sides, outcome.choice);
    times.push(performance.now() - start);
    bare.push(solvingMs);
    outcomes.push(outcome);
  }
  return { times, bare, outcomes };
}

const isProven = (outcome: Solution): boolean =>
  outcome.status === 'none' ||
  (outcome.status === 'found' && outcome.choice.aims.every(({ proven }) => proven));

export const bench: Bench = async (): Promise<BenchGroup> => {
  const solver = await loadSolver();
  const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const small = measured(60, seeds, 10, solver);
  const large = measured(150, seeds.slice(0, 3), 5, solver);
  const rowOf = (stops: number, { times, outcomes }: typeof small): BenchRow => ({
    what: `carry plan, ${stops} stops, fuel and water, permitted mass`,
    who: 'drystage with HiGHS',
    medianMs: median(times),
    runs: times.length,
    note: `${outcomes.filter(isProven).length} of ${outcomes.length} with every aim proven, ${outcomes.filter(({ status }) => status === 'found').length} with a plan, ${Math.round(Math.max(...times))} ms at most`,
  });
  const bareRow = (stops: number, { bare }: typeof small): BenchRow => ({
    what: `carry plan, ${stops} stops, fuel and water, permitted mass`,
    who: 'bare HiGHS on the same models, in the same run',
    medianMs: median(bare),
    runs: bare.length,
    note: 'without making the models and driving the plans',
  });
  const told = large.outcomes.every(({ status }) => status !== 'out-of-time');
  return {
    title: 'Carry plan',
    target: '60 stops within 800 ms (median), every aim proven; 150 stops within 5 s, proven or the gap told',
    met:
      median(small.times) < 800 && small.outcomes.every(isProven) && told && Math.max(...large.times) < 5_500,
    rows: [bareRow(60, small), rowOf(60, small), bareRow(150, large), rowOf(150, large)],
  };
};
