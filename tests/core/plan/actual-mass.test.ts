import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { type AnalyseInput, type Reckoned, reckonTrip } from '../../../server/core/analyse/analyse.ts';
import { massWithFullTanks } from '../../../server/core/mass/mass-at.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import { type DrivenPlan, driveActual } from '../../../server/core/plan/drive/driven-plan.ts';
import { loadsAlong } from '../../../server/core/plan/drive/loads.ts';
import { massesAlong } from '../../../server/core/plan/drive/masses.ts';
import { runOf } from '../../../server/core/plan/drive/run.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { questionOf } from '../../../server/core/plan/question/question-of.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { runsWith } from '../../../server/core/plan/what-if/changed/changed-runs.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

function reckoned(input: AnalyseInput): Reckoned {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

function heldPlan(trip: Reckoned): DrivenPlan | null {
  const { question: problem } = questionOf(trip);
  const solved = solveCarry(problem, { solver, seconds: 30, clock: () => 0 });
  return solved.status === 'found' ? driveActual(trip, problem, solved.choice) : null;
}

interface Facts {
  tankL: number;
  waterTankL: number;
  waterPerDay: { low: number; typical: number; high: number };
  cans: { fuel: number; water: number };
  percentPer100Kg: number;
}

/** 10 l/100 km, 1,000 km a day; the rate was seen with full tanks and the owned cans empty. */
function rigWith({ tankL, waterTankL, waterPerDay, cans, percentPer100Kg }: Facts): RigFile {
  const bare: RigFile = {
    fuel: {
      kind: 'diesel',
      litresPer100Km: { low: 10, typical: 10, high: 10 },
      tanks: [{ name: 'main', litres: tankL }],
      cans: { litres: 20, owned: cans.fuel, emptyKg: 4 },
      reserve: { litres: 2 },
    },
    water: {
      litresPerDay: waterPerDay,
      tanks: [{ name: 'main', litres: waterTankL }],
      cans: { litres: 10, owned: cans.water, emptyKg: 1 },
      reserve: { litres: 0 },
    },
    pace: { hoursPerDay: 10, kmPerHour: { slow: 100, typical: 100, fast: 100 } },
    vehicle: { kerbKg: 2000, includes: { fuelPercent: 0, driverKg: 75 } },
  };
  const observed = { surface: 'unknown' as const, massKg: massWithFullTanks(bare)! };
  return { ...bare, fuel: { ...bare.fuel, observed, loadPercentPer100Kg: percentPer100Kg } };
}

/** 600 km, a tank of 50 l and a can of 20 l; a quarter of a litre of water goes in the 6 h of the way. */
const WORKED = inputOf({
  document: equatorDocument(600),
  rig: rigWith({
    tankL: 50,
    waterTankL: 10,
    waterPerDay: { low: 1, typical: 1, high: 1 },
    cans: { fuel: 1, water: 0 },
    percentPer100Kg: 10,
  }),
});

describe('a plan driven at the mass that it has', () => {
  it('uses less as it gets lighter, and once the can is poured no more than was seen', () => {
    const trip = reckoned(WORKED);
    const { legs: driven, load, question: problem } = heldPlan(trip)!;
    const [leg] = driven.fuel;
    // By hand: from each 50 km to the next at the mass that is left of the can's 20 l of 0.845 kg (F1), 10 % for 100 kg.
    let usedL = 0;
    let pourM = 0;
    const expected: number[] = [];
    for (let km = 0; km < 200; km += 50) {
      const factor = 1 + 0.001 * (20 * 0.845 - usedL * 0.845 - km / 100 / 24);
      expected.push(factor);
      const stepL = 5 * factor;
      if (usedL + stepL > 20) pourM = km * 1000 + ((20 - usedL) / stepL) * 50_000;
      usedL += stepL;
    }
    expect(expected[0]).toBeCloseTo(1.0169, 9);
    expect(leg!.poursM[0]).toBeCloseTo(pourM, 0);
    expect(pourM).toBeLessThan(200_000);
    const perKm = (fromKm: number, toKm: number) => {
      const totalAt = (km: number) => {
        const level = leg!.levels.filter(({ atM }) => atM === km * 1000)[0]!;
        return level.tankL + level.cansL.reduce((sum, litres) => sum + litres, 0);
      };
      return (totalAt(fromKm) - totalAt(toKm)) / (toKm - fromKm);
    };
    expected.slice(0, 3).forEach((factor, index) => {
      expect(perKm(index * 50, index * 50 + 50)).toBeCloseTo(0.1 * factor, 6);
    });
    // Poured, the tank is just full, and some water is gone.
    expect(perKm(200, 250)).toBeCloseTo(0.1, 9);
    const needL =
      5 * (expected[0]! + expected[1]! + expected[2]!) + (pourM / 1e6 - 0.15) * 100 * expected[3]!;
    expect(leg!.figures.needL).toBeCloseTo(needL + (600_000 - pourM) / 1e4, 4);
    expect(problem.sides.fuel.course.off.litres).toBeCloseTo(0.0001 * 1.0169, 9);
    expect(load.along[0]!.moreKg).toBeCloseTo(16.9, 9);
  });

  it('has settled: another round moves no piece by 20 m and no level by a millilitre', () => {
    const trip = reckoned(WORKED);
    const { question: problem, legs: driven, choice, load } = heldPlan(trip)!;
    const again = loadsAlong(WORKED.rig, choice.cans, problem.sides, driven);
    again.forEach(({ moreKg, fromM }, index) => {
      expect(moreKg).toBeCloseTo(load.along[index]!.moreKg, 2);
      expect(Math.abs(fromM - load.along[index]!.fromM)).toBeLessThan(20);
    });
    const course = trip.fuelWithLoads({ ...load, along: again });
    const next = drive({ ...problem.sides, fuel: { ...problem.sides.fuel, course } }, choice);
    expect(next.fuel[0]!.figures.arriveL).toBeCloseTo(driven.fuel[0]!.figures.arriveL, 3);
  });

  it('is driven as before where the rig tells no masses', () => {
    const { vehicle: _vehicle, ...rig } = WORKED.rig;
    const trip = reckoned({ ...WORKED, rig });
    const { question: problem, legs: driven, load } = heldPlan(trip)!;
    expect(problem.sides.fuel.course).toBe(trip.sides.fuel.course);
    expect(load.along).toEqual([]);
    expect(driven.fuel[0]!.figures.needL).toBeCloseTo(60, 6);
  });

  it('takes the water that may still be aboard for aboard, when less of it is used than planned', () => {
    const low = (litres: number) => {
      const rig = rigWith({
        tankL: 90,
        waterTankL: 40,
        waterPerDay: { low: litres, typical: 20, high: 20 },
        cans: { fuel: 0, water: 0 },
        percentPer100Kg: 10,
      });
      return heldPlan(reckoned({ ...WORKED, rig }))!.load.along.find(({ fromM }) => fromM === 550_000)!;
    };
    // At km 550 55 l of fuel are gone, and of water what 5.5 h take of 20 l a day, or half of that.
    expect(low(20).moreKg).toBeCloseTo(-55 * 0.845 - (20 * 5.5) / 24, 6);
    expect(low(10).moreKg).toBeCloseTo(-55 * 0.845 - (10 * 5.5) / 24, 6);
  });

  it('takes what was not used before a supply that gives little on from there', () => {
    const bare = rigWith({
      tankL: 200,
      waterTankL: 40,
      waterPerDay: { low: 40, typical: 80, high: 80 },
      cans: { fuel: 0, water: 0 },
      percentPer100Kg: 10,
    });
    const rig = { ...bare, water: { ...bare.water, reserve: { litres: 10 } } };
    const { trip, ...rest } = inputOf({
      document: equatorDocument(1000),
      rig,
      features: [pointFeature('node/1', 600, TAP)],
    });
    const asks = [{ id: 'node/1', mostLitres: { water: 15 } }];
    const held = heldPlan(reckoned({ ...rest, trip: { ...trip, plan: { stops: asks } } }))!;
    // Planned: 6 h to the tap take 20 of 40 l, 15 l are had there; 4 h on take 13.3 and leave the reserve of 10. Of half
    // the use 30 l arrive, and the tank takes 10 l.
    const departL = held.legs.water.map(({ figures }) => figures.departL);
    expect(departL).toEqual([40, expect.closeTo(35, 9)]);
    const after = held.load.along.findLast(({ fromM }) => Math.abs(fromM - 600_000) < 1)!;
    expect(after.moreKg).toBeCloseTo(-60 * 0.845, 3);
  });

  it('never uses more than with the heaviest, and is nowhere reckoned lighter than it is', {
    tags: 'slow',
  }, () => {
    const stop = fc.record({
      // Litres of water to be had there at the most; 0: as many as are wanted.
      mostL: fc.constantFrom(0, 0, 15, 30),
      km: fc.integer({ min: 20, max: 1480 }),
      offKm: fc.constantFrom(0, 0, 1, 3),
      what: fc.constantFrom('fuel' as const, 'water' as const, 'both' as const),
    });
    let found = 0;
    let lighter = 0;
    fc.assert(
      fc.property(
        fc.array(stop, { minLength: 2, maxLength: 7 }),
        fc.record({ tankL: fc.integer({ min: 40, max: 110 }), waterTankL: fc.integer({ min: 20, max: 60 }) }),
        fc.record({ fuel: fc.integer({ min: 0, max: 4 }), water: fc.integer({ min: 0, max: 4 }) }),
        fc.integer({ min: 0, max: 10 }),
        fc.integer({ min: 5, max: 15 }),
        (stops, tanks, cans, percentPer100Kg, low) => {
          const rig = rigWith({
            ...tanks,
            waterPerDay: { low, typical: 15, high: 15 },
            cans,
            percentPer100Kg,
          });
          const features = stops.flatMap(({ km, offKm, what }, index) => [
            ...(what === 'water' ? [] : [pointFeature(`node/${index}1`, km, DIESEL, offKm)]),
            ...(what === 'fuel' ? [] : [pointFeature(`node/${index}2`, km, TAP, offKm)]),
          ]);
          const asks = stops.flatMap(({ mostL }, index) =>
            mostL === 0 ? [] : [{ id: `node/${index}2`, mostLitres: { water: mostL } }],
          );
          const plain = inputOf({ document: equatorDocument(1500, 5), rig, features });
          const trip = reckoned({ ...plain, trip: { ...plain.trip, plan: { stops: asks } } });
          const held = heldPlan(trip);
          if (held === null) return;
          found += 1;
          const { choice, legs: driven, load, heaviest } = held;
          const heavy = drive(heaviest, choice);
          for (const commodity of COMMODITIES)
            driven[commodity].forEach(({ figures }, index) => {
              const mostL = heavy[commodity][index]!.figures.needL;
              expect(figures.needL).toBeLessThanOrEqual(mostL + 1e-9);
              if (figures.needL < mostL - 0.1) lighter += 1;
            });
          const fullKg = massWithFullTanks(trip.analysis.rig)!;
          // As planned, and with the least water used that the rig tells.
          const { rig: settled, trip: told } = trip.analysis;
          const leastUsed = {
            ...settled,
            water: { ...settled.water, litresPerDay: { low, typical: low, high: low } },
          };
          const water = {
            ...held.question.sides.water,
            course: trip.coursesWith(leastUsed, told, load).water,
          };
          const wetter = drive({ ...held.question.sides, water }, choice);
          for (const { atM, totalKg } of [driven, wetter].flatMap(
            (each) => massesAlong(settled, choice.cans, each)!.levels,
          )) {
            const there = load.along.filter(({ fromM, toM }) => fromM <= atM && atM <= toM);
            const mostKg = Math.max(...there.map(({ moreKg }) => moreKg));
            expect(totalKg - fullKg).toBeLessThanOrEqual(mostKg + 1e-3);
            expect(mostKg).toBeLessThanOrEqual(load.mostKg + 1e-9);
          }
          // What-ifs go on from the same drive: with nothing changed they come to the same.
          const basis = basisOf(trip, held);
          const runs = runsWith(trip, basis, { rig: trip.analysis.rig, trip: trip.analysis.trip });
          for (const commodity of COMMODITIES)
            driven[commodity].forEach(({ marginL }, index) => {
              expect(runs[commodity][index]!.marginL).toBeCloseTo(marginL, 9);
              expect(runOf(basis.sides[commodity].stretches[index]!).marginL).toBeCloseTo(marginL, 9);
            });
        },
      ),
      { numRuns: 120, seed: 20_270_102 },
    );
    expect(found).toBeGreaterThan(30);
    expect(lighter).toBeGreaterThan(30);
  });
});
