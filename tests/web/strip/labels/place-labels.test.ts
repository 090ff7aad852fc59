import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LabelWish, placeLabels } from '../../../../web/strip/labels/place-labels.ts';

const BOUNDS = { topPx: 0, bottomPx: 300 };
const HAIR_PX = 1e-4;

const wishes = fc
  .array(
    fc.record({
      topPx: fc.double({ min: -20, max: 320, noNaN: true }),
      heightPx: fc.integer({ min: 5, max: 40 }),
      rank: fc.integer({ min: 0, max: 5 }),
      maxShiftPx: fc.integer({ min: 0, max: 40 }),
      shorter: fc.boolean(),
    }),
    { maxLength: 40 },
  )
  .map((drafts) =>
    drafts.map(
      ({ shorter, ...draft }, i): LabelWish => ({
        key: String(i),
        ...draft,
        ...(shorter ? { shorterPx: draft.heightPx / 2 } : {}),
      }),
    ),
  );

describe('labels along an edge', () => {
  test('never overlap, and stand within the bounds', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const placed = placeLabels(all, BOUNDS);
        placed.forEach((label, i) => {
          const above = placed[i - 1];
          if (above !== undefined)
            expect(label.topPx).toBeGreaterThanOrEqual(above.topPx + above.heightPx - HAIR_PX);
          expect(label.topPx).toBeGreaterThanOrEqual(BOUNDS.topPx - HAIR_PX);
          expect(label.topPx + label.heightPx).toBeLessThanOrEqual(BOUNDS.bottomPx + HAIR_PX);
        });
      }),
    );
  });

  test('keep the order of the places they belong to', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const wished = placeLabels(all, BOUNDS).map((label) => all[Number(label.key)]!.topPx);
        expect(wished).toEqual([...wished].sort((a, b) => a - b));
      }),
    );
  });

  test('are moved no further than each allows, and say how far', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        for (const label of placeLabels(all, BOUNDS)) {
          const wish = all[Number(label.key)]!;
          expect(label.topPx - wish.topPx).toBeCloseTo(label.shiftPx, 6);
          expect(Math.abs(label.shiftPx)).toBeLessThanOrEqual(wish.maxShiftPx + HAIR_PX);
        }
      }),
    );
  });

  test('that fit with everything else where they wish to stand stay there', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 5, max: 20 }), { maxLength: 12 }), (heights) => {
        let topPx = 0;
        const apart = heights.map((heightPx, i) => {
          const wish = { key: String(i), topPx, heightPx, rank: heights.length - i, maxShiftPx: 9 };
          topPx += heightPx;
          return wish;
        });
        const placed = placeLabels(apart, BOUNDS);
        expect(placed.map((label) => label.topPx)).toEqual(apart.map((wish) => wish.topPx));
      }),
    );
  });

  test('give way to better ranked ones', () => {
    const clash = [
      { key: 'low', topPx: 100, heightPx: 30, rank: 2, maxShiftPx: 0 },
      { key: 'high', topPx: 110, heightPx: 30, rank: 1, maxShiftPx: 0 },
    ];
    expect(placeLabels(clash, BOUNDS).map((label) => label.key)).toEqual(['high']);
  });

  test('share the shift when both can move', () => {
    const clash = [
      { key: 'a', topPx: 100, heightPx: 30, rank: 1, maxShiftPx: 10 },
      { key: 'b', topPx: 120, heightPx: 30, rank: 2, maxShiftPx: 10 },
    ];
    expect(placeLabels(clash, BOUNDS).map((label) => label.topPx)).toEqual([95, 125]);
  });

  test('stand shorter before they are left out', () => {
    const clash = [
      { key: 'a', topPx: 100, heightPx: 30, rank: 1, maxShiftPx: 0 },
      { key: 'b', topPx: 85, heightPx: 30, shorterPx: 15, rank: 2, maxShiftPx: 0 },
    ];
    expect(placeLabels(clash, BOUNDS)).toEqual([
      { key: 'b', topPx: 85, heightPx: 15, shiftPx: 0 },
      { key: 'a', topPx: 100, heightPx: 30, shiftPx: 0 },
    ]);
  });
});
