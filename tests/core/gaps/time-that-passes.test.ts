import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { Course, Edge } from '../../../server/core/gaps/course/course.ts';
import { gapsOf } from '../../../server/core/gaps/gaps-of.ts';
import { returnNeedL } from '../../../server/core/gaps/need.ts';
import { reckon } from '../../../server/core/gaps/reckon.ts';
import { turnBackM } from '../../../server/core/gaps/turn-back.ts';
import { runOf } from '../../../server/core/plan/drive/run.ts';
import type { Stretch } from '../../../server/core/plan/drive/stretch.ts';
import { turnBackOf } from '../../../server/core/plan/drive/turn-back/turn-back.ts';
import { turnBacksOf } from '../../../server/core/plan/drive/turn-back/turn-backs.ts';
import { legNeed } from '../../../server/core/plan/legs/leg-need.ts';
import { questionOf } from '../../../server/core/plan/question/question-of.ts';
import type { CarrySide } from '../../../server/core/plan/side/carry-side.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { analysisOf, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';
import { reckoned } from '../../helpers/reckoned.ts';
import { gaugeOf } from '../plan/by-hand/contracted.ts';
import { basisFrom } from '../plan/what-if/small-basis.ts';

/** The example's 18 l of water a day, 245 km a day at 35 km/h. */
const LITRES_PER_DAY = 18;
/** Nights and stays take fuel as well: a heater by night, what runs while standing. */
const RIG: RigFile = {
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    perHour: { idling: 1.2, airConditioning: 1.8, heater: 0.3 },
    hours: { idlingPerDay: 0.5, airConditioningPerDay: 2, heaterPerNight: 2 },
  },
};

/** In thousandths: places of a route lie metres apart, not less than an atom. */
const share = fc.integer({ min: 0, max: 990 }).map((thousandths) => thousandths / 1000);

/** A drive: its length, camps and stays, with or without an hour of departure, and places of supplies as shares of it. */
const drives = fc.record({
  lengthKm: fc.integer({ min: 20, max: 1500 }),
  places: fc.array(share, { maxLength: 5 }),
  camps: fc.array(share, { maxLength: 3 }),
  stays: fc.array(fc.record({ at: share, days: fc.double({ min: 0.1, max: 2, noNaN: true }) }), {
    maxLength: 2,
  }),
  departureHour: fc.option(fc.integer({ min: 0, max: 24 })),
});
type Drive = typeof drives extends fc.Arbitrary<infer One> ? One : never;

const inputFor = ({ lengthKm, places, camps, stays, departureHour }: Drive, stepKm = 50) =>
  inputOf({
    document: equatorDocument(lengthKm, stepKm),
    rig: RIG,
    features: places.map((place, index) => pointFeature(`node/${index}`, place * lengthKm, TAP)),
    trip: {
      ...inputOf().trip,
      camps: camps.map((at) => ({ atKm: at * lengthKm })),
      stays: stays.map(({ at, days }) => ({ atKm: at * lengthKm, days })),
      ...(departureHour === null ? {} : { departureHour }),
    },
  });

