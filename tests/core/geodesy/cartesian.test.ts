import { expect, it } from 'vitest';
import { arcOfChordM, chordOfArcM } from '../../../server/core/geodesy/cartesian.ts';

const RADIUS_M = 6_371_000;

it('half a turn or more has the longest chord that there is: the axis of the ellipsoid', () => {
  // Twice the equatorial radius of WGS 84, 6,378,137 m.
  expect(chordOfArcM(Math.PI * RADIUS_M, RADIUS_M)).toBe(12_756_274);
  expect(chordOfArcM(30_000_000, RADIUS_M)).toBe(12_756_274);
});

it('a quarter of a turn has the root of two of the radius as its chord, and the chord leads back to it', () => {
  const arcM = (Math.PI / 2) * RADIUS_M;
  expect(chordOfArcM(arcM, RADIUS_M)).toBeCloseTo(Math.SQRT2 * RADIUS_M, 6);
  expect(arcOfChordM(chordOfArcM(arcM, RADIUS_M), RADIUS_M)).toBeCloseTo(arcM, 6);
});
