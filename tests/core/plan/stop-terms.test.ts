import { beforeAll, describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { type AnalyseInput, type Reckoned, reckonTrip } from '../../../server/core/analyse/analyse.ts';
import { daysOfStanding } from '../../../server/core/gaps/course/standing.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { questionOf } from '../../../server/core/plan/question/question-of.ts';
import { checkTrip } from '../../../server/core/trip/check-trip.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import {
  analysisOf,
  DIESEL,
  equatorDocument,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { LAMP, ULTRAFILTER } from '../treatment/lines.ts';
import { oneFailure, planCarry, whatIf } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options = () => ({ solver, seconds: 30, clock: () => 0 });

function reckoned(input: AnalyseInput): Reckoned {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

const planOf = (input: AnalyseInput) => planCarry(reckoned(input), options()).plan;

const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));

const withPlan = (input: AnalyseInput, plan: NonNullable<TripFile['plan']>): AnalyseInput => ({
  ...input,
  trip: { ...input.trip, plan },
});

describe('litres of a stop', () => {
  const input = inputOf({
    features: [...TAPS, pointFeature('node/1', 500, DIESEL), pointFeature('node/2', 900, DIESEL)],
  });

  it('fill the tanks first, and leave what is missing to the stop after', () => {
    // 17 l/100 km: 85 l to km 500 leave 42 of 127; 40 l more are 82. On to km 900 with 68 l less: 14 l, under the
    // reserve of 17. One can is missing, and the only place to fill it is the start.
    const plan = planOf(withPlan(input, { stops: [{ id: 'node/1', mostLitres: { fuel: 40 } }] }));
    expect(plan.status).toBe('found');
    const [first, second, third] = plan.legs.fuel;
    expect(first!.cans).toBe(1);
    // The can goes in when 20 l are gone: 62 arrive, 102 leave.
    expect(first!.arriveL).toBeCloseTo(62, 3);
    expect(second!.tankL).toBeCloseTo(102, 3);
    expect(second!.cans).toBe(0);
    expect(second!.arriveL).toBeCloseTo(34, 3);
    expect(third!.tankL).toBe(127);
    const stop = plan.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/1');
    expect(stop).toMatchObject({ used: true, mostL: 40, cansFull: 0 });
    expect(stop!.fillL).toBeCloseTo(40, 6);
    // Without the limit no can is needed.
    expect(planOf(input).cans).toEqual({ fuel: 0, water: 0 });
  });

  it('leave it with less when more is used before', () => {
    const limited = withPlan(input, { stops: [{ id: 'node/1', mostLitres: { fuel: 60 } }] });
    const value = reckoned(limited);
    const { driven: held } = planCarry(value, options());
    const rows = whatIf(value, basisOf(value, held), {});
    expect(rows.cautions.map(({ code }) => code)).toContain('mishap-before-bound-stop');
    // 10 % more, 18.7 l/100 km: 33.5 l arrive at km 500, 93.5 leave, and at km 900 the reserve of 18.7 is just whole.
    const use = rows.matters.find(
      ({ assumption, commodity }) => assumption === 'use' && commodity === 'fuel',
    )!;
    expect(use.step).toContain('10 %');
    expect(use.beforeL).toBeCloseTo(127 + 60 - 0.17 * 900 - 17, 3);
    expect(use.afterL).toBeCloseTo(127 + 60 - 0.187 * 900 - 18.7, 3);
  });

  it('are asked of places the route comes by, each once', () => {
    const plan = planOf(withPlan(input, { stops: [{ id: 'node/77', mostLitres: { fuel: 40 } }] }));
    expect(
      toContract(plan.restsOn)
        .map(({ text }) => text)
        .join(),
    ).toContain('node/77');
    const stops = [{ id: 'node/1' }, { id: 'node/2' }, { id: 'node/1', waitHours: 2 }];
    expect(checkTrip({ plan: { stops } }, null)).toMatchObject({ path: '/plan/stops/2' });
    expect(checkTrip({ plan: { stops: stops.slice(0, 2) } }, null)).toBeNull();
  });

  it('can be too few for any plan', () => {
    const asked = { mostCans: { fuel: 0 }, stops: [{ id: 'node/1', mostLitres: { fuel: 40 } }] };
    expect(planOf(withPlan(input, asked)).status).toBe('none');
  });
});

