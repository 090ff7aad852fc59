import { expect, it } from 'vitest';
import { viaSteps } from '../../../../server/core/route/build/via-steps.ts';

/** Three steps, the last of which turns off the meridian to the east; each a degree over the equator long, near enough. */
const turningBy = (east: number) => ({
  lon: Float64Array.of(0, 0, east, east),
  lat: Float64Array.of(-0.03, -0.01, 0.01, 0.03),
  atM: Float64Array.of(0, 2000, 5000, 7000),
});

it('a step goes to a chosen point where it turns by more than 45 degrees at an end, not by just so many', () => {
  // Over the equator, from 0.01° south to 0.01° north: 0.02° east are a turn of 45 degrees to the last bit.
  expect(viaSteps(turningBy(0.02), [{ fromM: 2000, toM: 5000 }])).toEqual([false]);
  expect(viaSteps(turningBy(0.0201), [{ fromM: 2000, toM: 5000 }])).toEqual([true]);
  expect(viaSteps(turningBy(-0.0201), [{ fromM: 2000, toM: 5000 }])).toEqual([true]);
});

it('a turn at one end of a step is enough', () => {
  const line = { ...turningBy(0.0201), lon: Float64Array.of(0, 0, 0.0201, 0.0402) };
  expect(viaSteps(line, [{ fromM: 2000, toM: 5000 }])).toEqual([true]);
  expect(viaSteps(line, [{ fromM: 5000, toM: 7000 }])).toEqual([false]);
});
