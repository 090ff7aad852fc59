import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  holding,
  isWhole,
  lengthOf,
  moved,
  shownOf,
  wholeRoute,
  zoomed,
} from '../../../../web/strip/view/strip-window.ts';

const lengthKm = fc.double({ min: 0.5, max: 20_000, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const HAIR_KM = 1e-6;

/** A route and a stretch of it that can be shown. */
const views = fc.tuple(lengthKm, share, share).map(([length, from, of]) => ({
  length,
  shown: shownOf({ fromKm: from * length, toKm: from * length + of * length }, length),
}));

describe('what is shown of the route', () => {
  test('lies on it and is never less than two kilometres, whatever is done', () => {
    const deeds = fc.array(
      fc.oneof(
        fc.record({ times: fc.double({ min: 0.01, max: 100, noNaN: true }), at: share }),
        fc.record({ by: fc.double({ min: -30_000, max: 30_000, noNaN: true }) }),
        fc.record({ hold: share }),
      ),
    );
    fc.assert(
      fc.property(views, deeds, ({ length, shown: first }, list) => {
        let shown = first;
        for (const deed of list) {
          if ('times' in deed) {
            const aboutKm = shown.fromKm + deed.at * lengthOf(shown);
            shown = zoomed(shown, length, { times: deed.times, aboutKm });
          } else if ('by' in deed) shown = moved(shown, length, deed.by);
          else {
            shown = holding(shown, length, deed.hold * length);
            expect(deed.hold * length).toBeGreaterThanOrEqual(shown.fromKm - HAIR_KM);
            expect(deed.hold * length).toBeLessThanOrEqual(shown.toKm + HAIR_KM);
          }
          expect(shown.fromKm).toBeGreaterThanOrEqual(0);
          expect(shown.toKm).toBeLessThanOrEqual(length + HAIR_KM);
          expect(lengthOf(shown)).toBeGreaterThanOrEqual(Math.min(2, length) - HAIR_KM);
        }
      }),
    );
  });

  test('keeps the place that is pointed at where it is, as it comes nearer', () => {
    const shown = { fromKm: 200, toKm: 600 };
    expect(zoomed(shown, 1000, { times: 4, aboutKm: 300 })).toEqual({ fromKm: 275, toKm: 375 });
    // At the route's end it cannot.
    expect(zoomed(shown, 1000, { times: 0.5, aboutKm: 210 })).toEqual({ fromKm: 190, toKm: 990 });
    expect(zoomed(shown, 1000, { times: 0.5, aboutKm: 590 })).toEqual({ fromKm: 0, toKm: 800 });
  });

  test('is the whole route to begin with, and again after so many steps back', () => {
    expect(shownOf(null, 1000)).toEqual(wholeRoute(1000));
    const near = zoomed(wholeRoute(1000), 1000, { times: 8, aboutKm: 900 });
    expect(isWhole(near, 1000)).toBe(false);
    expect(isWhole(zoomed(near, 1000, { times: 1 / 8, aboutKm: 900 }), 1000)).toBe(true);
  });

  test('moves no farther than the place asks for', () => {
    const shown = { fromKm: 200, toKm: 320 };
    expect(holding(shown, 1000, 260)).toBe(shown);
    expect(holding(shown, 1000, 315)).toEqual({ fromKm: 205, toKm: 325 });
    expect(holding(shown, 1000, 100)).toEqual({ fromKm: 90, toKm: 210 });
  });
});