describe('a stop that no plan can lose', () => {
  it('is told by name', { tags: 'slow' }, () => {
    // To km 1,000 three cans are enough; to km 2,000 or back from there it takes twelve, and nine are the most tried.
    const features = [
      ...Array.from({ length: 9 }, (_, index) => pointFeature(`node/9${index}`, (index + 1) * 200, TAP)),
      pointFeature('node/1', 1000, DIESEL),
      pointFeature('node/2', 1020, DIESEL),
    ];
    const rig: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 3 } } };
    const value = reckoned(
      inputOf({ document: equatorDocument(2000), rig, features: features.slice(0, -1) }),
    );
    const { driven: held } = planCarry(value, options());
    const failing = oneFailure(value, held!, options());
    expect(failing.status).toBe('none');
    expect(failing.breaks.map(({ at }) => at.id)).toEqual(['node/1']);
    expect(failing.breaks[0]!.text).toContain('km 1000');
    expect(failing.breaks[0]!.text).toContain('fuel station');
    // With a second pump 20 km on, either may fail.
    const both = reckoned(inputOf({ document: equatorDocument(2000), rig, features }));
    expect(oneFailure(both, planCarry(both, options()).driven!, options()).status).toBe('found');
  });
});

describe('waiting at a stop', () => {
  /** 340 km at 245 km a day; only a pump on the way. */
  const input = inputOf({
    document: equatorDocument(340),
    features: [pointFeature('node/1', 200, DIESEL)],
  });

  it('takes days from both commodities: water goes while fuel is waited for', () => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: { ...EXAMPLE_RIG.fuel, tanks: [{ name: 'main', litres: 60 }] },
      water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'under floor', litres: 60 }] },
    };
    // 340 km are a day with its night and 95 km: 20 l, and 36 l of reserve: 4 l of 60 are left.
    const plainL = 18 * (1 + 95 / 35 / 24);
    const plain = planOf({ ...input, rig });
    expect(plain.legs.water[0]).toMatchObject({ needL: expect.closeTo(plainL, 6), cans: 0 });
    expect(plain.legs.water[0]!.marginL).toBeCloseTo(60 - 36 - plainL, 6);
    // Eight hours are a third of a day: 6 l more than before.
    const waitFor = (waitHours: number) =>
      planOf({
        ...withPlan(input, { mostCans: { fuel: 0 }, stops: [{ id: 'node/1', waitHours }] }),
        rig,
      });
    const waiting = waitFor(8);
    expect(waiting.legs.water[0]).toMatchObject({
      needL: expect.closeTo(plainL + 18 / 3, 6),
      cans: 1,
    });
    const stop = waiting.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/1');
    expect(stop).toMatchObject({ used: true, waitHours: 8 });
    // Five are 3.75 l, which the tank still has.
    expect(waitFor(5).legs.water[0]).toMatchObject({
      needL: expect.closeTo(plainL + (18 * 5) / 24, 6),
      cans: 0,
    });
    expect(waitFor(1).legs.water[0]).toMatchObject({
      needL: expect.closeTo(plainL + 18 / 24, 6),
      cans: 0,
    });
  });

  it('pushes the arrival past a night where it takes the hours of the day', () => {
    // The pump at km 70 after two hours, the end at km 210 after six of seven: two hours of waiting or more bring a night.
    const needL = (waitHours: number) =>
      planOf({
        ...inputOf({
          document: equatorDocument(210),
          features: [pointFeature('node/1', 70, DIESEL)],
          rig: { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, tanks: [{ name: 'main', litres: 45 }] } },
        }),
        trip: {
          ...inputOf().trip,
          plan: { mostCans: { fuel: 0 }, stops: [{ id: 'node/1', waitHours }] },
        },
      }).legs.water[0]!.needL;
    expect(needL(0.5)).toBeCloseTo((18 * 6.5) / 24, 6);
    expect(needL(4.5)).toBeCloseTo((18 * (6 + 4.5 + 17)) / 24, 6);
    // A whole day leaves the hours of the day as they were.
    expect(needL(24)).toBeCloseTo((18 * 30) / 24, 6);
  });

  it('is till it opens by its mapped hours, unless the user says how long', () => {
    const shut = (waitHours: number | null, asked: NonNullable<TripFile['plan']> = {}) => {
      const hours = { ...DIESEL, opening_hours: 'as tagged', name: 'Far pump' };
      const more = { ...input.trip, departureHour: 8 };
      return planOf({
        ...input,
        supplies: { ...input.supplies, features: [pointFeature('node/1', 200, hours)] },
        trip: { ...more, plan: { ...asked, mostCans: { fuel: 0 } } },
        rig: { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, tanks: [{ name: 'main', litres: 60 }] } },
        openingHours: () => ({ open: false, waitHours, opens: true, comment: null, unreadable: false }),
      });
    };
    // With the hour of departure told, water goes by the time that passes: 5 hours are 3.75 l.
    const told = shut(5, { stops: [{ id: 'node/1', waitHours: 0 }] });
    expect(shut(5).legs.water[0]!.needL - told.legs.water[0]!.needL).toBeCloseTo((18 * 5) / 24, 9);
    expect(shut(5).restsOn.map(({ code }) => code)).toContain('plan-waits-for-opening');
    expect(told.restsOn.map(({ code }) => code)).not.toContain('plan-waits-for-opening');
    // No opening in sight: no supply, and without it there is no plan.
    const never = shut(null);
    expect(never.status).toBe('none');
    expect(never.restsOn.map(({ code }) => code)).toContain('plan-stop-shut');
  });

  it('counts hours as hours of a day of 24', () => {
    expect(daysOfStanding(48)).toBe(2);
    expect(daysOfStanding(36)).toBeCloseTo(1.5, 12);
    expect(daysOfStanding(20)).toBeCloseTo(20 / 24, 12);
    expect(daysOfStanding(0)).toBe(0);
  });
});

