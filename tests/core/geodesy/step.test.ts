import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { stepM } from '../../../server/core/geodesy/step.ts';
import {
  ECCENTRICITY_SQUARED,
  meridianRadiusM,
  primeVerticalRadiusM,
  SEMI_MINOR_M,
} from '../../../server/core/geodesy/wgs84.ts';

const wgs84 = geodesic.Geodesic.WGS84;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** Evenly spread, unlike fc.double, which favours numbers near zero. */
const spread = (min: number, max: number) =>
  fc.integer({ min: 0, max: 2 ** 30 }).map((n) => min + ((max - min) * n) / 2 ** 30);

describe('WGS 84', () => {
  it('has the derived figures of check value G1', () => {
    expect(SEMI_MINOR_M).toBeCloseTo(6_356_752.314245, 6);
    expect(ECCENTRICITY_SQUARED).toBeCloseTo(0.00669437999014, 14);
  });

  // Check value G4: length of a degree of latitude, M pi/180, metres.
  it.each([
    [0, 110_574.276],
    [15, 110_648.696],
    [30, 110_852.442],
    [45, 111_131.777],
    [60, 111_412.287],
    [75, 111_618.384],
    [90, 111_693.98],
  ])('has a degree of latitude at %d° as long as published', (lat, lengthM) => {
    expect(Math.abs((meridianRadiusM(rad(lat)) * Math.PI) / 180 - lengthM)).toBeLessThan(0.001);
  });

  // Check value G5: length of a degree of longitude, N cos(phi) pi/180, metres.
  it.each([
    [0, 111_319.491],
    [15, 107_550.489],
    [30, 96_486.28],
    [45, 78_846.835],
    [60, 55_800.002],
    [75, 28_902.006],
  ])('has a degree of longitude at %d° as long as published', (lat, lengthM) => {
    const byRadius = (primeVerticalRadiusM(rad(lat)) * Math.cos(rad(lat)) * Math.PI) / 180;
    expect(Math.abs(byRadius - lengthM)).toBeLessThan(0.001);
    let bySteps = 0;
    for (let i = 0; i < 1000; i += 1) bySteps += stepM(20 + i / 1000, lat, 20 + (i + 1) / 1000, lat);
    expect(Math.abs(bySteps - lengthM)).toBeLessThan(0.001);
  });
});

describe('the length of a step', () => {
  it('should agree with GeographicLib to 1e-9 up to 5 km, anywhere but within 0.5° of a pole', () => {
    fc.assert(
      fc.property(
        spread(-89.5, 89.5),
        spread(-180, 180),
        spread(0, 360),
        spread(1, 5_000),
        (lat, lon, azimuth, lengthM) => {
          const { lat2, lon2 } = wgs84.Direct(lat, lon, azimuth, lengthM);
          const found = stepM(lon, lat, lon2!, lat2!);
          // A metre is about 1e-5 degrees: the degrees' own rounding moves the ends by some nanometres.
          expect(Math.abs(found - lengthM)).toBeLessThan(lengthM * 1e-9 + 2e-8);
        },
      ),
      { numRuns: 500, seed: 1 },
    );
  });

  it('should be nothing between a place and itself, on whatever turn of the globe', () => {
    expect(stepM(10, -27, 10, -27)).toBe(0);
    expect(stepM(-170, -27, 190, -27)).toBeLessThan(1e-6);
  });

  it('should go the short way over the 180th meridian (check value G15)', () => {
    const { s12 } = wgs84.Inverse(-17, 179.99, -17, -179.99);
    expect(stepM(179.99, -17, -179.99, -17)).toBeCloseTo(s12!, 5);
    expect(stepM(-179.99, -17, 179.99, -17)).toBeCloseTo(s12!, 5);
  });

  it('should not be what the sphere alone gives (check value G8: 0.56 % too long north-south at the equator)', () => {
    const lengthM = stepM(0, 0, 0, 0.01);
    expect(lengthM).toBeCloseTo(wgs84.Inverse(0, 0, 0.01, 0).s12!, 6);
    expect(1111.9508 / lengthM - 1).toBeCloseTo(0.005614, 5);
  });
});
