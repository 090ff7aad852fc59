import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { densifyStep } from '../../../server/core/geodesy/densify.ts';
import { geodesicBetween } from '../../../server/core/geodesy/geodesic.ts';
import { LONGEST_STEP_M } from '../../../server/core/geodesy/step.ts';

const wgs84 = geodesic.Geodesic.WGS84;
/** Evenly spread, unlike fc.double, which favours numbers near zero. */
const spread = (min: number, max: number) =>
  fc.integer({ min: 0, max: 2 ** 30 }).map((n) => min + ((max - min) * n) / 2 ** 30);
const lengthOf = (lat1: number, lon1: number, lat2: number, lon2: number) =>
  densifyStep(lon1, lat1, lon2, lat2).lengthM;

describe('long steps', () => {
  // Check value G4, second part: the degree of latitude centred on the latitude; the last degree to the pole.
  it.each([
    [-0.5, 0.5, 110_574.304],
    [29.5, 30.5, 110_852.457],
    [44.5, 45.5, 111_131.778],
    [59.5, 60.5, 111_412.273],
    [89, 90, 111_693.865],
  ])('a degree of latitude from %d° to %d° is as long as published', (from, to, lengthM) => {
    expect(Math.abs(lengthOf(from, 12, to, 12) - lengthM)).toBeLessThan(0.001);
  });

  // Check values G13 (Flinders Peak to Buninyong), G14 (geodesics, not parallels), G15 (180th meridian).
  it.each([
    ['G13', -37.95103341667, 144.424867888889, -37.65282113889, 143.92649552778, 54_972.271],
    ['G14, 25 S', -25, 133, -25, 134, 100_949.861],
    ['G14, 45', 45, 0, 45, 10, 787_967.304],
    ['G14, 20', 20, -5, 20, 0, 523_215.997],
    ['G15', -17, 179.9, -17, -179.9, 21_297.165],
  ])('%s has the published length', (_name, lat1, lon1, lat2, lon2, lengthM) => {
    expect(Math.abs(lengthOf(lat1, lon1, lat2, lon2) / lengthM - 1)).toBeLessThan(1.5e-8);
  });

  it('goes the way of check value G16: 100 km at azimuth 60 from 25° S 133° E', () => {
    const step = densifyStep(133, -25, 133.85475851, -24.54616159);
    expect(Math.abs(step.lengthM - 100_000)).toBeLessThan(0.002);
    for (const place of step.inner) {
      const { lat2, lon2 } = wgs84.Direct(-25, 133, 60, place.atM);
      expect(wgs84.Inverse(place.lat, place.lon, lat2!, lon2!).s12).toBeLessThan(0.01);
    }
  });

  it('goes through places of the geodesic within a millimetre over 9,000 km', () => {
    const [from, to] = [
      { lon: 20, lat: 30 },
      { lon: 110, lat: -20 },
    ];
    const line = wgs84.InverseLine(from.lat, from.lon, to.lat, to.lon);
    const along = geodesicBetween(from.lon, from.lat, to.lon, to.lat);
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9]) {
      const { lat, lon } = along(share);
      const { s12 } = wgs84.Inverse(from.lat, from.lon, lat, lon);
      const { lat2, lon2 } = line.Position(s12!);
      expect(wgs84.Inverse(lat, lon, lat2!, lon2!).s12).toBeLessThan(0.001);
    }
  });

  it('should agree with GeographicLib to 1e-9 in length and 1 cm in place up to 5,000 km, no part over 2 km', () => {
    fc.assert(
      fc.property(
        spread(-85, 85),
        spread(-180, 180),
        spread(0, 360),
        spread(3, Math.log10(5e6)).map((power) => 10 ** power),
        (lat, lon, azimuth, lengthM) => {
          const end = wgs84.Direct(lat, lon, azimuth, lengthM);
          const step = densifyStep(lon, lat, end.lon2!, end.lat2!);
          expect(Math.abs(step.lengthM / lengthM - 1)).toBeLessThan(1e-9);
          const marks = [0, ...step.inner.map((place) => place.atM), step.lengthM];
          const parts = marks.slice(1).map((mark, i) => mark - marks[i]!);
          expect(parts.every((part) => part > 0 && part <= LONGEST_STEP_M)).toBe(true);
          for (const place of [step.inner[step.inner.length >> 1], step.inner[step.inner.length >> 2]]) {
            if (place === undefined) continue;
            const there = wgs84.Direct(lat, lon, azimuth, place.atM);
            expect(wgs84.Inverse(place.lat, place.lon, there.lat2!, there.lon2!).s12).toBeLessThan(0.01);
          }
        },
      ),
      { numRuns: 200, seed: 2 },
    );
  });

  it('still joins ends that are nearly opposite on the globe, by some way round', () => {
    const step = densifyStep(0, 0.5, 179.7, -0.4);
    expect(Math.abs(step.lengthM / wgs84.Inverse(0.5, 0, -0.4, 179.7).s12! - 1)).toBeLessThan(0.01);
  });

  it('leaves a step of up to 2 km as it is', () => {
    expect(densifyStep(88, -35, 88.02, -35).inner).toEqual([]);
    expect(densifyStep(88, -35, 88.03, -35).inner.length).toBeGreaterThan(0);
  });

  it('runs on past 180 without a jump', () => {
    const { inner } = densifyStep(179.95, -17, -179.95, -17);
    const lons = [179.95, ...inner.map((place) => place.lon)];
    for (let i = 1; i < lons.length; i += 1) expect(lons[i]).toBeGreaterThan(lons[i - 1]!);
    expect(lons.at(-1)).toBeGreaterThan(180);
  });
});

describe('a place between two others', () => {
  it('is an end at share 0 and 1, the longitude on the turn of the first', () => {
    expect(geodesicBetween(179, 10, -179, 12)(0)).toEqual({ lon: 179, lat: 10 });
    expect(geodesicBetween(179, 10, -179, 12)(1)).toEqual({ lon: 181, lat: 12 });
  });

  it('is the middle of a very short step, too', () => {
    const middle = geodesicBetween(88, -35, 88 + 1e-9, -35 + 1e-9)(0.5);
    expect(middle.lon).toBeCloseTo(88 + 5e-10, 12);
    expect(middle.lat).toBeCloseTo(-35 + 5e-10, 12);
  });
});
