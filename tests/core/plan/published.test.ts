import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import type { Plan } from '../../../server/contract/plan.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { type AnalyseInput, reckonTrip } from '../../../server/core/analyse/analyse.ts';
import { evenProfile } from '../../../server/core/gaps/course/profile.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import { drive } from '../../../server/core/plan/drive/drive.ts';
import { turnBacksOf } from '../../../server/core/plan/drive/turn-back/turn-backs.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import type { CarrySide } from '../../../server/core/plan/side/carry-side.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature } from '../../helpers/analyse-input.ts';
import { courseOf, endEdge, startEdge } from '../../helpers/course.ts';
import { gaugeOf, planCarry, planLeg, whatIf } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

function planned(input: AnalyseInput) {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  const trip = outcome.value;
  const { plan, driven: held } = planCarry(trip, { solver, seconds: 30, clock: () => 0 });
  return { trip, plan, held };
}

interface FuelFacts {
  tankL: number;
  litresPer100Km: number;
  reserve: NonNullable<RigFile['fuel']['reserve']>;
  cans?: number;
}

/** One rate all the way; water is no matter: a litre a day of 500. */
const rigWith = ({ tankL, litresPer100Km: litres, reserve, cans = 0 }: FuelFacts): RigFile => ({
  fuel: {
    kind: 'diesel',
    litresPer100Km: { low: litres, typical: litres, high: litres },
    tanks: [{ name: 'main', litres: tankL }],
    cans: { litres: 20, owned: cans },
    reserve,
  },
  water: {
    litresPerDay: { low: 1, typical: 1, high: 1 },
    tanks: [{ name: 'main', litres: 500 }],
    reserve: { litres: 0 },
  },
  pace: { hoursPerDay: 8, kmPerHour: { slow: 50, typical: 50, fast: 50 } },
});

/** 400 km a day as before, but driven by turns without a night: days of driving are days that pass, out and home alike. */
const aroundTheClock = (rig: RigFile): RigFile => ({
  ...rig,
  pace: { hoursPerDay: 24, kmPerHour: { slow: 400 / 24, typical: 400 / 24, fast: 400 / 24 } },
});

/** No cans beyond those that the rig has. */
const tripOver = (lengthKm: number, rig: RigFile, pumpsKm: readonly number[] = []): AnalyseInput => {
  const mostCans = { fuel: rig.fuel.cans?.owned ?? 0, water: rig.water.cans?.owned ?? 0 };
  return inputOf({
    document: equatorDocument(lengthKm),
    rig,
    trip: { ...inputOf().trip, plan: { mostCans } },
    features: pumpsKm.map((km) => pointFeature(`node/${km}`, km, DIESEL)),
  });
};

const fuelOf = ({ legs }: Pick<Plan, 'legs'>) => legs.fuel;

