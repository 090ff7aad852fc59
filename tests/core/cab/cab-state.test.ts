import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Commodity } from '../../../server/contract/common.ts';
import { type CabRuns, cabRunsOf } from '../../../server/core/cab/cab-runs.ts';
import { type CabAsk, cabState } from '../../../server/core/cab/cab-state.ts';
import type { CabSide, SideState } from '../../../server/core/cab/side-state.ts';
import type { Basis } from '../../../server/core/plan/drive/basis.ts';
import { runOf } from '../../../server/core/plan/drive/run.ts';
import type { Stretch } from '../../../server/core/plan/drive/stretch.ts';
import { turnBackOf } from '../../../server/core/plan/drive/turn-back/turn-back.ts';
import { turnBacksOf } from '../../../server/core/plan/drive/turn-back/turn-backs.ts';
import { gaugeOf } from '../../../server/core/plan/gauge/gauge-of.ts';
import { failedStretches } from '../../../server/core/plan/what-if/changed/failed-stretches.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { smallBasis, withCourses } from '../plan/what-if/small-basis.ts';
import { byHandWith } from './by-hand.ts';

const checks = { numRuns: 150, seed: 20_261_130 };
const NONE = { fuel: [], water: [] };

const ask = (atM: number, litres: CabAsk['litres'], more: Partial<CabAsk> = {}): CabAsk => ({
  atM,
  litres,
  left: false,
  failed: NONE,
  ...more,
});

function known(side: CabSide): SideState {
  if ('none' in side) throw new Error(side.none);
  return side;
}

const sameAboard = (litres: number) => ({ fuel: litres, water: litres });
const sideAt = (runs: CabRuns, commodity: Commodity, one: CabAsk) => known(cabState(runs, one)[commodity]);

/** Every line of the gauge of a basis with the state in which just so much is aboard as it asks for. */
function* lines(basis: Basis) {
  const runs = cabRunsOf(basis);
  for (const row of gaugeOf(basis, turnBacksOf(basis)).rows) {
    // One that begins a stretch asks for what its own stretch takes; the place is one that was left then.
    if (row.at === 'turn-back') continue;
    for (const commodity of COMMODITIES)
      yield { runs, row, commodity, line: row[commodity], left: row.at === 'leaving' };
  }
}

/** Where two stops lie at one place the table leaves them one after the other, the crew both. */
const isOnePlace = (basis: Basis, atM: number) =>
  new Set(
    COMMODITIES.flatMap((each) =>
      basis.sides[each].stretches.flatMap(({ to }) => (to.atM === atM ? [to.id] : [])),
    ),
  ).size <= 1;

function oneBasis(): Basis {
  const [sample] = fc.sample(smallBasis(), { numRuns: 1, seed: 3 });
  if (sample === undefined) throw new Error('no sample');
  return sample.basis;
}

