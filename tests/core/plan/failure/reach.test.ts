import { describe, expect, it } from 'vitest';
import type { Commodity } from '../../../../server/contract/common.ts';
import {
  backwardsL,
  type FailingSide,
  reachesBack,
  reachesOn,
} from '../../../../server/core/plan/failure/reach.ts';
import type { Hop } from '../../../../server/core/plan/legs/leg.ts';
import { edgeAt } from '../../../../server/core/plan/side/carry-side.ts';
import { haltsOf } from '../../../../server/core/plan/side/halts.ts';
import { otherOf } from '../../../../server/core/plan/side/other-of.ts';
import { SLACK } from '../../../../server/core/quantity/slack.ts';
import { bareRoute, bareStop, questionOf, type SmallRoute } from '../by-hand/small-routes.ts';

/** One side of a route, every halt of the other made. */
function failingOf(route: SmallRoute, commodity: Commodity): FailingSide {
  const { sides } = questionOf(route);
  const side = sides[commodity];
  return { side, foreign: haltsOf(sides[otherOf(commodity)], side.course), spendReserve: false };
}

/** Litres from the start to the first stop and home, with so much in the tank. */
const homeL = (failing: FailingSide, tankL: number) =>
  backwardsL(
    failing,
    { from: edgeAt(failing.side, 0), stock: { tankL, cans: 0 }, place: edgeAt(failing.side, 1) },
    SLACK,
  );

const hopTo = (from: number, to: number, tankL: number, filledL: number): Hop => ({
  from,
  to,
  tankL,
  cans: 0,
  filledL,
  spareM: 0,
});

describe('the way back when a stop fails', () => {
  it('is borne with just what it takes aboard, and not with less', () => {
    // 100 km out and home at 10 l/100 km.
    const failing = failingOf(bareRoute({ stops: [bareStop(100)] }), 'fuel');
    expect(homeL(failing, 20)).toBeCloseTo(20, 9);
    expect(homeL(failing, 19.999)).toBeNull();
  });

  it('is none where a stretch can be driven one way alone, however much is aboard', () => {
    const failing = failingOf(bareRoute({ stops: [bareStop(100)] }), 'fuel');
    const { side } = failing;
    const course = { ...side.course, oneWay: [{ fromM: 20_000, toM: 30_000 }] };
    const reaches = (of: FailingSide) => reachesBack(of, hopTo(0, 1, 40, 0), edgeAt(side, 1));
    expect(reaches(failing)).toBe(true);
    expect(reaches({ ...failing, side: { ...side, course } })).toBe(false);
  });

  it('pays a halt for water with the fuel of its detour and nothing else', () => {
    const stops = [bareStop(50, { offers: 'water', detourKm: 5 }), bareStop(100)];
    // 200 km and 10 km of detour.
    expect(homeL(failingOf(bareRoute({ stops }), 'fuel'), 40)).toBeCloseTo(21, 9);
  });

  it('takes water for the detour of a halt for fuel on the way, and for no day more', () => {
    const stops = [bareStop(50, { detourKm: 5 }), bareStop(100, { offers: 'water' })];
    // Two days of 5 l out and home, and 10 km of 100 km a day.
    expect(homeL(failingOf(bareRoute({ stops }), 'water'), 40)).toBeCloseTo(10.5, 9);
  });
});

describe('the way on when a stop fails', () => {
  it('is borne only where every hop that follows is', () => {
    const stops = [bareStop(50), bareStop(100, { mostL: { fuel: 5 } })];
    const reaches = (lengthKm: number) =>
      reachesOn(failingOf(bareRoute({ lengthKm, stops }), 'fuel'), hopTo(0, 1, 20, 0), [
        hopTo(1, 2, 20, 0),
        hopTo(2, 3, 15, 5),
      ]);
    // 20 l: 10 are left at km 100, where 5 are filled in, for 150 km.
    expect(reaches(250)).toBe(true);
    expect(reaches(260)).toBe(false);
  });
});