/** In days, with the 18 l a day that are drunk meanwhile out of the same source. */
const TWO_MINUTES_A_LITRE = 2 / 60 / 24 / (1 - (18 * 2) / 60 / 24);

/** Cans that are owned cost less than the time of filling. */
const NO_CAN_OWNED = { litres: 20, owned: 0 };

describe('filling at a source', () => {
  const spring = { natural: 'spring', drinking_water: 'yes' };

  it('takes the time that its flow was noted with', () => {
    // 500 km are two nights and 10 km, 36.2 l and 36 in reserve of 60; from the spring half way it is a night and 5 km,
    // 18.1 l. What is drunk while the tank fills comes out of the spring.
    const input = inputOf({
      document: equatorDocument(500),
      features: [pointFeature('node/5', 250, spring)],
    });
    const note = { id: 'node/5', on: '2026-05-01', saltOk: true, litresPerMinute: 0.5 };
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'tank', litres: 60 }], cans: NO_CAN_OWNED },
    };
    const slow = planOf({ ...input, rig, trip: { ...input.trip, waterNotes: [note] } });
    const leg = slow.legs.water.find(({ from }) => from.id === 'node/5');
    expect(leg!.needL).toBeCloseTo(18 * (1 + 5 / 35 / 24), 6);
    const stop = slow.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/5');
    // Of 60 l 18.1 are gone on the way to it, a night and 5 km, and filled in again: 36 minutes, in which 0.5 l are drunk.
    expect(stop!.fillL).toBeCloseTo(18 * (1 + 5 / 35 / 24), 6);
    const drunkShare = 18 / (0.5 * 60 * 24);
    expect(stop!.fillHours).toBeCloseTo(stop!.fillL! / 0.5 / 60 / (1 - drunkShare), 9);
    const quick = planOf({
      ...input,
      rig,
      trip: { ...input.trip, waterNotes: [{ ...note, litresPerMinute: 10 }] },
    });
    // At 10 l/min it is a twentieth of the time, for the same water.
    const quickL = quick.legs.water.find(({ from }) => from.id === 'node/5')!.needL;
    expect(quickL).toBeCloseTo(18 * (1 + 5 / 35 / 24), 6);
    const quickStop = quick.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/5');
    expect(quickStop!.fillHours).toBeCloseTo(quickStop!.fillL! / 10 / 60 / (1 - drunkShare / 20), 9);
  });

  const wellAt = (km: number, lengthKm: number, litresPerMinute: number, stop = {}) =>
    planOf({
      ...inputOf({
        document: equatorDocument(lengthKm),
        features: [pointFeature('node/5', km, spring)],
        rig: {
          ...EXAMPLE_RIG,
          water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'tank', litres: 60 }], cans: NO_CAN_OWNED },
        },
      }),
      trip: {
        ...inputOf().trip,
        waterNotes: [{ id: 'node/5', on: '2026-05-01', saltOk: true, litresPerMinute }],
        plan: { mostCans: { water: 2 }, stops: [{ id: 'node/5', ...stop }] },
      },
    });
  const fillingAt = (plan: ReturnType<typeof wellAt>) =>
    plan.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/5');

  it('uses a slow well that would do, tells its hours, and takes no can in its place', () => {
    // 0.05 l/min are 72 l a day, of which 18 are drunk: the 18.1 l that are missing take a third of a day.
    const plan = wellAt(250, 500, 0.05);
    expect(plan.cans.water).toBe(0);
    const stop = fillingAt(plan);
    expect(stop).toMatchObject({ used: true });
    expect(stop!.fillHours).toBeCloseTo((24 * 18 * (1 + 5 / 35 / 24)) / (72 - 18), 6);
    // One that gives no more than is drunk fills nothing, and says so.
    const drop = wellAt(250, 500, 18 / 24 / 60);
    expect(drop.restsOn.map(({ code }) => code)).toContain('plan-flows-too-little');
    expect(drop.cans.water).toBeGreaterThan(0);
  });

  it('has the water of that time out of what is aboard where a supply gives only so much', () => {
    // Of 30 l at 0.5 l/min 18.1 l fill the tank: 36 minutes of 18 l a day.
    const plan = wellAt(250, 500, 0.5, { mostLitres: { water: 30 } });
    const leg = plan.legs.water.find(({ from }) => from.id === 'node/5');
    const filledL = 18 * (1 + 5 / 35 / 24);
    expect(leg!.needL).toBeCloseTo(18 * (1 + 5 / 35 / 24 + filledL / 0.5 / 60 / 24), 6);
  });
});

