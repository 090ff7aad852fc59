import { describe, expect, test } from 'vitest';
import { rateOn } from '../../../../server/core/fuel/course/surface-rate.ts';
import { factsOf } from '../facts.ts';

/** 17 l/100 km of diesel observed on sealed road at 2,600 kg, one percent for each 100 kg, an engine of 35 %. */
const loaded = (massKg: number) =>
  factsOf({
    detail: { observed: { surface: 'sealed', massKg: 2600 }, loadPercentPer100Kg: 1 },
    massKg,
  });
const litresPer100Km = (massKg: number, surface: 'sealed' | 'gravel' | 'sand' | 'unknown') =>
  rateOn(loaded(massKg), surface, 'high').litresPerWayM * 100_000;

describe('what a load takes', () => {
  test('on the surface where the rate was observed is its percent: 400 kg are 4 %', () => {
    expect(litresPer100Km(3000, 'sealed')).toBeCloseTo(17 * 1.04, 9);
  });

  test.each([
    // c m g s / (eta LHV), check-values F19: 0.01 on 3,000 kg are 2.34 l/100 km.
    ['gravel', 1.15, 0.02 - 0.013],
    ['sand', 1.5, 0.12 - 0.013],
    ['unknown', 1.15, 0.02 - 0.013],
  ] as const)('on %s goes by its own rolling resistance as well', (surface, factor, more) => {
    const rollingL = (more * 400 * 9.80665 * 100_000) / (0.35 * 36e6);
    expect(litresPer100Km(3000, surface)).toBeCloseTo(17 * factor * 1.04 + rollingL, 9);
  });

  test('is nothing at the observed mass, on whatever surface', () => {
    expect(litresPer100Km(2600, 'sand')).toBeCloseTo(17 * 1.5, 9);
  });
});
