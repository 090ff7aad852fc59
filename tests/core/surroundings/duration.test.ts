import { expect, it } from 'vitest';
import { durationHours } from '../../../server/core/surroundings/duration.ts';

/** OSM wiki, Key:duration. */
it.each([
  ['90', 1.5],
  ['1:30', 1.5],
  ['01:30:00', 1.5],
  [' 00:20 ', 1 / 3],
  ['PT1H30M', 1.5],
  ['pt45m', 0.75],
  ['P1DT2H', 26],
  ['PT30S', 1 / 120],
  ['', null],
  ['P', null],
  ['1:75', null],
  ['two hours', null],
  ['1.5', null],
  ['-10', null],
])('a duration of "%s" is %s hours', (written, hours) => {
  const read = durationHours(written);
  if (hours === null) expect(read).toBeNull();
  else expect(read).toBeCloseTo(hours, 12);
});