describe('the state of a vehicle', () => {
  it('has no margin just where the gauge line asks for what is aboard, and less below it', {
    tags: 'slow',
  }, () => {
    let count = 0;
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        for (const { runs, row, commodity, line, left } of lines(basis)) {
          if (left && !isOnePlace(basis, row.atM)) continue;
          const there = sideAt(runs, commodity, ask(row.atM, sameAboard(line.onL), { left }));
          expect(there.on.leastL).toBe(line.onL);
          expect(there.on.marginL).toBe(0);
          expect(there.back?.leastL ?? null).toBe(line.backL);
          expect(there.plannedL).toBe(line.plannedL);
          expect(['enough', 'unknown']).toContain(there.on.verdict);
          const less = sideAt(runs, commodity, ask(row.atM, sameAboard(line.onL - 0.01), { left }));
          expect(less.on.verdict).not.toBe('enough');
          expect(less.on.marginL).toBeCloseTo(-0.01, 9);
          count += 1;
        }
      }),
      checks,
    );
    expect(count).toBeGreaterThan(1_000);
  });

  it('arrives with what the stretch driven with so much less arrives with', { tags: 'slow' }, () => {
    let count = 0;
    fc.assert(
      fc.property(
        smallBasis(),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        ({ basis }, share, lessL) => {
          const runs = cabRunsOf(basis);
          for (const commodity of COMMODITIES)
            for (const stretch of basis.sides[commodity].stretches) {
              const atM = stretch.from.atM + share * (stretch.to.atM - stretch.from.atM);
              if (atM <= stretch.from.atM) continue;
              const { plannedL } = sideAt(runs, commodity, ask(atM, sameAboard(0)));
              const state = sideAt(runs, commodity, ask(atM, sameAboard(plannedL - lessL)));
              const driven = runOf(lower(stretch, lessL));
              expect(state.on.marginL).toBeCloseTo(driven.marginL, 6);
              expect(state.on.arriveL).toBeCloseTo(driven.arriveL, 6);
              count += 1;
            }
        },
      ),
      checks,
    );
    expect(count).toBeGreaterThan(300);
  });

  it('can go back until the turn-back point, as planned, and sooner with less', { tags: 'slow' }, () => {
    let count = 0;
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        const runs = cabRunsOf(basis);
        for (const commodity of COMMODITIES)
          for (const stretch of basis.sides[commodity].stretches) {
            const turnM = turnBackOf(runOf(stretch));
            if (turnM === null || turnM - stretch.from.atM < 2_000) continue;
            const atM = turnM - 1_000;
            const { plannedL } = sideAt(runs, commodity, ask(atM, sameAboard(0)));
            const planned = sideAt(runs, commodity, ask(atM, sameAboard(plannedL)));
            expect(planned.back?.verdict).toBe('enough');
            expect(planned.back?.untilM).toBeCloseTo(turnM, 3);
            const less = sideAt(runs, commodity, ask(atM, sameAboard(plannedL - 0.02)));
            expect(less.back?.untilM ?? 0).toBeLessThanOrEqual(turnM + 1e-6);
            expect(less.back?.marginL).toBeCloseTo((planned.back?.marginL ?? 0) - 0.02, 9);
            count += 1;
          }
      }),
      checks,
    );
    expect(count).toBeGreaterThan(100);
  });

  it('goes over a stop that gave nothing as that stretch is driven, and says nothing of two running', {
    tags: 'slow',
  }, () => {
    let over = 0;
    let beyond = 0;
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        const runs = cabRunsOf(basis);
        const { stretches } = basis.sides.fuel;
        for (const [index, { to }] of stretches.entries()) {
          const [before, after] = [stretches[index], stretches[index + 1]];
          if (before === undefined || after === undefined || to.id === null) continue;
          const failed = { fuel: [to.id], water: [] };
          const atM = (after.from.atM + after.to.atM) / 2;
          if (atM === after.from.atM || after.to.id === to.id) continue;
          const state = cabState(runs, ask(atM, sameAboard(30), { failed })).fuel;
          if ('none' in state) continue;
          expect(state.to.atM).toBe(after.to.atM);
          expect(state.from.atM).toBeLessThan(after.from.atM);
          const way = failedStretches(basis, 'fuel', ({ id }) => id === to.id).find(
            ({ stretch }) => stretch.from.atM < atM && stretch.to.atM >= atM,
          );
          if (way === undefined) throw new Error('no stretch over the stop');
          const driven = runOf(lower(way.stretch, state.plannedL - 30));
          expect(state.on.marginL).toBeCloseTo(driven.marginL, 6);
          expect(state.on.arriveL).toBeCloseTo(driven.arriveL, 6);
          over += 1;
          if (after.to.id === null) continue;
          const both = { fuel: [to.id, after.to.id], water: [] };
          expect(cabState(runs, ask(atM, sameAboard(30), { failed: both })).fuel).toEqual({
            commodity: 'fuel',
            none: 'beyond-plan',
          });
          beyond += 1;
        }
      }),
      checks,
    );
    expect(over).toBeGreaterThan(50);
    expect(beyond).toBeGreaterThan(10);
  });

  it('says nothing of a commodity that was not read', () => {
    const basis = oneBasis();
    const { fuel, answer } = cabState(cabRunsOf(basis), ask(1_000, { fuel: null, water: 1_000 }));
    expect(fuel).toEqual({ commodity: 'fuel', none: 'unread' });
    expect(answer).toBe('unread');
  });

  it('is never calm over a way that nobody knows, and is so again behind it', () => {
    const plain = oneBasis();
    const [stretch] = plain.sides.fuel.stretches;
    const { fromM, toM } = { fromM: stretch!.from.atM, toM: stretch!.to.atM };
    const middleM = (fromM + toM) / 2;
    const jump = { kind: 'bridge' as const, fromM: middleM - 10, toM: middleM + 10 };
    const closed = { fromM: middleM - 10, toM: middleM + 10 };
    for (const change of [{ sketchy: [jump] }, { closed: [closed] }]) {
      const runs = cabRunsOf(withCourses(plain, (course) => ({ ...course, ...change })));
      const verdictAt = (atM: number) => sideAt(runs, 'fuel', ask(atM, sameAboard(9_999))).on.verdict;
      expect(verdictAt(middleM - 100)).toBe('unknown');
      expect(verdictAt(middleM + 100)).toBe('enough');
    }
  });

  it('does not know whether one gets through where no map tells of supplies, before it would be dry', () => {
    const plain = oneBasis();
    const [stretch] = plain.sides.fuel.stretches;
    const { from, to } = stretch!;
    const atM = (from.atM + to.atM) / 2;
    const verdictWith = (uncovered: { fromM: number; toM: number }[]) =>
      sideAt(
        cabRunsOf(withCourses(plain, (course) => ({ ...course, uncovered }))),
        'fuel',
        ask(atM, sameAboard(0.1)),
      ).on.verdict;
    expect(verdictWith([])).toBe('short');
    expect(verdictWith([{ fromM: atM, toM: to.atM }])).toBe('unknown');
    // What lies behind helps nobody.
    expect(verdictWith([{ fromM: from.atM, toM: atM - 1 }])).toBe('short');
  });
});

const lower = (stretch: Stretch, lessL: number): Stretch => ({ ...stretch, tankL: stretch.tankL - lessL });

const byHand = byHandWith(10);

describe('the answer of both commodities', () => {
  /** At km 40 of 100: 6 l to go on, 4 l to go back, and 10 l in reserve. */
  it.each([
    [16, 100, 'on'],
    [100, 16, 'on'],
    [15.9, 100, 'back'],
    [14, 14, 'back'],
    [13.9, 100, 'reserve'],
    [100, 6, 'reserve'],
    [5.9, 100, 'reserve-back'],
    [4, 100, 'reserve-back'],
    [3.9, 100, 'none'],
    [15, 3.9, 'none'],
  ])('with %d l of fuel and %d l of water is "%s"', (fuel, water, answer) => {
    expect(cabState(byHand, ask(40_000, { fuel, water })).answer).toBe(answer);
  });

  it('is the reserve on the way on where nobody can go back', () => {
    const oneWay = byHandWith(null);
    expect(cabState(oneWay, ask(40_000, { fuel: 9, water: 100 })).answer).toBe('reserve-on');
    expect(cabState(oneWay, ask(40_000, { fuel: 17, water: 100 })).answer).toBe('on');
    expect(cabState(oneWay, ask(40_000, { fuel: 5, water: 100 })).answer).toBe('none');
  });
});
