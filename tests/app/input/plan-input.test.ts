import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { explainShape } from '../../../server/app/input/explain-shape.ts';
import { nearestWord } from '../../../server/app/input/nearest-word.ts';
import { checkRigValue, checkTripValue } from '../../../server/app/input/plan-input.ts';
import { RigFile } from '../../../server/contract/rig.ts';
import { TripFile } from '../../../server/contract/trip.ts';
import { type Outcome, problemLine } from '../../../server/core/input/problem.ts';

const rig = () => ({
  name: 'Long-wheelbase wagon',
  fuel: {
    kind: 'diesel',
    litresPer100Km: { low: 14, typical: 15.5, high: 17 },
    tanks: [{ name: 'main', litres: 130, unusableLitres: 3 }],
    cans: { litres: 20, owned: 4 },
    reserve: { km: 100, shareOfNeed: 0.1 },
  },
  water: {
    litresPerDay: { low: 11, typical: 14, high: 18 },
    tanks: [{ name: 'under floor', litres: 70 }],
    cans: { litres: 20, owned: 2 },
    reserve: { days: 2 },
  },
  pace: { hoursPerDay: 7, kmPerHour: { slow: 35, typical: 45, fast: 60 } },
});

/** A copy of the rig with one value set at a path ("fuel.tanks.0.litres"), undefined takes the key out. */
function rigWith(path: string, value: unknown): unknown {
  const whole = rig();
  const steps = path.split('.');
  let group: Record<string, unknown> = whole as unknown as Record<string, unknown>;
  for (const step of steps.slice(0, -1)) group = group[step] as Record<string, unknown>;
  const last = steps.at(-1)!;
  if (value === undefined) delete group[last];
  else group[last] = value;
  return whole;
}

const lineOf = (outcome: Outcome<unknown>) => (outcome.ok ? 'ok' : problemLine(outcome.problem));

/** The line with lists of known keys cut to their first two, so that a new key breaks no test. */
const firstKeys = (line: string) => line.replace(/(one of \w+, \w+), [\w, ]+\./, '$1, …');

describe('a rig from outside', () => {
  it('is taken as it is when it fits', () => {
    expect(checkRigValue(rig(), 'rig.yaml')).toEqual({ ok: true, value: rig() });
  });

  it.each([
    [
      'fuel.tanks.0.litres',
      -3,
      'rig.yaml, /fuel/tanks/0/litres: -3; expected a number above 0 and at most 5000, in litres. Correct /fuel/tanks/0/litres.',
    ],
    [
      'fuel.tanks.0.unusable',
      3,
      'rig.yaml, /fuel/tanks/0/unusable: an unknown key; expected one of name, litres, … Did you mean "unusableLitres".',
    ],
    [
      'colour',
      'sand',
      'rig.yaml, /colour: an unknown key; expected one of name, fuel, … Take it out, or see the README for what each key means.',
    ],
    [
      'fuel.kind',
      'deisel',
      'rig.yaml, /fuel/kind: "deisel"; expected "diesel" or "petrol" or "lpg" or "cng" or "lng" or "e85" or "kerosene". Did you mean "diesel".',
    ],
    [
      'fuel.litresPer100Km',
      'seventeen',
      'rig.yaml, /fuel/litresPer100Km: "seventeen"; expected a number above 0 and at most 200 or a group of keys (low, typical, high). Correct /fuel/litresPer100Km.',
    ],
    [
      'fuel.litresPer100Km.high',
      5000,
      'rig.yaml, /fuel/litresPer100Km/high: 5000; expected a number above 0 and at most 200. Correct /fuel/litresPer100Km/high.',
    ],
    [
      'fuel.litresPer100Km.high',
      15,
      'rig.yaml, /fuel/litresPer100Km: low 14, typical 15.5, high 15; expected low <= typical <= high. Put the three numbers of /fuel/litresPer100Km in order.',
    ],
    [
      'fuel.tanks.0.unusableLitres',
      130,
      'rig.yaml, /fuel/tanks/0/unusableLitres: 130 l that cannot be used in a tank of 130 l; expected less than the tank holds. Give the litres that stay in the tank when the pump draws air, or leave the key out.',
    ],
    [
      'fuel.reserve.fraction',
      0.2,
      'rig.yaml, /fuel/reserve: km and fraction; expected one of km, litres, fraction (shareOfNeed may stand beside it). Keep one of km and fraction.',
    ],
    [
      'water.litresPerDay',
      undefined,
      'rig.yaml, /water/litresPerDay: nothing; expected a number above 0 and at most 1000, in litres a day or a group of keys (low, typical, high), or a crew. Add "litresPerDay", or tell in /crew who drinks from the tanks.',
    ],
    ['fuel.tanks', [], 'rig.yaml, /fuel/tanks: a list of 0; expected 1 to 20 entries. Correct /fuel/tanks.'],
    [
      'water.cans.owned',
      1.5,
      'rig.yaml, /water/cans/owned: 1.5; expected a whole number at least 0 and at most 200. Correct /water/cans/owned.',
    ],
    [
      'pace.hoursPerDay',
      Number.NaN,
      'rig.yaml, /pace/hoursPerDay: NaN; expected a number above 0 and at most 24, in hours. Correct /pace/hoursPerDay.',
    ],
    [
      'pace.kmPerHour.slow',
      50,
      'rig.yaml, /pace/kmPerHour: slow 50, typical 45, fast 60; expected slow <= typical <= fast. Put the three numbers of /pace/kmPerHour in order.',
    ],
  ])('is refused for %s = %j', (path, value, line) => {
    expect(firstKeys(lineOf(checkRigValue(rigWith(path, value), 'rig.yaml')))).toBe(line);
  });

  it('names the keys of a group where something else came', () => {
    expect(lineOf(checkRigValue(rigWith('fuel', []), 'rig.yaml'))).toMatch(
      /^rig\.yaml, \/fuel: a list of 0; expected a group of keys \(kind, litresPer100Km, tanks, [^)]*\)\. Correct \/fuel\.$/,
    );
  });

  it.each([null, 7, 'text', [], undefined])('is refused when it is %j as a whole', (value) => {
    const outcome = checkRigValue(value, 'rig.yaml');
    expect(outcome.ok ? null : outcome.problem.code).toBe('rig-invalid');
  });
});

