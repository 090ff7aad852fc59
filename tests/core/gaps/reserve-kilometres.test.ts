import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Surface } from '../../../server/contract/surface.ts';
import { reserveOf, returnNeedL } from '../../../server/core/gaps/need.ts';
import { runOf } from '../../../server/core/plan/drive/run.ts';
import { turnBackOf } from '../../../server/core/plan/drive/turn-back/turn-back.ts';
import { bearableL } from '../../../server/core/plan/legs/bearable.ts';
import { questionOf } from '../../../server/core/plan/question/question-of.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG, passingEdge } from '../../helpers/course.ts';
import { reckoned } from '../../helpers/reckoned.ts';

/** The example's 17 l/100 km and a reserve of 100 km; a road with sand from km 300 to km 500. */
const inputFor = (
  pumpsKm: readonly number[],
  surfaces: { fromKm: number; toKm: number; surface: Surface }[],
) =>
  inputOf({
    document: equatorDocument(1000),
    features: pumpsKm.map((km) => pointFeature(`node/${km}`, km, DIESEL)),
    rig: EXAMPLE_RIG,
    trip: { ...inputOf().trip, surfaces },
  });
const SAND = [{ fromKm: 300, toKm: 500, surface: 'sand' as const }];
const gapsTo = (pumpsKm: readonly number[]) => {
  const { fuel } = reckoned(inputFor(pumpsKm, SAND)).analysis;
  return new Map(fuel.gaps.map((gap) => [gap.to.id, gap]));
};

describe('the kilometres of a reserve', () => {
  // 100 km of sand with 30 % for bends, from pump to pump.
  const sandPerKmL = (gapsTo([320, 420]).get('node/420')?.needL ?? 0) / 130;

  it('are of the surface that they are driven on, the hardest at the end of a stretch and behind it', () => {
    expect(sandPerKmL).toBeGreaterThan(0.17);
    const reserveAt = (km: number) => gapsTo([km]).get(`node/${km}`)?.reserveL;
    // 100 km before the sand and more: none of it.
    expect(reserveAt(150)).toBeCloseTo(17, 9);
    expect(reserveAt(199)).toBeCloseTo(17, 9);
    expect(reserveAt(201)).toBeCloseTo(100 * sandPerKmL, 6);
    expect(reserveAt(295)).toBeCloseTo(100 * sandPerKmL, 6);
    expect(reserveAt(400)).toBeCloseTo(100 * sandPerKmL, 6);
    // The last kilometre of the way to it is sand, then none is.
    expect(reserveAt(500.5)).toBeCloseTo(100 * sandPerKmL, 6);
    expect(reserveAt(502)).toBeCloseTo(17, 9);
  });

  it('are told with the surface', () => {
    const [term] = gapsTo([295]).get('node/295')?.working.reserveL ?? [];
    expect(term?.label).toMatchObject({
      phrase: 'reserve-km',
      facts: { km: 100, surface: 'sand', litresPer100Km: expect.closeTo(100 * sandPerKmL, 6) },
    });
  });

  it('are on the way back those of where it leads to, if that is harder', () => {
    // From the sand on to the road: the reserve on arrival is of the road, on coming back of the sand.
    const gap = gapsTo([450, 950]).get('node/950');
    expect(gap?.reserveL).toBeCloseTo(17, 9);
    const { course } = reckoned(inputFor([450, 950], SAND)).sides.fuel;
    const back = (atM: number) => returnNeedL(course, passingEdge(450_000), passingEdge(atM));
    expect(gap?.turnBackM).toBeLessThan(950_000);
    expect(back(gap?.turnBackM ?? 0)).toBeCloseTo(127 - 100 * sandPerKmL, 6);
  });

  it('are the same for gaps, for a plan’s legs and for its turn-back points, wherever sand lies', {
    tags: 'slow',
  }, () => {
    const km = fc.integer({ min: 0, max: 999 });
    fc.assert(
      fc.property(fc.array(km, { minLength: 1, maxLength: 4 }), km, km, (places, a, b) => {
        const pumps = [...new Set(places)].sort((x, y) => x - y);
        const surfaces = a === b ? [] : [{ ...SAND[0]!, fromKm: Math.min(a, b), toKm: Math.max(a, b) }];
        const trip = reckoned(inputFor(pumps, surfaces));
        const { fuel } = questionOf(trip).question.sides;
        for (const [index, gap] of trip.analysis.fuel.gaps.entries()) {
          const { needL, departL, to } = gap;
          expect(reserveOf(fuel.course, needL, to.atM).litres).toBeCloseTo(gap.reserveL, 9);
          const bearsL = bearableL(fuel, { tankL: departL, cans: 0 }, to.atM);
          expect(bearsL - needL).toBeCloseTo(gap.marginL, 9);
          // Where it is least it bounds all others from above.
          expect(bearableL(fuel, { tankL: departL, cans: 0 }, null)).toBeGreaterThanOrEqual(bearsL);
          const [from, end] = [fuel.edges[index]!, fuel.edges[index + 1]!];
          if (end.atM - from.atM < 1) continue;
          const stretch = {
            course: fuel.course,
            from,
            to: end,
            tankL: departL,
            cans: 0,
            canL: 20,
            detours: [],
          };
          const turnM = turnBackOf(runOf(stretch));
          if (gap.turnBackM === null || turnM === null) expect(turnM).toBe(gap.turnBackM);
          else expect(turnM).toBeCloseTo(gap.turnBackM, 3);
        }
      }),
      { numRuns: 60 },
    );
  });
});
