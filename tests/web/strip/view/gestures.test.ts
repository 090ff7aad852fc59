import { describe, expect, test } from 'vitest';
import { keyZoom } from '../../../../web/strip/view/key-zoom.ts';
import { pinched, wheeled } from '../../../../web/strip/view/use-gestures.ts';

/** A strip of 600 px that shows so much of 1,200 km. */
const strip = (fromKm: number, toKm: number) => ({
  shown: { fromKm, toKm },
  lengthKm: 1200,
  heightPx: 600,
  kmAt: (clientY: number) => toKm - (clientY / 600) * (toKm - fromKm),
  onShown: () => {},
});
const turn = (more: Partial<Parameters<typeof wheeled>[0]>) => ({
  deltaX: 0,
  deltaY: 0,
  shiftKey: false,
  clientY: 300,
  ...more,
});

describe('the wheel', () => {
  test('brings the strip nearer about the pointer, and farther', () => {
    expect(wheeled(turn({ deltaY: -240 }), strip(0, 1200))).toEqual({ fromKm: 300, toKm: 900 });
    expect(wheeled(turn({ deltaY: 240 }), strip(500, 700))).toEqual({ fromKm: 400, toKm: 800 });
    expect(wheeled(turn({ deltaY: -240, clientY: 0 }), strip(400, 800))).toEqual({ fromKm: 600, toKm: 800 });
  });

  test('moves it with Shift, or turned sideways', () => {
    expect(wheeled(turn({ deltaY: -60, shiftKey: true }), strip(400, 800))).toEqual({
      fromKm: 440,
      toKm: 840,
    });
    expect(wheeled(turn({ deltaX: 60 }), strip(400, 800))).toEqual({ fromKm: 360, toKm: 760 });
  });

  test('leaves the page to scroll where nothing is left to do', () => {
    expect(wheeled(turn({ deltaY: 100 }), strip(0, 1200))).toBeNull();
    expect(wheeled(turn({ deltaX: 100 }), strip(0, 1200))).toBeNull();
  });
});

test('two fingers bring it nearer by as much as they part, four times at a go at most', () => {
  expect(pinched({ fromY: 200, toY: 100, heldY: 300 }, strip(0, 1200))).toEqual({ fromKm: 400, toKm: 1000 });
  const wide = pinched({ fromY: 299, toY: 0, heldY: 300 }, strip(0, 1200));
  expect(wide.toKm - wide.fromKm).toBe(300);
});

test('keys bring it nearer about the place pointed at, or the middle, and back to all of it', () => {
  expect(keyZoom('+', { fromKm: 0, toKm: 1200 }, 1200, 300)).toEqual({ fromKm: 150, toKm: 750 });
  expect(keyZoom('-', { fromKm: 500, toKm: 700 }, 1200, null)).toEqual({ fromKm: 400, toKm: 800 });
  expect(keyZoom('0', { fromKm: 500, toKm: 700 }, 1200, null)).toEqual({ fromKm: 0, toKm: 1200 });
  expect(keyZoom('ArrowUp', { fromKm: 500, toKm: 700 }, 1200, null)).toBeNull();
});
