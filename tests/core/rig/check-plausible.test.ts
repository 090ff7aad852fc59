import { describe, expect, test } from 'vitest';
import { checkRigValue, checkTripValue } from '../../../server/app/input/plan-input.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { analysisOf, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

const VEHICLE = { kerbKg: 2600, people: [{ kg: 80 }] };
const CREW = { people: [{ count: 2 }] };
const { litresPerDay: _, ...WATER } = EXAMPLE_RIG.water;

/** What is absurd, where, and what is said to be usual. */
const ABSURD: [string, string, Partial<RigFile>, RegExp][] = [
  [
    'a wagon of 2.6 t that takes 60 l/100 km',
    '/fuel/litresPer100Km',
    { vehicle: VEHICLE, fuel: { ...EXAMPLE_RIG.fuel, litresPer100Km: 60 } },
    /2\.3 to 41\.2 l\/100 km/,
  ],
  [
    'a wagon of 2.6 t that takes 1.7 l/100 km',
    '/fuel/litresPer100Km',
    { vehicle: VEHICLE, fuel: { ...EXAMPLE_RIG.fuel, litresPer100Km: 1.7 } },
    /2\.3 to 41\.2 l\/100 km/,
  ],
  [
    'a centre of gravity above the roof',
    '/vehicle/cgHeightM',
    {
      vehicle: {
        ...VEHICLE,
        cgHeightM: 1.9,
        cabin: { fromM: -1, toM: 3, floorHeightM: 0.5, roofHeightM: 1.8 },
      },
    },
    /up to 1\.8 m/,
  ],
  [
    'a centre of gravity above any roof',
    '/vehicle/cgHeightM',
    { vehicle: { ...VEHICLE, cgHeightM: 2.5 } },
    /up to 2 m/,
  ],
  [
    'sand that rolls easier than a road',
    '/fuel/surfaceFactors/sand',
    { fuel: { ...EXAMPLE_RIG.fuel, surfaceFactors: { sand: 0.7 } } },
    /1 to 10 times/,
  ],
  ['a pace of 135 km/h', '/pace/kmPerHour', { pace: { hoursPerDay: 7, kmPerHour: 135 } }, /up to 130 km\/h/],
  [
    'a pace on gravel of 150 km/h',
    '/pace/bySurface/gravel/kmPerHour',
    {
      pace: {
        ...EXAMPLE_RIG.pace,
        bySurface: { gravel: { kmPerHour: { slow: 100, typical: 140, fast: 150 } } },
      },
    },
    /up to 130 km\/h/,
  ],
  [
    'driving 24 hours a day',
    '/pace/hoursPerDay',
    { pace: { ...EXAMPLE_RIG.pace, hoursPerDay: 24 } },
    /up to 16 hours/,
  ],
  [
    'a dog of a tonne',
    '/crew/pets/0/kg',
    { water: WATER, crew: { ...CREW, pets: [{ kind: 'dog', kg: 1000 }] } },
    /up to 120 kg/,
  ],
  [
    'a roof that bears more than the vehicle weighs',
    '/vehicle/permitted/roofKg',
    { vehicle: { ...VEHICLE, permitted: { roofKg: 3000 } } },
    /up to 1300 kg/,
  ],
];

describe.each(ABSURD)('%s', (_what, path, changes, usual) => {
  const rig: RigFile = { ...EXAMPLE_RIG, ...changes };

  test('is refused with the usual range and the way to insist', () => {
    const outcome = checkRigValue(rig, 'rig.yaml');
    if (outcome.ok) throw new Error('not refused');
    expect(outcome.problem).toMatchObject({ code: 'rig-invalid', place: path });
    expect(outcome.problem.expected).toMatch(usual);
    expect(outcome.problem.remedy).toContain(`"${path}"`);
    expect(outcome.problem.remedy).toContain('"sure"');
  });

  test('is taken where its path is listed as sure, and stays so when settled', () => {
    const sure = { ...rig, sure: [path] };
    expect(checkRigValue(sure, 'rig.yaml')).toMatchObject({ ok: true });
    expect(checkRigValue(settleRig(sure).settled, 'rig.yaml')).toMatchObject({ ok: true });
  });
});

test('a day of 20 hours at the wheel in a trip is questioned too', () => {
  expect(checkTripValue({ campAfterHours: 20 }, 'trip.yaml', null)).toMatchObject({ ok: false });
  const sure = { campAfterHours: 20, sure: ['/campAfterHours'] };
  expect(checkTripValue(sure, 'trip.yaml', null)).toMatchObject({ ok: true });
});

/** Kerb mass, l/100 km and kind of vehicles as they are: none is questioned. */
test.each([
  [180, 4, 'petrol'],
  [1300, 6, 'diesel'],
  [2000, 28, 'petrol'],
  [3000, 24, 'lpg'],
  [3500, 45, 'cng'],
  [7500, 28, 'diesel'],
  [14_000, 40, 'diesel'],
  [40_000, 35, 'diesel'],
] as const)('%i kg at %i l/100 km of %s is not questioned', (kerbKg, litresPer100Km, kind) => {
  const fuel = { kind, litresPer100Km, tanks: [{ name: 'main', litres: 20 }] };
  const rig = { ...EXAMPLE_RIG, fuel, water: { ...EXAMPLE_RIG.water, tanks: [] }, vehicle: { kerbKg } };
  expect(checkRigValue(rig, 'rig.yaml')).toMatchObject({ ok: true });
});

describe('what is sensible is taken', () => {
  test('nights of −60 °C', () => {
    expect(checkTripValue({ coldestNightC: -60 }, 'trip.yaml', null)).toMatchObject({ ok: true });
  });

  test('kerosene, which no station is taken to sell unless it says so', () => {
    const rig: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, kind: 'kerosene' } };
    expect(checkRigValue(rig, 'rig.yaml')).toMatchObject({ ok: true });
    const features = [
      pointFeature('node/1', 300, { amenity: 'fuel' }),
      pointFeature('node/2', 500, { amenity: 'fuel', 'fuel:diesel': 'yes' }),
      pointFeature('node/3', 700, { amenity: 'fuel', 'fuel:kerosene': 'yes' }),
    ];
    const fuels = analysisOf({ rig, features }).passings.filter(({ commodity }) => commodity === 'fuel');
    expect(fuels.map(({ id, counts }) => [id, counts])).toEqual([
      ['node/1', false],
      ['node/2', false],
      ['node/3', true],
    ]);
  });

  test('a rig with no fixed water tank: what is to be carried is cans', () => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      water: { litresPerDay: { low: 4, typical: 5, high: 6 }, tanks: [], reserve: { days: 1 } },
    };
    expect(checkRigValue(rig, 'rig.yaml')).toMatchObject({ ok: true });
    const features = [pointFeature('node/1', 245, TAP)];
    const analysis = analysisOf({ ...inputOf({ rig, features, document: equatorDocument(490) }) });
    expect(analysis.water.capacityL).toBe(0);
    for (const gap of analysis.water.gaps) {
      expect(gap.verdict).toBe('short');
      expect(gap.extraCans).toBe(Math.ceil(gap.extraL / 20));
      expect(Object.values(gap).every((value) => typeof value !== 'number' || Number.isFinite(value))).toBe(
        true,
      );
    }
  });
});
