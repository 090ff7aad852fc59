import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkTripValue } from '../../../server/app/input/plan-input.ts';
import type { SurfaceEntry } from '../../../server/contract/surface.ts';
import { SURFACES } from '../../../server/contract/surface.ts';
import { problemLine } from '../../../server/core/input/problem.ts';
import { ALLOWANCE_PERCENT, metresBySurface, surfaceSpans } from '../../../server/core/surface/surface.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';

/** A trip on these surfaces, as reckoned with. */
const tripOn = (surfaces: readonly SurfaceEntry[]) =>
  settleTrip({ surfaces: [...surfaces], allowancePercent: 5 }).trip;

const spansOf = (surfaces: readonly SurfaceEntry[], lengthKm = 100) =>
  surfaceSpans(lengthKm * 1000, tripOn(surfaces)).map(({ fromM, toM, surface, allowancePercent }) => [
    fromM / 1000,
    toM / 1000,
    surface,
    allowancePercent,
  ]);

const anyEntries = fc.array(
  fc
    .record({
      fromKm: fc.double({ min: 0, max: 150, noNaN: true }),
      km: fc.double({ min: 0.01, max: 90, noNaN: true }),
      surface: fc.constantFrom(...SURFACES),
    })
    .map(({ fromKm, km, surface }) => ({ fromKm, toKm: fromKm + km, surface })),
  { maxLength: 8 },
);

describe('surfaces of a route', () => {
  test('what is not told is unknown, with the trip’s allowance', () => {
    expect(spansOf([])).toEqual([[0, 100, 'unknown', 5]]);
    expect(spansOf([{ fromKm: 20, toKm: 60, surface: 'track' }])).toEqual([
      [0, 20, 'unknown', 5],
      [20, 60, 'track', 10],
      [60, 100, 'unknown', 5],
    ]);
  });

  test('where entries overlap the later one holds', () => {
    expect(
      spansOf([
        { fromKm: 0, toKm: 80, surface: 'sealed' },
        { fromKm: 30, toKm: 50, surface: 'sand' },
        { fromKm: 40, toKm: 60, surface: 'unknown' },
      ]),
    ).toEqual([
      [0, 30, 'sealed', 3],
      [30, 40, 'sand', 30],
      [40, 60, 'unknown', 5],
      [60, 80, 'sealed', 3],
      [80, 100, 'unknown', 5],
    ]);
  });

  test('an entry may have an allowance of its own, and may run past the end', () => {
    expect(spansOf([{ fromKm: 90, toKm: 120, surface: 'sand', allowancePercent: 2 }])).toEqual([
      [0, 90, 'unknown', 5],
      [90, 100, 'sand', 2],
    ]);
    expect(spansOf([{ fromKm: 110, toKm: 120, surface: 'sand' }])).toEqual([[0, 100, 'unknown', 5]]);
  });

  test('allowances are the design’s: 3 % road, 10 % track, 30 % open ground and dunes', () => {
    const { sealed, gravel, track, sand, salt } = ALLOWANCE_PERCENT;
    expect([sealed, gravel, track, sand, salt]).toEqual([3, 3, 10, 30, 30]);
  });

  test('spans should tile the route, neighbours differing', () => {
    fc.assert(
      fc.property(anyEntries, fc.double({ min: 0.1, max: 200, noNaN: true }), (surfaces, lengthKm) => {
        const spans = surfaceSpans(lengthKm * 1000, tripOn(surfaces));
        expect(spans[0]!.fromM).toBe(0);
        expect(spans.at(-1)!.toM).toBe(lengthKm * 1000);
        for (const [index, span] of spans.entries()) {
          expect(span.toM).toBeGreaterThan(span.fromM);
          const next = spans[index + 1];
          if (next === undefined) continue;
          expect(next.fromM).toBe(span.toM);
          expect(next.surface).not.toBe(span.surface);
        }
        const sum = [...metresBySurface(spans).values()].reduce((total, m) => total + m, 0);
        expect(sum / 1000).toBeCloseTo(lengthKm, 9);
      }),
    );
  });
});

describe('a trip file’s surfaces', () => {
  const lineOf = (surfaces: unknown) => {
    const outcome = checkTripValue({ surfaces }, 'trip.yaml', null);
    return outcome.ok ? null : problemLine(outcome.problem);
  };
  test.each([
    [[{ fromKm: 0, toKm: 10, surface: 'sand' }], null],
    [
      [{ fromKm: 10, toKm: 10, surface: 'sand' }],
      /surfaces\/0: from km 10 to km 10; expected fromKm before toKm/,
    ],
    [
      [
        { fromKm: 0, toKm: 10, surface: 'sand' },
        { fromKm: 20, toKm: 10, surface: 'mud' },
      ],
      /surfaces\/1: from km 20 to km 10/,
    ],
    [[{ fromKm: 0, toKm: 10, surface: 'gravle' }], /surfaces\/0\/surface: .*Did you mean "gravel"/],
    [[{ fromKm: -1, toKm: 10, surface: 'sand' }], /surfaces\/0\/fromKm: -1/],
    [[{ fromKm: 0, toKm: 10 }], /surfaces\/0/],
  ])('%j', (surfaces, expected) => {
    const line = lineOf(surfaces);
    if (expected === null) expect(line).toBeNull();
    else expect(line).toMatch(expected);
  });
});
