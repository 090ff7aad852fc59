import { describe, expect, test } from 'vitest';
import type { FuelKind } from '../../../server/contract/rig.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import type { EngineNeeds } from '../../../server/core/supply/judge/engine-needs.ts';
import { analysisOf, pointFeature } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { codesOf, pointOf } from '../supply/judged.ts';

/** Fuel and engine of the rig, what the station lists, evidence, whether it counts, codes of all reasons. */
const CASES: [FuelKind, EngineNeeds, Tags, string, boolean, string[]][] = [
  [
    'petrol',
    { octane: 95 },
    { 'fuel:octane_91': 'yes' },
    'doubtful',
    false,
    ['grade-below-engine', 'evidence-below'],
  ],
  ['petrol', { octane: 95 }, { 'fuel:octane_91': 'yes', 'fuel:octane_95': 'yes' }, 'stated', true, []],
  ['petrol', { octane: 91 }, { 'fuel:octane_91': 'yes' }, 'stated', true, []],
  ['petrol', { octane: 80 }, { 'fuel:octane_80': 'yes' }, 'stated', true, []],
  ['petrol', { octane: 95 }, { 'fuel:petrol': 'yes' }, 'implied', true, ['grade-not-stated']],
  [
    'petrol',
    { octane: 95 },
    { 'fuel:petrol': 'yes', 'fuel:octane_91': 'yes' },
    'implied',
    true,
    ['grade-not-stated'],
  ],
  ['petrol', { octane: 95 }, { 'fuel:e10': 'yes' }, 'stated', true, ['ethanol-blend']],
  [
    'petrol',
    { octane: 98 },
    { 'fuel:e10': 'yes' },
    'doubtful',
    false,
    ['grade-below-engine', 'evidence-below'],
  ],
  ['petrol', { ethanolPercent: 10 }, { 'fuel:e10': 'yes' }, 'stated', true, []],
  [
    'petrol',
    { ethanolPercent: 5 },
    { 'fuel:e10': 'yes' },
    'doubtful',
    false,
    ['blend-beyond-engine', 'evidence-below'],
  ],
  ['petrol', { ethanolPercent: 5 }, { 'fuel:e10': 'yes', 'fuel:e5': 'yes' }, 'stated', true, []],
  ['petrol', { ethanolPercent: 0 }, { 'fuel:octane_95': 'yes' }, 'implied', true, ['grade-not-stated']],
  ['petrol', { ethanolPercent: 85 }, { 'fuel:e85': 'yes' }, 'stated', true, []],
  ['petrol', { octane: 95 }, {}, 'implied', true, []],
  [
    'diesel',
    { biodieselPercent: 7 },
    { 'fuel:biodiesel': 'yes' },
    'doubtful',
    false,
    ['blend-beyond-engine', 'evidence-below'],
  ],
  ['diesel', { biodieselPercent: 7 }, { 'fuel:biodiesel': 'yes', 'fuel:diesel': 'yes' }, 'stated', true, []],
  [
    'diesel',
    { biodieselPercent: 7 },
    { 'fuel:biodiesel': 'yes', 'fuel:HVO': 'yes' },
    'stated',
    true,
    ['fuel-may-not-suit', 'diesel-kin'],
  ],
  ['diesel', { biodieselPercent: 100 }, { 'fuel:biodiesel': 'yes' }, 'stated', true, []],
];

describe('a station and what the engine takes', () => {
  test.each(CASES)('%s engine with %j at %j', (fuelKind, engine, tags, evidence, counts, codes) => {
    const point = pointOf('fuel', { amenity: 'fuel', ...tags }, { fuelKind, engine });
    expect([point.evidence, point.counts, codesOf(point)]).toEqual([evidence, counts, codes]);
  });

  test('a station whose petrol is below the engine takes no part in the gaps', () => {
    const features = [pointFeature('node/1', 300, { amenity: 'fuel', 'fuel:octane_91': 'yes' })];
    const gapsFor = (engine: EngineNeeds) =>
      analysisOf({
        features,
        rig: { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, kind: 'petrol', engine } },
      }).fuel.gaps.length;
    expect(gapsFor({ octane: 91 })).toBe(2);
    expect(gapsFor({ octane: 95 })).toBe(1);
  });
});