describe('turning back with the plan’s levels', () => {
  // Distance = usable fuel / (l/km out + l/km home); out and home cost the same on a road (check-values P10, P14).
  it.each([
    { row: 'P14', tankL: 90, litresPer100Km: 15, turnKm: 300 },
    // E 10 h at 100: 100 × 10 / 2; an hour is 10 l.
    { row: 'P12, no wind', tankL: 100, litresPer100Km: 10, turnKm: 500 },
  ])('$row: $turnKm km of $tankL l', ({ tankL, litresPer100Km, turnKm }) => {
    // As far as the tank goes: back from there is not possible any more.
    const lengthKm = (tankL / litresPer100Km) * 100 - 1;
    const rig = rigWith({ tankL, litresPer100Km, reserve: { litres: 0 } });
    const { plan, held, trip } = planned(tripOver(lengthKm, rig));
    expect(plan.status).toBe('found');
    expect(fuelOf(plan)[0]!.turnBackKm).toBeCloseTo(turnKm, 6);
    const [turn] = whatIf(trip, basisOf(trip, held)).turnBacks.filter(
      ({ commodity }) => commodity === 'fuel',
    );
    expect(turn!.atKm).toBeCloseTo(turnKm, 6);
  });

  it.each([
    // Litres stand for hours: 1/O an hour for each mile out, 1/H home.
    { row: 'P11', tankL: 3.3, out: 1 / 121, home: 1 / 129, turnKm: 206.0412 },
    { row: 'P12, wind against', tankL: 10, out: 1 / 50, home: 1 / 150, turnKm: 375 },
    { row: 'P12, wind with', tankL: 10, out: 1 / 150, home: 1 / 50, turnKm: 375 },
    { row: 'P13', tankL: 20 + 13 / 60, out: 1 / 107, home: 1 / 153, turnKm: 1272.95 },
    { row: 'P14', tankL: 90, out: 0.14, home: 0.11, turnKm: 360 },
  ])('$row: $turnKm where out and home cost different amounts', ({ tankL, out, home, turnKm }) => {
    const lengthM = (tankL / out - 1) * 1000;
    const rigFile = rigWith({ tankL, litresPer100Km: 10, reserve: { litres: 0 } });
    const side = (commodity: Commodity): CarrySide => {
      const even = courseOf({ commodity, rigFile, lengthM });
      const litres = { out: evenProfile(lengthM, out / 1000), home: evenProfile(lengthM, home / 1000) };
      return {
        commodity,
        course: commodity === 'fuel' ? { ...even, litres } : even,
        edges: [startEdge, endEdge(lengthM)],
        startL: even.rig[commodity].drawableL,
        cansAtStart: true,
        canL: 20,
        cansDrinkable: true,
        mostCans: 0,
      };
    };
    const sides = { fuel: side('fuel'), water: side('water') };
    const solved = solveCarry(
      { sides, owned: { fuel: 0, water: 0 }, room: null, oneFailure: null },
      { solver, seconds: 30, clock: () => 0 },
    );
    if (solved.status !== 'found') throw new Error(solved.status);
    const [leg] = drive(sides, solved.choice).fuel;
    expect(planLeg(leg!).turnBackKm).toBeCloseTo(turnKm, 2);
  });

  it('counts cans as fuel aboard: 90 l and two cans of 20 l (P10)', () => {
    const rig = rigWith({ tankL: 90, litresPer100Km: 10, reserve: { litres: 10 }, cans: 2 });
    const { plan } = planned(tripOver(1190, rig));
    expect(plan.cans.fuel).toBe(2);
    // (130 - 10) / (0.1 + 0.1).
    expect(fuelOf(plan)[0]!.turnBackKm).toBeCloseTo(600, 6);
  });

  it('with climbs on the way out turns earlier or later than on the flat by what they cost (P12, P13)', () => {
    // Out and home that cost different amounts: a rise all the way out is a fall all the way home.
    const document = equatorDocument(590);
    const [segment] = document.parts[0]!.segments;
    segment!.ele.forEach((_, index, ele) => {
      ele[index] = index * 4;
    });
    const flatRig = rigWith({ tankL: 100, litresPer100Km: 15, reserve: { litres: 0 } });
    const rig: RigFile = {
      ...flatRig,
      fuel: {
        ...flatRig.fuel,
        observed: { surface: 'unknown', massKg: 2000 },
        climb: { efficiency: 0.35, giveBack: 0.5, thresholdM: 0 },
      },
    };
    const { plan, held } = planned({ ...tripOver(590, rig), document });
    const { out, home } = held!.question.sides.fuel.course.litres;
    const perKm = (sum: Float64Array) => sum.at(-1)! / 590;
    const [outL, homeL] = [perKm(out.sum), perKm(home.sum)];
    // 4 m a km of 2,000 kg at 35 % of 36 MJ/l (F5, F11), half of that spared on the way home.
    const liftL = (2000 * 9.80665 * 4) / 1e6 / (0.35 * 36);
    expect(outL).toBeCloseTo(0.15 + liftL, 3);
    expect(homeL).toBeCloseTo(0.15 - liftL / 2, 3);
    expect(fuelOf(plan)[0]!.turnBackKm).toBeCloseTo(100 / (outL + homeL), 0);
  });
});

describe('where going on and going back cost the same', () => {
  it('is where a loss does most harm: half way when speeds are alike (P15)', () => {
    const rig = aroundTheClock(rigWith({ tankL: 100, litresPer100Km: 10, reserve: { litres: 0 } }));
    const { trip, held } = planned(tripOver(400, rig));
    const lost = whatIf(trip, basisOf(trip, held), { waitDays: 1 }).rows.find(
      ({ kind, commodity }) => kind === 'pump-fails' && commodity === 'water',
    );
    // D H / (O + H) of 400 km with O = H: all water out of reach leaves as little on going on as on going back.
    expect(lost!.atKm).toBeCloseTo(200, 6);
  });
});

