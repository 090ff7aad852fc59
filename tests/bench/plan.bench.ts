import type { Commodity, Evidence } from '../../server/contract/common.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { Edge } from '../../server/core/gaps/course/course.ts';
import { drive } from '../../server/core/plan/drive/drive.ts';
import type { Solution } from '../../server/core/plan/model/choice.ts';
import type { SolveOptions } from '../../server/core/plan/model/time.ts';
import type { CarryQuestion } from '../../server/core/plan/question/carry-question.ts';
import { massRoomOf } from '../../server/core/plan/question/mass-room.ts';
import type { CarrySide } from '../../server/core/plan/side/carry-side.ts';
import { solveCarry, solvedByModel } from '../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../server/io/solver.ts';
import { courseOf, endEdge, startEdge } from '../helpers/course.ts';
import type { Bench, BenchGroup, BenchRow } from './measure.ts';
import { median } from './measure.ts';

/** Stops some 60 km apart, each with fuel, water or both, up to 5 km off the route: the vehicle passes several by. */
export const STEP_KM = 60;

export const BENCH_RIG: RigFile = {
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
export function randomOf(seed: number): () => number {
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
    const course = courseOf({ commodity, rigFile: BENCH_RIG, lengthM });
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
  return {
    sides: { fuel: side('fuel'), water: side('water') },
    owned: { fuel: 4, water: 4 },
    room: massRoomOf(BENCH_RIG),
    oneFailure: null,
  };
}

type Solve = typeof solveCarry;

function measured(questions: readonly CarryQuestion[], solve: Solve, options: SolveOptions) {
  const times: number[] = [];
  const outcomes: Solution[] = [];
  for (const question of questions) {
    const start = performance.now();
    const outcome = solve(question, options);
    if (outcome.status === 'found') drive(question.sides, outcome.choice);
    times.push(performance.now() - start);
    outcomes.push(outcome);
  }
  return { times, outcomes };
}

const isProven = (outcome: Solution): boolean =>
  outcome.status === 'none' ||
  (outcome.status === 'found' && outcome.choice.aims.every(({ proven }) => proven));

export const bench: Bench = async (): Promise<BenchGroup> => {
  const solver = await loadSolver();
  const options = { solver, seconds: 10, clock: () => performance.now() / 1000 };
  const questions = (stops: number, seeds: readonly number[]) =>
    seeds.map((seed) => problemWith(stops, seed));
  const sixty = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const small = measured(questions(60, sixty), solveCarry, options);
  // Legs are kept with their question: the solver gets questions of its own.
  const peer = measured(questions(60, sixty), solvedByModel, options);
  const large = measured(questions(150, [1, 2, 3]), solveCarry, options);
  const largest = measured(questions(400, [1]), solveCarry, options);
  const row = (stops: number, who: string, { times, outcomes }: typeof small): BenchRow => ({
    what: `carry plan, ${stops} stops, fuel and water, permitted mass`,
    who,
    medianMs: median(times),
    runs: times.length,
    note: `${outcomes.filter(isProven).length} of ${outcomes.length} with every aim proven, ${outcomes.filter(({ status }) => status === 'found').length} with a plan, ${Math.round(Math.max(...times))} ms at most`,
  });
  const all = [small, large, largest];
  return {
    title: 'Carry plan',
    target:
      'every aim proven, and 60 stops in less than a quarter of the time that HiGHS takes for them by the model',
    met:
      all.every(({ outcomes }) => outcomes.every(isProven)) && median(small.times) < median(peer.times) / 4,
    rows: [
      row(60, 'HiGHS by the model, the same questions in the same run', peer),
      row(60, 'drystage', small),
      row(150, 'drystage', large),
      row(400, 'drystage', largest),
    ],
  };
};
