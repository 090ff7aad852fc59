import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PANEL_WIDTH, percentAfter } from '../../../web/page/PanelsDivider.tsx';

describe("the panels' width", () => {
  it.each([
    [null, 29],
    ['', 29],
    ['wide', 29],
    ['NaN', 29],
    ['40', 40],
    ['0', 20],
    ['1e9', 65],
  ])('kept as %j is read as %i %%', (kept, percent) => {
    expect(PANEL_WIDTH.read(kept)).toBe(percent);
  });

  it('is moved by the arrow keys and to its ends, by no other key', () => {
    expect(percentAfter('ArrowLeft', 40, 1440)).toBe(42);
    expect(percentAfter('ArrowRight', 40, 1440)).toBe(38);
    expect(percentAfter('Home', 40, 1440)).toBe(20);
    expect(percentAfter('End', 40, 1440)).toBe(65);
    expect(percentAfter('a', 40, 1440)).toBeNull();
    // Where the style sheet holds them wider than they were set, the first press is seen.
    expect(percentAfter('ArrowLeft', 20, 1100)).toBe(36);
  });

  it('stays within its ends, and is kept as it is', () => {
    const keys = fc.array(fc.constantFrom('ArrowLeft', 'ArrowRight', 'Home', 'End'));
    fc.assert(
      fc.property(keys, fc.integer({ min: 1100, max: 4000 }), (pressed, windowPx) => {
        const percent = pressed.reduce((last, key) => percentAfter(key, last, windowPx) ?? last, 29);
        expect(percent).toBeGreaterThanOrEqual(20);
        expect(percent).toBeLessThanOrEqual(65);
        expect(PANEL_WIDTH.read(PANEL_WIDTH.write(percent))).toBe(percent);
      }),
    );
  });
});