describe('reserves', () => {
  it.each([
    // (1 - r) V / c x 100 (check-values P21); a third is P19, half is P20 (from memory).
    { row: 'P21', fraction: 0.1, km: 540 },
    { row: 'P19', fraction: 1 / 3, km: 400 },
    { row: 'P20', fraction: 0.5, km: 300 },
  ])('$row: a reserve of $fraction of 90 l lets the plan go $km km from pump to pump', ({ fraction, km }) => {
    const rig = rigWith({ tankL: 90, litresPer100Km: 15, reserve: { fraction } });
    const withPumps = (stepKm: number) => planned(tripOver(3 * stepKm, rig, [stepKm, 2 * stepKm])).plan;
    const plan = withPumps(km - 1);
    expect(plan.status).toBe('found');
    expect(plan.cans.fuel).toBe(0);
    // Not one more is passed by: every pump is used, and nobody arrives with less than the fraction.
    expect(fuelOf(plan)).toHaveLength(3);
    for (const { arriveL } of fuelOf(plan)) expect(arriveL).toBeGreaterThanOrEqual(90 * fraction - 1e-9);
    expect(withPumps(km + 1).status).toBe('none');
  });

  it('with the half-tank rule a plan fills up at half a tank at the latest, and the gauge asks for it (P20, from memory)', () => {
    const rig = rigWith({ tankL: 80, litresPer100Km: 20, reserve: { fraction: 0.5 } });
    // Half of 80 l lasts 200 km: with a pump every 90 km no two in a row may be passed by.
    const pumpsKm = [90, 180, 270, 360, 450, 540];
    const { plan, trip, held } = planned(tripOver(630, rig, pumpsKm));
    expect(plan.status).toBe('found');
    for (const { arriveL, departL } of fuelOf(plan)) {
      expect(arriveL).toBeGreaterThanOrEqual(40 - 1e-9);
      expect(departL).toBeCloseTo(80, 9);
    }
    for (const { from, to } of fuelOf(plan)) expect(to.atKm - from.atKm).toBeLessThanOrEqual(200 + 1e-6);
    const basis = basisOf(trip, held);
    for (const row of gaugeOf(basis, turnBacksOf(basis)).rows) {
      // On reaching a pump half a tank is what has to be aboard.
      if (row.at === 'arriving') expect(row.fuel.onL).toBeCloseTo(40, 6);
    }
  });

  it('a plan takes a can where half a tank does not reach the next pump (P20, from memory)', () => {
    const rig = rigWith({ tankL: 80, litresPer100Km: 20, reserve: { fraction: 0.5 }, cans: 4 });
    // 250 km take 50 l: 10 l beyond half a tank.
    const { plan } = planned(tripOver(500, rig, [250]));
    expect(plan.cans.fuel).toBe(1);
    expect(fuelOf(plan).map(({ cans }) => cans)).toEqual([1, 1]);
  });

  it('a contingency of 5 % and a final reserve are both left on arrival (P18)', () => {
    // Trip fuel 60 l, 5 % of it, and a final reserve of 7.5 l: half an hour at 15 l an hour stands for the 30 min.
    const rig = rigWith({ tankL: 90, litresPer100Km: 15, reserve: { litres: 7.5, shareOfNeed: 0.05 } });
    const [leg] = fuelOf(planned(tripOver(400, rig)).plan);
    expect(leg!.reserveL).toBeCloseTo(7.5 + 3, 6);
    expect(leg!.marginL).toBeCloseTo(90 - 60 - 10.5, 6);
    const farthestKm = (90 - 7.5) / 1.05 / 0.15;
    expect(planned(tripOver(farthestKm - 0.1, rig)).plan.status).toBe('found');
    expect(planned(tripOver(farthestKm + 0.1, rig)).plan.status).toBe('none');
  });

  it('a third out, a third back: with a third in reserve the plan turns round at a third (P19)', () => {
    const rig = rigWith({ tankL: 90, litresPer100Km: 15, reserve: { fraction: 1 / 3 } });
    const [leg] = fuelOf(planned(tripOver(399, rig)).plan);
    expect(leg!.turnBackKm).toBeCloseTo(200, 6);
  });
});

describe('water for a day in a desert park', () => {
  it('four litres for each of three people for each of three days, none on the way (P4)', () => {
    const rig = aroundTheClock(rigWith({ tankL: 400, litresPer100Km: 10, reserve: { litres: 0 } }));
    const crew: RigFile = {
      ...rig,
      water: {
        litresPerDay: { low: 12, typical: 12, high: 12 },
        tanks: [{ name: 'main', litres: 24 }],
        cans: { litres: 12, owned: 3 },
        reserve: { litres: 0 },
      },
    };
    // 400 km a day: 1,200 km are three days, 36 l: one can of 12 l beyond the tank.
    const { plan } = planned(tripOver(1200, crew));
    expect(plan.legs.water[0]!.needL).toBeCloseTo(36, 9);
    expect(plan.cans.water).toBe(1);
  });
});
