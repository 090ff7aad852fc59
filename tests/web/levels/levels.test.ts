import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fullLitres,
  gapIndexAt,
  levelAt,
  litresAt,
  stretchesWithoutCover,
} from '../../../web/levels/levels.ts';
import { sampleReply } from '../sample-reply.ts';

const { fuel, water } = sampleReply().analysis;

describe('what is aboard at a place', () => {
  test('falls evenly along a gap and jumps where it is filled', () => {
    expect(levelAt(water, 90)!.litres).toBeCloseTo(70 - 90 * 0.17, 9);
    expect(levelAt(water, 180)!.litres).toBe(70);
    expect(levelAt(water, 179.999)!.litres).toBeLessThan(40);
  });

  test('is called reserve and dry where the gap says so, to the very end of the route', () => {
    const short = water.gaps[1]!;
    expect(levelAt(water, short.reserveFromKm! - 1)!.state).toBe('left');
    expect(levelAt(water, short.reserveFromKm! + 1)!.state).toBe('reserve');
    expect(levelAt(water, short.runsDryKm! + 1)).toMatchObject({ state: 'dry', litres: 0 });
    const last = fuel.gaps.at(-1)!;
    const spent = {
      ...fuel,
      gaps: [{ ...last, arriveL: -1, marginL: -25, runsDryKm: null, reserveFromKm: null }],
    };
    expect(levelAt(spent, last.to.atKm)!.state).toBe('dry');
  });

  test('belongs to the gap that begins at a supply point', () => {
    expect([0, 179, 180, 639.9, 640, 1200].map((km) => gapIndexAt(fuel, km))).toEqual([0, 0, 1, 1, 2, 3]);
  });

  test('is nothing for a report without gaps', () => {
    expect(levelAt({ ...fuel, gaps: [] }, 5)).toBeNull();
  });

  test('is never below zero nor above what one set out with', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 1300, noNaN: true }), (km) => {
        for (const gap of water.gaps) {
          expect(litresAt(gap, km)).toBeGreaterThanOrEqual(0);
          expect(litresAt(gap, km)).toBeLessThanOrEqual(gap.departL);
        }
      }),
    );
  });

  test('is drawn to the fullest departure, cans included', () => {
    expect(fullLitres(fuel)).toBe(127);
    expect(fullLitres({ ...fuel, gaps: [{ ...fuel.gaps[0]!, departL: 167 }] })).toBe(167);
  });
});

describe('stretches without cover', () => {
  test('are what the cover leaves of the route', () => {
    expect(stretchesWithoutCover(water, 1200)).toEqual([{ fromKm: 1000, toKm: 1100 }]);
    expect(stretchesWithoutCover({ ...water, cover: [] }, 1200)).toEqual([{ fromKm: 0, toKm: 1200 }]);
    expect(levelAt(water, 1050)!.covered).toBe(false);
  });

  test('together with the cover tile the route', () => {
    const spans = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 1200 }), fc.integer({ min: 0, max: 400 })).map(([fromKm, size]) => ({
        fromKm,
        toKm: Math.min(1200, fromKm + size),
      })),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(spans, fc.integer({ min: 0, max: 1199 }), (cover, km) => {
        const at = km + 0.5;
        const within = (list: { fromKm: number; toKm: number }[]) =>
          list.some((span) => at >= span.fromKm && at <= span.toKm);
        expect(within(stretchesWithoutCover({ ...water, cover }, 1200))).toBe(!within(cover));
      }),
    );
  });
});