describe('water by the time that passes', () => {
  const needsOf = (lengthKm: number, tapsKm: number[]) =>
    analysisOf({
      document: equatorDocument(lengthKm),
      features: tapsKm.map((km) => pointFeature(`node/${km}`, km, TAP)),
    }).water.gaps.map(({ needL }) => needL);

  it('charges a leg of 10 km minutes, not a day', () => {
    // 10 km at 35 km/h are 17 minutes: 0.2 l.
    expect(needsOf(200, [100, 110])[1]).toBeCloseTo((18 * 10) / 35 / 24, 6);
  });

  it('charges a night inside a gap once, and to no other', () => {
    // The night of km 245 is in the second gap only: 17 h of 24 take 12.75 l.
    const drivingL = (km: number) => (18 * km) / 35 / 24;
    const [before, over, after] = needsOf(400, [240, 250]);
    expect(before).toBeCloseTo(drivingL(240), 6);
    expect(over).toBeCloseTo(drivingL(10) + 12.75, 6);
    expect(after).toBeCloseTo(drivingL(150), 6);
  });

  it('charges two gaps that are a day together exactly the day', () => {
    // A kilometre behind the night the day is over: from the start it is 24 h and what a kilometre takes.
    const [first, second] = needsOf(246, [100]);
    expect((first ?? 0) + (second ?? 0)).toBeCloseTo(18 + 18 / 35 / 24, 6);
  });

  it('charges gaps that tile the route what the whole route takes, whatever the supplies, camps and stays', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(drives, (drive) => {
        const { water, days } = analysisOf(inputFor(drive));
        const sumL = water.gaps.reduce((sum, { needL }) => sum + needL, 0);
        // A supply is found a millimetre or so off the route.
        const offKm = water.gaps.reduce((sum, { from, to }) => sum + from.detourKm + to.detourKm, 0);
        expect(sumL).toBeCloseTo(LITRES_PER_DAY * (days.elapsedDays.slow + offKm / 245), 6);
      }),
      { numRuns: 60 },
    );
  });

  it('charges the legs of any plan what the whole route takes', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(drives, fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }), (drive, used) => {
        const trip = reckoned(inputFor(drive));
        const side = questionOf(trip).question.sides.water;
        const end = side.edges.length - 1;
        const halts = [0, ...side.edges.keys()].filter(
          (index) => index > 0 && index < end && used[index % 6],
        );
        const chain = [0, ...halts, end];
        const sumL = chain
          .slice(1)
          .reduce((sum, to, index) => sum + legNeed(side, { from: chain[index] ?? 0, to }).needL, 0);
        const offM = chain.reduce((sum, index) => sum + 2 * (side.edges[index]?.detourM ?? 0), 0);
        const { slow } = trip.analysis.days.elapsedDays;
        expect(sumL).toBeCloseTo(LITRES_PER_DAY * (slow + offM / 245_000), 6);
      }),
      { numRuns: 60 },
    );
  });
});

/** A leg of a drive, from one supply to the next, left with so much aboard. */
const legs = fc.record({
  drive: drives,
  commodity: fc.constantFrom<Commodity>('fuel', 'water'),
  ends: fc.tuple(fc.double({ min: 0, max: 0.4, noNaN: true }), fc.double({ min: 0.5, max: 1, noNaN: true })),
  detourM: fc.integer({ min: 0, max: 8000 }),
  aboard: fc.double({ min: 0.5, max: 1, noNaN: true }),
});

function legOf({
  drive,
  commodity,
  ends,
  detourM,
  aboard,
}: typeof legs extends fc.Arbitrary<infer L> ? L : never) {
  const { course } = reckoned(inputFor({ ...drive, places: [] })).sides[commodity];
  const [fromM, toM] = ends.map((at) => at * course.lengthM);
  const from = { ...passingEdge(fromM ?? 0), detourM };
  return { course, from, to: passingEdge(toM ?? 0), departL: aboard * course.rig[commodity].drawableL };
}