describe('fuel where a source of water is noted', () => {
  it('takes no longer for what the water takes', () => {
    const features = [
      pointFeature('node/7', 100, { ...DIESEL, drinking_water: 'yes', name: 'Both' }),
      pointFeature('node/8', 200, { natural: 'spring', drinking_water: 'yes' }),
    ];
    const input = inputOf({ document: equatorDocument(400), features });
    const waterNotes = ['node/7', 'node/8'].map((id) => ({
      id,
      on: '2026-05-01',
      saltOk: true,
      litresPerMinute: 0.5,
    }));
    const { sides } = questionOf(reckoned({ ...input, trip: { ...input.trip, waterNotes } })).question;
    const termsOf = (commodity: 'fuel' | 'water', name: string) =>
      sides[commodity].edges.find(({ id }) => id === name)?.terms;
    expect(termsOf('water', 'node/8')).toMatchObject({
      daysPerLitre: expect.closeTo(TWO_MINUTES_A_LITRE, 12),
    });
    expect(sides.fuel.edges.map(({ id }) => id)).toContain('node/7');
    expect(termsOf('fuel', 'node/7')).toBeUndefined();
  });
});

describe('water that is treated', () => {
  const spring = pointFeature('node/5', 250, { natural: 'spring', drinking_water: 'untreated' });
  const line = (at: 'filling' | 'tap', lPerMin: number): NonNullable<RigFile['treatment']> => ({
    stages: [ULTRAFILTER, LAMP],
    at,
    taps: [{ name: 'kitchen', afterStage: 2, use: 'drinking', measuredLPerMin: lPerMin }],
  });
  const input = (water: Partial<RigFile['water']>, treatment: NonNullable<RigFile['treatment']>) =>
    inputOf({
      document: equatorDocument(500),
      features: [spring],
      rig: {
        ...EXAMPLE_RIG,
        treatment,
        water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'tank', litres: 60 }], ...water },
      },
    });

  it('on filling takes the time that the line takes', () => {
    // 18.1 l have gone on the way there, and as many go on the way on; what is drunk while it is treated is the spring's.
    const goneL = 18 * (1 + 5 / 35 / 24);
    for (const lPerMin of [0.5, 5]) {
      const plan = planOf(input({ cans: NO_CAN_OWNED }, line('filling', lPerMin)));
      expect(plan.legs.water.find(({ from }) => from.id === 'node/5')!.needL).toBeCloseTo(goneL, 6);
      const stop = plan.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/5');
      expect(stop!.fillHours).toBeCloseTo(goneL / lPerMin / 60 / (1 - 18 / 24 / 60 / lPerMin), 6);
    }
  });

  it('on filling keeps nobody waiting at a tap whose water needs no line', () => {
    const treatment = line('filling', 0.5);
    const termsOf = (rest: Partial<typeof treatment>) => {
      const all = input({}, { ...treatment, ...rest });
      const features = [pointFeature('node/6', 200, TAP)];
      const { question } = questionOf(reckoned({ ...all, supplies: { ...all.supplies, features } }));
      return question.sides.water.edges.find(({ id }) => id === 'node/6')?.terms;
    };
    expect(termsOf({})).toBeUndefined();
    // Where everything goes through the line a litre takes two minutes of a day, and what is drunk meanwhile.
    expect(termsOf({ treatEverything: true })).toMatchObject({
      daysPerLitre: expect.closeTo(TWO_MINUTES_A_LITRE, 12),
    });
  });

  it('only at the tap stays out of cans kept for drinking water', () => {
    // 740 km from the spring are three nights and 5 km, 54.1 l, and 36 l of reserve: two cans beside the 60 l of the
    // tank; all 990 km are four nights and 10 km, 72.2 l and the reserve: too much for both cans.
    const planWith = (grade: 'drinking' | 'any') =>
      planOf({
        ...input({ cans: { litres: 20, owned: 2, grade } }, line('tap', 5)),
        document: equatorDocument(990),
      });
    const any = planWith('any');
    expect(any.legs.water.map(({ cans }) => cans)).toEqual([0, 2]);
    // Filled at the start, both come full to the spring: only 18 l of the tank are gone.
    const drinking = planWith('drinking');
    expect(drinking.legs.water.map(({ cans }) => cans)).toEqual([2, 2]);
    expect(drinking.restsOn.map(({ code }) => code)).toContain('plan-untreated-water');
    expect(any.restsOn.map(({ code }) => code)).not.toContain('plan-untreated-water');
  });

  it('is no supply where the line treats less in a day than is drunk', () => {
    const plan = planOf(input({}, line('tap', 0.01)));
    expect(plan.restsOn.map(({ code }) => code)).toContain('plan-treats-too-little');
    expect(plan.legs.water.map(({ to }) => to.kind)).toEqual(['end']);
    // Nor is it one in the gaps, which share their list of supplies with the plan.
    const { passings, water } = analysisOf(input({}, line('tap', 0.01)));
    expect(passings.filter(({ commodity }) => commodity === 'water').map(({ counts }) => counts)).toEqual([
      false,
    ]);
    expect(water.gaps).toHaveLength(1);
  });
});

