import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LaidSupply, TripFile } from '../../../server/contract/trip.ts';
import { type AnalyseInput, reckonTrip } from '../../../server/core/analyse/analyse.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { analysisOf, DIESEL, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { planCarry, whatIf } from '../plan/by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));

const laying = (laid: LaidSupply[], trip: Partial<TripFile> = {}): Partial<AnalyseInput> => ({
  trip: { ...inputOf().trip, ...trip, laid },
});

const FUEL: LaidSupply = { commodity: 'fuel', litres: 60, atKm: 600 };
const laidIn = (changes: Parameters<typeof analysisOf>[0]) =>
  analysisOf(changes).passings.filter(({ id }) => id.startsWith('laid/'));

function reckoned(input: AnalyseInput) {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

describe('supplies of the user’s own', () => {
  it('are passings at their place, known as stated, with their litres and what to see to', () => {
    const [depot, brought] = laidIn(
      laying([
        { ...FUEL, name: 'North depot', detourKm: 2 },
        { commodity: 'water', litres: 40, atKm: 700, by: 'others' },
      ]),
    );
    expect(depot).toMatchObject({
      id: 'laid/fuel-600',
      name: 'North depot',
      kind: 'depot',
      commodity: 'fuel',
      atKm: 600,
      detourKm: 2,
      evidence: 'stated',
      counts: true,
      mostL: 60,
    });
    expect(depot!.reasons.map(({ text }) => text)).toEqual([
      'Your own supply: 60 l and no more. See that it is still there',
    ]);
    expect(brought).toMatchObject({
      kind: 'supply brought by others',
      waterClass: 'drinking',
      lat: expect.closeTo(0, 9),
    });
  });

  it('do not count where one may come before they are there, nor where nobody said when one comes', () => {
    // Day 1 of 60 km/h for 7 hours ends at km 420; km 600 is on the second day at the earliest, 5 May.
    const counts = (from: string, trip: Partial<TripFile> = {}) =>
      laidIn(laying([{ ...FUEL, from }], trip)).map((passing) => passing.counts);
    expect(counts('2026-05-05')).toEqual([true]);
    expect(counts('2026-05-06')).toEqual([false]);
    const { departure: _departure, ...undated } = inputOf().trip;
    const [passing] = laidIn({ trip: { ...undated, laid: [{ ...FUEL, from: '2020-01-01' }] } });
    expect(passing).toMatchObject({ counts: false });
    expect(passing!.reasons[0]).toMatchObject({
      code: 'not-there-yet',
      text: 'There only from 2020-01-01: say when the trip begins',
    });
  });

  it('keep their ids when others are taken away, so that what is told of one stays with it', () => {
    const second: LaidSupply = { commodity: 'water', litres: 40, atKm: 700 };
    const ids = (laid: LaidSupply[]) => laidIn(laying(laid)).map(({ id }) => id);
    expect(ids([FUEL, second, second])).toEqual(['laid/fuel-600', 'laid/water-700', 'laid/water-700-2']);
    expect(ids([second])).toEqual(['laid/water-700']);
  });

  it('go by what the user found of them since: gone, there, salty', () => {
    const water: LaidSupply = { commodity: 'water', litres: 40, atKm: 600 };
    const found = (trip: Partial<TripFile>) => laidIn(laying([water], trip))[0]!;
    const report = (works: boolean) => ({
      confirmations: [{ id: 'laid/water-600', on: '2026-05-01', works }],
    });
    expect(found(report(true))).toMatchObject({ evidence: 'confirmed', counts: true });
    const gone = found(report(false));
    expect([gone.counts, gone.reasons[0]?.code]).toEqual([false, 'reported-out']);
    const note = (saltOk: boolean) => ({ waterNotes: [{ id: 'laid/water-600', on: '2026-05-01', saltOk }] });
    expect(found(note(false))).toMatchObject({ counts: false, waterClass: 'washing' });
    expect(found(note(true))).toMatchObject({ counts: true, waterClass: 'drinking' });
  });

  it('do not count where better evidence is asked for', () => {
    expect(laidIn(laying([FUEL], { counting: { fuel: 'confirmed' } }))[0]).toMatchObject({ counts: false });
  });

  it('past the end of the route are left out, and said to be', () => {
    const analysis = analysisOf(laying([{ ...FUEL, atKm: 1400 }]));
    expect(analysis.passings).toEqual([]);
    expect(analysis.cautions).toContainEqual(
      expect.objectContaining({
        code: 'laid-off-route',
        text: 'A supply laid at km 1400 lies past the end of the route and is left out.',
      }),
    );
  });

  it('fill no more than they hold: the gap behind begins with what came and that', () => {
    // 17 l/100 km: 127 - 102 = 25 l come to km 600; 60 l more are 85.
    const { fuel } = analysisOf(laying([FUEL]));
    expect(fuel.gaps.map(({ departL }) => departL)).toEqual([127, expect.closeTo(85, 6)]);
    expect(fuel.gaps[1]!.arriveL).toBeCloseTo(85 - 0.17 * 740, 6);
    const ample = analysisOf(laying([{ ...FUEL, litres: 500 }])).fuel;
    expect(ample.gaps[1]!.departL).toBe(127);
  });

  it('give no more in the plan’s own way, nor what is told of a stop of the map', () => {
    const stops = [{ id: 'node/1', mostLitres: { fuel: 60 } }];
    const told = analysisOf({
      features: [pointFeature('node/1', 600, DIESEL)],
      trip: { ...inputOf().trip, plan: { stops } },
    });
    expect(told.passings[0]!.mostL).toBe(60);
    expect(told.fuel.gaps.map(({ marginL }) => marginL)).toEqual(
      analysisOf(laying([FUEL])).fuel.gaps.map(({ marginL }) => expect.closeTo(marginL, 3)),
    );
  });

  it('send for cans to where more is to be had', () => {
    const input = { ...laying([FUEL]), features: [pointFeature('node/1', 300, DIESEL)] };
    const todo = analysisOf(input)
      .answer.todo.map((sentence) => JSON.stringify(sentence))
      .join('\n');
    // The depot's 60 l fill the tank but for 9 l, and the way to the end takes 125.8 of 127 l: the can is filled at km 300.
    expect(todo).toContain('fuel station');
    expect(todo).not.toContain('depot');
  });

  it('hold in gaps, what-ifs and plan alike: where every stretch holds, nothing is to be carried', {
    tags: 'slow',
  }, () => {
    const laid = fc.record({
      commodity: fc.constant('fuel' as const),
      litres: fc.integer({ min: 5, max: 120 }),
      atKm: fc.integer({ min: 1, max: 1339 }),
    });
    let calm = 0;
    fc.assert(
      fc.property(fc.array(laid, { minLength: 1, maxLength: 6 }), (all) => {
        const trip = reckoned(inputOf({ features: TAPS, ...laying(all) }));
        const { gaps } = trip.analysis.fuel;
        const { plan, driven } = planCarry(trip, { solver, seconds: 30, clock: () => 0 });
        const basis = basisOf(trip, null);
        for (const [index, { departL }] of gaps.entries())
          expect(basis.sides.fuel.stretches[index]?.tankL).toBe(departL);
        if (gaps.every(({ marginL }) => marginL >= 0)) {
          calm += 1;
          expect([plan.status, plan.getCans.fuel]).toEqual(['found', 0]);
        }
        if (driven === null) return;
        for (const { fuel } of plan.sheet)
          if (fuel !== null && fuel.mostL !== null) expect(fuel.fillL).toBeLessThanOrEqual(fuel.mostL + 1e-6);
        expect(whatIf(trip, basisOf(trip, driven), {}).basis).toBe('plan');
      }),
      { numRuns: 40, seed: 20_261_130 },
    );
    expect(calm).toBeGreaterThan(0);
  });
});
