import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coordinatesOf } from '../../../server/core/notes/coordinates.ts';
import { metricText } from '../../../server/words/parts/metric.ts';
import { wordsOf } from '../../../server/words/words-of.ts';

const placeOf = (text: string) => {
  const read = coordinatesOf(text);
  return read.ok ? read.place : read.fault.phrase;
};
const PLACE = { lat: expect.closeTo(-33.868333, 5), lon: expect.closeTo(84.206667, 5) };

describe('co-ordinates', () => {
  it.each([
    '-33.868333, 84.206667',
    '-33.868333 84.206667',
    '−33.868333; +84.206667',
    '33.868333S 84.206667E',
    's33.868333,e84.206667',
    'S 33.868333 E 84.206667',
    '84.206667 E, 33.868333 S',
    "33°52.1'S 84°12.4'E",
    "33° 52.1' S, 84° 12.4' E",
    'S33°52.1′ E84°12.4′',
    '33 52.1 S 84 12.4 E',
    '-33 52.1 84 12.4',
    'S 33 52.1, E 84 12.4',
    `33°52'06"S 84°12'24"E`,
    `S 33°52'06.0" E 84°12'24.0"`,
    "33°52'06''S / 84°12'24''E",
    '33º52’06”S 84º12’24”E',
    '33 52 06 S 84 12 24 E',
    `E 84°12'24" S 33°52'06"`,
    '-33°52′06″ 84°12′24″',
    '-33,868333 84,206667',
    '-33,868333; 84,206667',
    '-33,868333, 84,206667',
    '33,868333° S 84,206667° E',
    "33°52,1'S 84°12,4'E",
    '33,868333S,84,206667E',
  ])('are read from %s', (text) => {
    expect(placeOf(text)).toEqual(PLACE);
  });

  it.each([
    ['', 'coordinate-two-wanted'],
    ['   ', 'coordinate-two-wanted'],
    ['33.8', 'coordinate-two-wanted'],
    ['33,84', 'coordinate-comma-unclear'],
    ['33,86812,84,2071', 'coordinate-comma-unclear'],
    ['1 2 3', 'coordinate-two-wanted'],
    ['33, 84, 5', 'coordinate-two-wanted'],
    ['33.8 O 84.2 N', 'coordinate-letter-unclear'],
    ['33.8 N 84.2', 'coordinate-one-letter'],
    ['33.8 N 84.2 S', 'coordinate-same-axis'],
    ['33.8 E 84.2 W', 'coordinate-same-axis'],
    ['-33.8 S 84.2 E', 'coordinate-mixed-up'],
    ["33°61'S 84°12'E", 'coordinate-mixed-up'],
    ["33.5°10'S 84°12'E", 'coordinate-mixed-up'],
    [`33°10"S 84°12'E`, 'coordinate-mixed-up'],
    ['33 60 S 84 12 E', 'coordinate-mixed-up'],
    ['33, 84 5 6 7', 'coordinate-mixed-up'],
    [', 84', 'coordinate-mixed-up'],
    ['33,', 'coordinate-mixed-up'],
    ['N, E 84', 'coordinate-mixed-up'],
    ['N 33 N, E 84', 'coordinate-mixed-up'],
    ['33 N 5, 84 E', 'coordinate-mixed-up'],
    ['--33, 84', 'coordinate-mixed-up'],
    ['33 - 5, 84', 'coordinate-mixed-up'],
    ['33, 84 -', 'coordinate-mixed-up'],
    ['98.2, 12.1', 'coordinate-latitude-beyond'],
    ['12.1, 198.2', 'coordinate-longitude-beyond'],
    ['km 212', 'coordinate-not-read'],
    ['1e3 5', 'coordinate-two-wanted'],
  ])('are refused for what is wrong with "%s"', (text, fault) => {
    expect(placeOf(text)).toBe(fault);
  });

  it.each([
    ['98.2, 12.1', 98.2],
    ['12.1, -198.2', -198.2],
  ])('are refused with the degrees that are too many in "%s"', (text, degrees) => {
    const read = coordinatesOf(text);
    expect(read).toMatchObject({ ok: false, fault: { facts: { degrees } } });
  });

  it('take a sign after no letter, and nothing for minus nothing', () => {
    expect(placeOf('-0, -0')).toEqual({ lat: 0, lon: 0 });
    expect(placeOf('0 S 0 W')).toEqual({ lat: 0, lon: 0 });
    expect(placeOf('+33 -84')).toEqual({ lat: 33, lon: -84 });
    expect(placeOf('-33° -84°')).toEqual({ lat: -33, lon: -84 });
    expect(placeOf('90, 180')).toEqual({ lat: 90, lon: 180 });
  });

  it('come back from every notation in which they can be written, to a hundred-thousandth of a degree', () => {
    const degrees = (most: number) =>
      fc.integer({ min: -most * 1e5, max: most * 1e5 }).map((value) => value / 1e5);
    const parts = (value: number, count: number) => {
      // In thousandths of a second: minutes and seconds carry over as they do on paper.
      const units = Math.round(Math.abs(value) * 3_600_000);
      const [whole, minutes, seconds] = [
        Math.floor(units / 3_600_000),
        Math.floor((units % 3_600_000) / 60_000),
        (units % 60_000) / 1000,
      ];
      return count === 2 ? [whole, minutes + seconds / 60] : [whole, minutes, seconds];
    };
    const written = (
      value: number,
      letters: string,
      form: { count: number; marks: boolean; before: boolean },
    ) => {
      const numbers = form.count === 1 ? [Math.abs(value)] : parts(value, form.count);
      const marks = form.marks ? ['°', "'", '"'] : [' ', ' ', ' '];
      const text = numbers
        .map((number, place) => `${number}${marks[place]}`)
        .join('')
        .trim();
      const letter = value < 0 ? letters[1] : letters[0];
      return form.before ? `${letter}${text}` : `${text}${letter}`;
    };
    const form = fc.record({
      count: fc.constantFrom(1, 2, 3),
      marks: fc.boolean(),
      before: fc.boolean(),
      between: fc.constantFrom(' ', ', ', '; '),
    });
    fc.assert(
      fc.property(degrees(90), degrees(180), form, (lat, lon, { between, ...how }) => {
        const text = `${written(lat, 'NS', how)}${between}${written(lon, 'EW', how)}`;
        expect(placeOf(text), text).toEqual({ lat: expect.closeTo(lat, 5), lon: expect.closeTo(lon, 5) });
      }),
    );
  });

  it('are a place on Earth or a fault that has words, whatever is typed', () => {
    const typed = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom(...'0123456789.,;/ -+°\'"NSEWnsewO') }),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const read = coordinatesOf(text);
        if (!read.ok) {
          expect(metricText(wordsOf(read.fault))).not.toBe('');
          return;
        }
        expect(Math.abs(read.place.lat)).toBeLessThanOrEqual(90);
        expect(Math.abs(read.place.lon)).toBeLessThanOrEqual(180);
      }),
      { numRuns: 2000 },
    );
  });
});
