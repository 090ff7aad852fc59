import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SurfaceEntry } from '../../../server/contract/surface.ts';
import { flatSurfaces, withCamp, withRestDay, withSurface } from '../../../web/state/edit-trip.ts';

/** By the trip file's own rule: where stretches overlap the later entry holds. */
const laterHolds = (entries: readonly SurfaceEntry[], km: number) =>
  entries.findLast((one) => km >= one.fromKm && km < one.toKm);

const entry: fc.Arbitrary<SurfaceEntry> = fc.record({
  fromKm: fc.integer({ min: 0, max: 60 }),
  toKm: fc.integer({ min: 0, max: 60 }),
  surface: fc.constantFrom('gravel' as const, 'sand' as const, 'unknown' as const),
});

describe('camps and rest days set on the page', () => {
  it('stand in the order of the route, to ten metres, and once at a place', () => {
    const trip = withCamp(withCamp({ camps: [{ atKm: 300, name: 'Dry Fork' }] }, 120.123456), 300.2);
    expect(trip.camps).toEqual([{ atKm: 120.12 }, { atKm: 300, name: 'Dry Fork' }]);
  });

  it('add up at one place', () => {
    const once = withRestDay({}, 417.004);
    expect(once.stays).toEqual([{ atKm: 417, days: 1 }]);
    expect(withRestDay(once, 417.2).stays).toEqual([{ atKm: 417, days: 2 }]);
  });

  it('change nothing else of the trip', () => {
    const trip = { corridorKm: 7, oneWay: [{ fromKm: 1, toKm: 2 }] };
    expect(withRestDay(withCamp(trip, 5), 9)).toMatchObject(trip);
  });
});

describe('surfaces marked on the page', () => {
  it('say at every place what the file says, none over another', () => {
    fc.assert(
      fc.property(
        fc.array(entry, { maxLength: 8 }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (entries, km) => {
          const flat = flatSurfaces(entries);
          expect(laterHolds(flat, km)?.surface).toBe(laterHolds(entries, km)?.surface);
          for (const [place, one] of flat.entries()) {
            expect(one.toKm).toBeGreaterThan(one.fromKm);
            if (place > 0) expect(one.fromKm).toBeGreaterThanOrEqual(flat[place - 1]!.toKm);
          }
        },
      ),
    );
  });

  it('overwrite what was said of the stretch and nothing beside it', () => {
    fc.assert(
      fc.property(
        fc.array(entry, { maxLength: 6 }),
        entry,
        fc.double({ min: 0, max: 60, noNaN: true }),
        (surfaces, marked, km) => {
          const { surfaces: after = [] } = withSurface({ surfaces }, marked);
          const [from, to] = [Math.min(marked.fromKm, marked.toKm), Math.max(marked.fromKm, marked.toKm)];
          const expected = km >= from && km < to ? marked.surface : laterHolds(surfaces, km)?.surface;
          expect(laterHolds(after, km)?.surface).toBe(expected);
        },
      ),
    );
  });

  it('take the two places in either order, and join what says the same', () => {
    const trip = withSurface(withSurface({}, { fromKm: 50, toKm: 10, surface: 'sand' }), {
      fromKm: 50,
      toKm: 80,
      surface: 'sand',
    });
    expect(trip.surfaces).toEqual([{ fromKm: 10, toKm: 80, surface: 'sand' }]);
  });

  it('keep an allowance of the reader’s own on the parts that are left', () => {
    const own: SurfaceEntry = { fromKm: 0, toKm: 100, surface: 'track', allowancePercent: 14 };
    const { surfaces } = withSurface({ surfaces: [own] }, { fromKm: 40, toKm: 60, surface: 'mud' });
    expect(surfaces).toEqual([
      { ...own, toKm: 40 },
      { fromKm: 40, toKm: 60, surface: 'mud' },
      { ...own, fromKm: 60 },
    ]);
  });
});