describe('a stop that must be made', () => {
  const features = [...TAPS, pointFeature('node/1', 300, DIESEL), pointFeature('node/2', 700, DIESEL, 2)];
  const stopsOf = (plan: NonNullable<TripFile['plan']>) =>
    planOf(withPlan(inputOf({ features }), plan))
      .legs.fuel.slice(1)
      .map(({ from }) => from.id);

  it('is made though the plan needs nothing there, and no other for it', () => {
    // With full cans from km 300 on the station off the route is passed by.
    expect(stopsOf({})).toEqual(['node/1']);
    expect(stopsOf({ mustStop: ['node/2'] })).toContain('node/2');
    expect(stopsOf({ mustStop: ['node/1', 'node/2'] })).toEqual(['node/1', 'node/2']);
    const plan = planOf(withPlan(inputOf({ features }), { mustStop: ['node/1'] }));
    expect(plan.legs.fuel[0]!.to).toMatchObject({ id: 'node/1', atKm: expect.closeTo(300, 3) });
  });

  it('is every one so near to the route, where that is asked for', () => {
    expect(stopsOf({ stopWithinKm: 2.5 })).toEqual(['node/1']);
    expect(stopsOf({ stopWithinKm: 2.7 })).toEqual(['node/1', 'node/2']);
    const water = planOf(withPlan(inputOf({ features }), { stopWithinKm: 0 })).legs.water;
    expect(water.slice(1).map(({ from }) => from.id)).toEqual(TAPS.map(({ id }) => id));
  });

  it('that the route does not come by, or that does not count, is told', () => {
    const shut = pointFeature('node/3', 500, { 'disused:amenity': 'fuel' });
    const input = inputOf({ features: [...features, shut] });
    const { restsOn } = planOf(withPlan(input, { mustStop: ['node/8', 'node/3'] }));
    expect(restsOn.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['plan-stop-unknown', 'plan-must-stop-uncounted']),
    );
  });
});