/** A drive hour by hour, not by profiles: 35 km/h for 7 hours of each day of 24, then the night. */
class SimulatedDrive {
  hours = 0;
  #today = 0;
  on(km: number): void {
    for (let leftKm = km; leftKm > 1e-9; ) {
      if (this.#today > 7 - 1e-9) this.sleep();
      const stepKm = Math.min(leftKm, (7 - this.#today) * 35);
      this.hours += stepKm / 35;
      this.#today += stepKm / 35;
      leftKm -= stepKm;
    }
  }
  /** What is waited takes hours of driving away; when none is left the next morning is waited for before driving on. */
  stand(hours: number): void {
    const day = this.#day();
    this.hours += hours;
    const today = this.#day() > day ? this.hours % 24 : this.#today + hours;
    this.#today = Math.min(7, today);
  }
  sleep(): void {
    this.hours = 24 * (this.#day() + 1);
    this.#today = 0;
  }
  #day = () => Math.floor(this.hours / 24 + 1e-9);
}

interface Outing {
  fromKm: number;
  turnKm: number;
  campsKm: number[];
  detourKm?: number;
  fillHours?: number;
}

/** Hours from reaching the route's `fromKm` until the supply there is reached again, turning round at `turnKm`. */
function hoursOutAndBack({ fromKm, turnKm, campsKm, detourKm = 0, fillHours = 0 }: Outing): number {
  const drive = new SimulatedDrive();
  let reachedKm = 0;
  const goTo = (km: number) => {
    drive.on(km - reachedKm);
    reachedKm = km;
  };
  const camps = [...campsKm].sort((a, b) => a - b);
  const campBetween = (afterKm: number, beforeKm: number) => {
    for (const km of camps.filter((one) => one >= afterKm && one < beforeKm)) {
      goTo(km);
      drive.sleep();
    }
  };
  campBetween(0, fromKm);
  goTo(fromKm);
  const reachedAtH = drive.hours;
  if (fillHours > 0) drive.stand(fillHours);
  drive.on(detourKm);
  campBetween(fromKm, turnKm);
  goTo(turnKm);
  drive.on(turnKm - fromKm + detourKm);
  return drive.hours - reachedAtH;
}

/** Points this near to each other are those of a road: nothing is added for straight lines. */
const ROAD_STEP_KM = 1;

const outings = fc.record({
  lengthKm: fc.integer({ min: 50, max: 1500 }),
  from: share,
  turn: fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000),
  camps: fc.array(share, { maxLength: 3 }),
  departureHour: fc.option(fc.integer({ min: 0, max: 24 })),
});

function outingOf({
  lengthKm,
  from,
  turn,
  camps,
  departureHour,
}: typeof outings extends fc.Arbitrary<infer O> ? O : never) {
  // Camps and so nights on whole kilometres, supplies between: which of the two comes first there is another matter.
  const fromKm = Math.floor(from * lengthKm) + 0.3;
  const turnKm = fromKm + turn * (lengthKm - fromKm);
  const campsKm = [...new Set(camps.map((at) => Math.round(at * lengthKm)))].filter(
    (km) => km > 0 && km < lengthKm,
  );
  const drive = { lengthKm, places: [], camps: campsKm.map((km) => km / lengthKm), stays: [], departureHour };
  const { course } = reckoned(inputFor(drive, ROAD_STEP_KM)).sides.water;
  return { course, fromKm, turnKm, campsKm };
}

describe('standing where a way begins', () => {
  // From km 35, reached after an hour, to km 210: five hours more, six of the seven of a day.
  const { course } = reckoned(
    inputFor({ lengthKm: 210, places: [], camps: [], stays: [], departureHour: null }, ROAD_STEP_KM),
  ).sides.water;
  const drivingL = (LITRES_PER_DAY * 5) / 24;
  const nightL = (LITRES_PER_DAY * 17) / 24;
  const needL = (hours: { fill?: number; wait?: number }, givesAll: boolean) =>
    reckon(
      course,
      {
        ...passingEdge(35_000),
        fillDays: (hours.fill ?? 0) / 24,
        waitDays: (hours.wait ?? 0) / 24,
        givesAll,
      },
      passingEdge(210_000),
      { departL: 70 },
    ).needL;

  it('takes no water while it is filled where the supply gives all, else what is drunk', () => {
    expect(needL({ fill: 0.5 }, true)).toBeCloseTo(drivingL, 6);
    expect(needL({ fill: 0.5 }, false)).toBeCloseTo(drivingL + (LITRES_PER_DAY * 0.5) / 24, 6);
  });

  it('pushes the arrival past a night where it takes the hours of the day', () => {
    expect(needL({ fill: 2 }, true)).toBeCloseTo(drivingL + nightL, 6);
    expect(needL({ wait: 0.9 }, true)).toBeCloseTo(drivingL, 6);
    expect(needL({ wait: 0.9, fill: 0.9 }, true)).toBeCloseTo(drivingL + nightL, 6);
    expect(needL({ fill: 24 + 0.5 }, true)).toBeCloseTo(drivingL, 6);
  });

  it('has that night at the supply where the hours end there, and none on the way', () => {
    expect(needL({ fill: 8 }, true)).toBeCloseTo(drivingL, 6);
    // Where it gives only so much, the night is had out of what is aboard.
    expect(needL({ fill: 8 }, false)).toBeCloseTo(drivingL + (LITRES_PER_DAY * 8) / 24 + nightL, 6);
  });
});

describe('going out and home again', () => {
  const litresOf = (outing: Outing) => (LITRES_PER_DAY * hoursOutAndBack(outing)) / 24;

  it('takes the water of the hours that pass, each night on either way whole', { tags: 'slow' }, () => {
    let nights = 0;
    fc.assert(
      fc.property(outings, (drawn) => {
        const { course, ...outing } = outingOf(drawn);
        const needL = returnNeedL(
          course,
          passingEdge(outing.fromKm * 1000),
          passingEdge(outing.turnKm * 1000),
        );
        // Half a metre less or more, where a night may begin.
        const [lessL, moreL] = [-5e-4, 5e-4].map((km) =>
          litresOf({ ...outing, turnKm: Math.max(outing.fromKm, outing.turnKm + km) }),
        );
        expect(needL).toBeGreaterThanOrEqual((lessL ?? 0) - 1e-3);
        expect(needL).toBeLessThanOrEqual((moreL ?? 0) + 1e-3);
        const drivingL = (LITRES_PER_DAY * 2 * (outing.turnKm - outing.fromKm)) / 35 / 24;
        if (needL > drivingL + 1) nights += 1;
      }),
      { numRuns: 200 },
    );
    expect(nights).toBeGreaterThan(50);
  });

  it('has its turn-back point where the hours that pass use up the budget', { tags: 'slow' }, () => {
    let inside = 0;
    fc.assert(
      fc.property(outings, fc.double({ min: 1, max: 60, noNaN: true }), (drawn, budgetL) => {
        const { course, fromKm, campsKm } = outingOf(drawn);
        const turnM = turnBackM(
          course,
          passingEdge(fromKm * 1000),
          passingEdge(drawn.lengthKm * 1000),
          budgetL,
        );
        const turnKm = (turnM ?? 0) / 1000;
        const before = { fromKm, campsKm, turnKm: Math.max(fromKm, turnKm - 5e-4) };
        expect(litresOf(before)).toBeLessThanOrEqual(budgetL + 1e-6);
        if (turnKm + 1 > drawn.lengthKm) return;
        inside += 1;
        expect(litresOf({ ...before, turnKm: turnKm + 1 })).toBeGreaterThan(budgetL);
      }),
      { numRuns: 200 },
    );
    expect(inside).toBeGreaterThan(50);
  });

  it('never takes less than the hours that pass where a detour and a filling come before, and at the most a night more', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(
        outings,
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 80 }),
        (drawn, detourKm, fillQuarters) => {
          const fillHours = fillQuarters / 4;
          const { course, ...outing } = outingOf({ ...drawn, camps: [] });
          const from = {
            ...passingEdge(outing.fromKm * 1000, detourKm * 1000),
            fillDays: fillHours / 24,
          };
          const needL = returnNeedL(course, from, passingEdge(outing.turnKm * 1000));
          const leastL = litresOf({ ...outing, detourKm, fillHours });
          expect(needL).toBeGreaterThanOrEqual(leastL - 1e-6);
          // The detour is charged at 24 hours for 7 of driving; hours of filling may be those of a night.
          expect(needL).toBeLessThanOrEqual(leastL + LITRES_PER_DAY);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('takes the litres of a heater for each night', () => {
    // 0.3 l/h for 2 hours. Out 200 km and back from the start: over a day of 245 km, one night.
    const { course } = reckoned(
      inputFor({ lengthKm: 500, places: [], camps: [], stays: [], departureHour: null }, ROAD_STEP_KM),
    ).sides.fuel;
    const backL = (km: number) =>
      returnNeedL(course, passingEdge(0), passingEdge(km * 1000)) -
      // By the kilometre 0.17 l, and 0.6 l of idling and 3.6 l of cooling a day of 245 km.
      2 * km * (0.17 + 4.2 / 245);
    expect(backL(100)).toBeCloseTo(0, 6);
    expect(backL(200)).toBeCloseTo(0.6, 6);
    // 490 km are two days: the night of km 245 on the way out, one more on the way home.
    expect(backL(250)).toBeCloseTo(1.2, 6);
  });
});

const backFrom = (course: Course, from: Edge, atM: number) => returnNeedL(course, from, passingEdge(atM));

describe('the turn-back point', () => {
  it('is where one comes home with just the reserve, and from 1 km farther on with less', {
    tags: 'slow',
  }, () => {
    let inside = 0;
    fc.assert(
      fc.property(legs, (drawn) => {
        const { course, from, to, departL } = legOf(drawn);
        const budgetL = departL - reckon(course, from, to, { departL }).reserveL;
        const turnM = turnBackM(course, from, to, budgetL);
        if (turnM === null) {
          expect(backFrom(course, from, from.atM)).toBeGreaterThan(budgetL);
          return;
        }
        expect(backFrom(course, from, turnM)).toBeLessThanOrEqual(budgetL + 1e-6);
        if (turnM + 1000 > to.atM) return;
        inside += 1;
        expect(backFrom(course, from, turnM + 1000)).toBeGreaterThan(budgetL);
      }),
      { numRuns: 200 },
    );
    expect(inside).toBeGreaterThan(20);
  });

  it('of a gap is that of a plan’s leg with the same load', { tags: 'slow' }, () => {
    let inside = 0;
    fc.assert(
      fc.property(legs, (drawn) => {
        const { course, from, to, departL } = legOf(drawn);
        if (to.atM - from.atM < 1) return;
        const [gap] = gapsOf(course, [from, to], departL);
        const canL = course.rig[course.commodity].canL;
        const stretch: Stretch = { course, from, to, tankL: departL, cans: 0, canL, detours: [] };
        const ofLeg = turnBackOf(runOf(stretch));
        if (gap === undefined || gap.turnBackM === null || ofLeg === null) {
          expect(ofLeg).toBe(gap?.turnBackM);
          return;
        }
        if (gap.turnBackM < to.atM) inside += 1;
        expect(ofLeg).toBeCloseTo(gap.turnBackM, 3);
      }),
      { numRuns: 200 },
    );
    expect(inside).toBeGreaterThan(20);
  });

  it('of the gauge is that of the gaps, where nothing is carried in cans', { tags: 'slow' }, () => {
    let turns = 0;
    fc.assert(
      fc.property(drives, (drive) => {
        const { sides } = reckoned(inputFor({ ...drive, places: [] }));
        const sideOf = (commodity: Commodity): CarrySide => {
          const { course } = sides[commodity];
          const { drawableL, canL } = course.rig[commodity];
          const stops = [...new Set(drive.places)]
            .sort((a, b) => a - b)
            .map((at) => passingEdge(at * course.lengthM));
          const edges = [startEdge, ...stops, endEdge(course.lengthM)];
          return {
            commodity,
            course,
            edges,
            startL: drawableL,
            cansAtStart: true,
            canL,
            cansDrinkable: true,
            mostCans: 0,
          };
        };
        const basis = basisFrom({ fuel: sideOf('fuel'), water: sideOf('water') }, () => 0);
        const ofGaps = COMMODITIES.flatMap((commodity) => {
          const { course, edges, startL } = sideOf(commodity);
          return gapsOf(course, edges, startL).flatMap(({ turnBackM: atM, from, to }) =>
            (atM ?? from.atM) >= to.atM - 1e-3 ? [] : [{ commodity, atM: atM ?? from.atM }],
          );
        });
        const turnBacks = turnBacksOf(basis);
        const inOrder = (all: readonly { commodity: Commodity; atM: number }[]) =>
          COMMODITIES.flatMap((commodity) =>
            all.filter((one) => one.commodity === commodity).map(({ atM }) => Math.round(atM)),
          );
        // A point that falls on a stop to the metre may be told as one, or as none inside the gap.
        const isStop = (atM: number) =>
          drive.places.some((place) => Math.abs(place * sides.fuel.course.lengthM - atM) <= 1);
        const apart = (all: number[], others: number[]) =>
          all.filter((atM) => !others.some((other) => Math.abs(other - atM) <= 1) && !isStop(atM));
        expect(apart(inOrder(turnBacks), inOrder(ofGaps))).toEqual([]);
        expect(apart(inOrder(ofGaps), inOrder(turnBacks))).toEqual([]);
        for (const row of gaugeOf(basis, turnBacks).rows) {
          if (row.at !== 'turn-back') continue;
          for (const commodity of row.commodities) {
            turns += 1;
            const { plannedL, backL } = row[commodity];
            // More where a night takes water at the very place: it is left with less.
            expect(plannedL).toBeGreaterThanOrEqual((backL ?? Number.POSITIVE_INFINITY) - 1e-6);
          }
        }
      }),
      { numRuns: 60 },
    );
    expect(turns).toBeGreaterThan(10);
  });
});
