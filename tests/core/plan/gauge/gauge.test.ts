import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Gauge, GaugeSide } from '../../../../server/contract/whatif.ts';
import type { Profile } from '../../../../server/core/gaps/course/profile.ts';
import type { Basis } from '../../../../server/core/plan/drive/basis.ts';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import { turnBacksOf } from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import { STEP_M } from '../../../../server/core/plan/gauge/gauge-of.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { courseOf, EXAMPLE_RIG, endEdge, startEdge } from '../../../helpers/course.ts';
import { gaugeOf } from '../by-hand/contracted.ts';
import { basisFrom, smallBasis, stopAt, withCourses } from '../what-if/small-basis.ts';

const runs = { numRuns: 300, seed: 20_261_126 };
const gauge = (basis: Basis): Gauge => gaugeOf(basis, turnBacksOf(basis));

/** Fuel of a rig with one tank of 90 l and 15 l/100 km, water ample. */
type Stops = ReturnType<typeof stopAt>[];
function fuelOnly(lengthKm: number, reserve: object, stops: Stops = [], taps: Stops = []): Basis {
  const rigFile = {
    ...EXAMPLE_RIG,
    fuel: {
      ...EXAMPLE_RIG.fuel,
      litresPer100Km: { low: 15, typical: 15, high: 15 },
      tanks: [{ name: 'main', litres: 90 }],
      reserve,
    },
  };
  const side = (commodity: 'fuel' | 'water') => {
    const course = courseOf({ commodity, rigFile, lengthM: lengthKm * 1000 });
    const { drawableL, canL } = course.rig[commodity];
    const edges = [startEdge, ...(commodity === 'fuel' ? stops : taps), endEdge(lengthKm * 1000)];
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
  return basisFrom({ fuel: side('fuel'), water: side('water') }, () => 0);
}

describe('the gauge table', () => {
  it.each([
    [400, { fraction: 1 / 3 }],
    [540, { fraction: 0.1 }],
    [600, { fraction: 0 }],
  ])('asks for the full tank for %d km where that is how far it goes (P21)', (lengthKm, reserve) => {
    expect(gauge(fuelOnly(lengthKm, reserve)).rows[0]!.fuel.onL).toBeCloseTo(90, 9);
  });

  it('adds a share of the need to the reserve (P18)', () => {
    // 60 l, 5 % of them, and 7 l.
    expect(gauge(fuelOnly(400, { litres: 7, shareOfNeed: 0.05 })).rows[0]!.fuel.onL).toBeCloseTo(70, 9);
  });

  it('has the way to a tap behind it once that is left, at the very place where the pump lies as well', () => {
    const tap = { ...stopAt(220, 7), id: 'node/tap' };
    const { rows } = gauge(fuelOnly(500, { litres: 15 }, [stopAt(220, 4)], [tap]));
    const [arriving, leaving] = (['arriving', 'leaving'] as const).map((kind) =>
      rows.find(({ at, atKm, commodities }) => at === kind && atKm === 220 && commodities.includes('water')),
    );
    // 14 km there and back, at 15 l for 100 km.
    expect((arriving?.fuel.onL ?? 0) - (leaving?.fuel.onL ?? 0)).toBeCloseTo(2.1, 9);
    expect((arriving?.fuel.plannedL ?? 0) - (leaving?.fuel.plannedL ?? 0)).toBeCloseTo(2.1, 9);
    // Still to come: 4 km to the pump, and the reserve.
    expect(leaving?.fuel.onL).toBeCloseTo(0.6 + 15, 9);
  });

  it('has a line every 50 km, two at a stop, one at a turn-back point, in order', () => {
    const { rows } = gauge(fuelOnly(500, { litres: 15 }, [stopAt(220, 4)]));
    const shown = rows.filter(({ at }) => at !== 'turn-back').map(({ atKm, at }) => [atKm, at]);
    expect(STEP_M).toBe(50_000);
    expect(shown).toEqual([
      [0, 'start'],
      [50, 'step'],
      [100, 'step'],
      [150, 'step'],
      [200, 'step'],
      [220, 'arriving'],
      [220, 'leaving'],
      [250, 'step'],
      [300, 'step'],
      [350, 'step'],
      [400, 'step'],
      [450, 'step'],
      [500, 'end'],
    ]);
    const at = (km: number, place: string) => rows.find((row) => row.atKm === km && row.at === place)!.fuel;
    // On the route beside the stop: 4 km to it and 15 l in reserve. Leaving it: 284 km.
    expect(at(220, 'arriving').onL).toBeCloseTo(0.6 + 15, 9);
    expect(at(220, 'leaving').onL).toBeCloseTo(284 * 0.15 + 15, 9);
    expect(at(300, 'step').onL).toBeCloseTo(200 * 0.15 + 15, 9);
    expect(at(300, 'step').backL).toBeCloseTo(84 * 0.15 + 15, 9);
    expect(at(100, 'step').plannedL).toBeCloseTo(75, 9);
  });

  it('says nothing of going back over what cannot be driven back', () => {
    const basis = withCourses(fuelOnly(500, { litres: 15 }), (course) => ({
      ...course,
      oneWay: [{ fromM: 120_000, toM: 130_000 }],
    }));
    const { rows } = gauge(basis);
    for (const { atKm, fuel } of rows) expect(fuel.backL === null).toBe(atKm > 120);
  });

  it('falls towards the next supply to go on, and rises away from the last to go back', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        const { rows } = gauge(basis);
        for (const commodity of COMMODITIES) {
          let before: GaugeSide | null = null;
          for (const row of rows) {
            const now = row[commodity];
            if (before !== null && before.from.atKm === now.from.atKm && before.to.atKm === now.to.atKm) {
              expect(now.onL).toBeLessThanOrEqual(before.onL + 1e-9);
              expect(now.backL!).toBeGreaterThanOrEqual(before.backL! - 1e-9);
            }
            before = now;
          }
        }
      }),
      runs,
    );
  });

  it('asks just before a stop for the way to it and the reserve', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(smallBasis(), ({ basis, route }) => {
        for (const row of gauge(basis).rows) {
          if (row.at !== 'arriving') continue;
          for (const commodity of row.commodities) {
            const side = row[commodity];
            const stretch = basis.sides[commodity].stretches.find(
              ({ to }) => to.kind === 'passing' && to.atM === row.atKm * 1000,
            )!;
            const { figures } = runOf(stretch);
            const perKm = commodity === 'fuel' ? 0.1 : route.waterLPerDay / 100;
            const halts = stretch.detours
              .filter(({ atM }) => atM === stretch.to.atM)
              .reduce((sum, { bothWaysM }) => sum + bothWaysM / 1000, 0);
            const wayL = (stretch.to.detourM / 1000 + halts) * perKm;
            const reserveL = route.reserveL[commodity] + route.shareOfNeed[commodity] * figures.needL;
            expect(side.onL).toBeCloseTo(wayL + reserveL, 6);
          }
        }
      }),
      runs,
    );
  });

  it('shows at a turn-back point just what is aboard there, or more where it falls at once', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(smallBasis(), ({ basis }) => {
        for (const row of gauge(basis).rows) {
          if (row.at !== 'turn-back') continue;
          for (const commodity of row.commodities) {
            const { backL, plannedL, from } = row[commodity];
            if (row.atKm === from.atKm) continue;
            // At a halt for the other commodity what is aboard falls at one place.
            const falls = basis.sides[commodity].stretches.some(({ detours }) =>
              detours.some(({ atM }) => Math.abs(atM - row.atKm * 1000) < 1e-3),
            );
            if (falls) expect(plannedL).toBeGreaterThanOrEqual(backL! - 1e-6);
            else expect(plannedL).toBeCloseTo(backL!, 6);
          }
        }
      }),
      runs,
    );
  });

  it('never asks for less where more is used', { tags: 'slow' }, () => {
    const times = ({ atM, sum }: Profile, factor: number): Profile => ({
      atM,
      sum: sum.map((value) => value * factor),
    });
    fc.assert(
      fc.property(smallBasis(), fc.double({ min: 1, max: 1.5, noNaN: true }), ({ basis }, factor) => {
        const turnBacks = turnBacksOf(basis);
        const before = gaugeOf(basis, turnBacks);
        const more = withCourses(basis, (course) => {
          const { litresPerDay } = course.rig.water;
          return {
            ...course,
            litres: { out: times(course.litres.out, factor), home: times(course.litres.home, factor) },
            off: { ...course.off, litres: course.off.litres * factor },
            rig: {
              ...course.rig,
              water: {
                ...course.rig.water,
                litresPerDay: { ...litresPerDay, high: litresPerDay.high * factor },
              },
            },
          };
        });
        gaugeOf(more, turnBacks).rows.forEach((row, index) => {
          for (const commodity of COMMODITIES) {
            expect(row[commodity].onL).toBeGreaterThanOrEqual(before.rows[index]![commodity].onL - 1e-9);
            expect(row[commodity].backL!).toBeGreaterThanOrEqual(
              before.rows[index]![commodity].backL! - 1e-9,
            );
          }
        });
      }),
      runs,
    );
  });
});
