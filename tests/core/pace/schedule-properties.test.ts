import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Schedule, type Stop, scheduleOf } from '../../../server/core/pace/schedule.ts';
import { camp, hoursAt, piecesOf, stay } from './pieces.ts';

const HOURS_PER_DAY = 7;
const stretches = fc.array(
  fc.record({
    km: fc.integer({ min: 1, max: 600 }),
    slow: fc.integer({ min: 5, max: 60 }),
    faster: fc.integer({ min: 0, max: 60 }),
    hoursPerDay: fc.constantFrom(4, HOURS_PER_DAY, 9),
  }),
  { minLength: 1, maxLength: 5 },
);
/** Shares of the route, so that stops lie on it whatever its length. */
const stops = fc.array(
  fc.record({
    share: fc.double({ min: 0, max: 0.999, noNaN: true }),
    days: fc.constantFrom(0, 0.1, 0.5, 1, 2.25),
  }),
  { maxLength: 5 },
);

interface Drive {
  lengthKm: number;
  stops: Stop[];
  slow: Schedule;
  fast: Schedule;
}
const drive = fc.tuple(stretches, stops).map(([pieces, marks]): Drive => {
  const lengthKm = pieces.reduce((sum, piece) => sum + piece.km, 0);
  const placed = marks
    .map(({ share, days }) => (days === 0 ? camp(share * lengthKm) : stay(share * lengthKm, days)))
    .sort((a, b) => a.atM - b.atM);
  const schedule = (faster: boolean) =>
    scheduleOf(
      piecesOf(
        ...pieces.map((piece) => ({
          km: piece.km,
          kmPerHour: piece.slow + (faster ? piece.faster : 0),
          hoursPerDay: piece.hoursPerDay,
        })),
      ),
      placed,
      HOURS_PER_DAY,
    );
  return { lengthKm, stops: placed, slow: schedule(false), fast: schedule(true) };
});

describe('a schedule', () => {
  test('should take no less than the driving and the stays', () => {
    fc.assert(
      fc.property(drive, ({ lengthKm, stops: halts, slow }) => {
        const stayed = halts
          .filter((stop) => stop.kind === 'stay')
          .reduce((sum, stop) => sum + stop.days * 24, 0);
        expect(hoursAt(slow, lengthKm)).toBeGreaterThanOrEqual(slow.drivingH + stayed - 1e-6);
      }),
    );
  });

  test('should tile the route with its days, and their hours with the driving', () => {
    fc.assert(
      fc.property(drive, ({ lengthKm, slow }) => {
        expect(slow.days[0]!.fromM).toBe(0);
        expect(slow.days.at(-1)!.toM).toBe(lengthKm * 1000);
        for (const [index, day] of slow.days.slice(1).entries()) {
          expect(day.fromM).toBe(slow.days[index]!.toM);
          expect(day.index).toBe(slow.days[index]!.index + 1);
          expect(day.hours).toBeLessThanOrEqual(9 + 1e-3);
        }
        expect(slow.days.reduce((sum, day) => sum + day.hours, 0)).toBeCloseTo(slow.drivingH, 6);
      }),
    );
  });

  test('should never go back in time or place', () => {
    fc.assert(
      fc.property(drive, ({ slow: { elapsedH } }) => {
        for (let index = 1; index < elapsedH.atM.length; index += 1) {
          expect(elapsedH.atM[index]!).toBeGreaterThanOrEqual(elapsedH.atM[index - 1]!);
          expect(elapsedH.sum[index]!).toBeGreaterThanOrEqual(elapsedH.sum[index - 1]!);
        }
      }),
    );
  });

  test('should never arrive earlier for being slower', () => {
    fc.assert(
      fc.property(drive, fc.double({ min: 0, max: 1, noNaN: true }), ({ lengthKm, slow, fast }, share) => {
        for (const km of [share * lengthKm, lengthKm]) {
          // Half a second of driving is taken for noise at each day's end.
          expect(hoursAt(slow, km)).toBeGreaterThanOrEqual(hoursAt(fast, km) - 1e-2);
        }
      }),
    );
  });
});