describe('a trip from outside', () => {
  it.each([
    [
      { aboard: { fuelLitres: 10, fuelKmSinceFill: 10 } },
      'trip.yaml, /aboard: fuelLitres and fuelKmSinceFill; expected one of the two. Keep fuelLitres if you know the litres, else fuelKmSinceFill.',
    ],
    [
      { aboard: { waterLitres: 71 } },
      "trip.yaml, /aboard/waterLitres: 71 l aboard; expected at most the 70 l that the rig's fixed tanks give. Correct the litres aboard or the tanks of the rig (what is in cans is not reckoned at the start).",
    ],
    [
      { departure: '2026-02-30' },
      'trip.yaml, /departure: "2026-02-30"; expected a day that the calendar has. Correct /departure.',
    ],
    [
      { departure: 'May' },
      'trip.yaml, /departure: "May"; expected a date such as 2026-05-04. Correct /departure.',
    ],
    [
      { oneWay: [{ fromKm: 9, toKm: 3 }] },
      'trip.yaml, /oneWay/0: from km 9 to km 3; expected fromKm before toKm. Give route km in the direction of travel.',
    ],
    [
      { cover: [{ commodity: 'fuel', bbox: [1, 5, 2, 4] }] },
      'trip.yaml, /cover/0/bbox: [1, 5, 2, 4]; expected [west, south, east, north] in degrees with south below north. Correct /cover/0/bbox.',
    ],
    [
      { cover: [{ commodity: 'fuel', bbox: [1, 5, 2] }] },
      'trip.yaml, /cover/0/bbox: a list of 3; expected 4 entries. Correct /cover/0/bbox.',
    ],
    [
      { corridorKm: 0 },
      'trip.yaml, /corridorKm: 0; expected a number above 0 and at most 50, in km. Correct /corridorKm.',
    ],
    [
      { counting: { fuel: 'impled' } },
      'trip.yaml, /counting/fuel: "impled"; expected "confirmed" or "stated" or "implied" or "doubtful". Did you mean "implied".',
    ],
    [
      { onward: {} },
      'trip.yaml, /onward/km: nothing; expected a number at least 0 and at most 5000, in km. Add "km".',
    ],
  ])('is refused: %j', (trip, line) => {
    expect(lineOf(checkTripValue(trip, 'trip.yaml', rig() as RigFile))).toBe(line);
  });

  it('may be empty, and its litres are not held against a rig that is not given', () => {
    expect(checkTripValue({}, 'trip.yaml', null).ok).toBe(true);
    expect(checkTripValue({ aboard: { waterLitres: 71 } }, 'trip.yaml', null).ok).toBe(true);
  });
});

describe('the explanation of a misfit', () => {
  const schemas = [RigFile, TripFile];
  const leaf = fc.oneof(
    fc.double(),
    fc.integer(),
    fc.string(),
    fc.boolean(),
    fc.constant(null),
    fc.constant([]),
  );
  const paths = [
    'name',
    'fuel',
    'fuel.kind',
    'fuel.litresPer100Km',
    'fuel.litresPer100Km.low',
    'fuel.tanks',
    'fuel.tanks.0',
    'fuel.tanks.0.litres',
    'fuel.cans',
    'fuel.cans.owned',
    'fuel.reserve.shareOfNeed',
    'water.reserve.days',
    'pace.kmPerHour',
    'pace.kmPerHour.fast',
    'equipment',
  ];

  it('finds something exactly when the compiled schema refuses', () => {
    const validators = schemas.map((schema) => Compile(schema));
    const wholes = fc.oneof(
      fc.tuple(fc.constantFrom(...paths), leaf).map(([path, value]) => rigWith(path, value)),
      fc.record(
        { aboard: leaf, onward: leaf, corridorKm: leaf, departure: leaf, stays: leaf },
        { requiredKeys: [] },
      ),
      fc.object(),
    );
    fc.assert(
      fc.property(wholes, (value) => {
        for (const [index, schema] of schemas.entries()) {
          expect(explainShape(schema, value) === null).toBe(validators[index]!.Check(value));
        }
      }),
      { numRuns: 500 },
    );
  });

  it('suggests a known word only when it is near', () => {
    expect(nearestWord('litre', ['litres', 'name'])).toBe('litres');
    expect(nearestWord('Tanks', ['tanks'])).toBe('tanks');
    expect(nearestWord('x', ['litres', 'name'])).toBeNull();
    expect(nearestWord('colour', ['name', 'fuel', 'water', 'pace', 'equipment'])).toBeNull();
  });
});
