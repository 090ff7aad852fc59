import { describe, expect, test } from 'vitest';
import { checkRigValue } from '../../../../server/app/input/plan-input.ts';
import { fuelUseText } from '../../../../server/app/text/fuel-text.ts';
import { problemLine } from '../../../../server/core/input/problem.ts';
import { analysisOf, DIESEL, inputOf, pointFeature } from '../../../helpers/analyse-input.ts';
import { type FuelDetail, rigWith } from '../facts.ts';

const rig = rigWith({ urea: { litresPer1000Km: 2, tankLitres: 1.5 } });
const UREA = { ...DIESEL, 'fuel:adblue': 'yes' };

describe('urea solution', () => {
  test('is reckoned over the way, with the places that list it', () => {
    const { fuelUse, cautions } = analysisOf({
      rig,
      features: [
        pointFeature('node/1', 300, DIESEL),
        pointFeature('node/2', 600, UREA, 2),
        pointFeature('node/3', 1000, { ...UREA, access: 'private' }),
        pointFeature('node/4', 1100, { ...DIESEL, 'fuel:adblue:canister': 'yes' }),
      ],
    });
    expect(fuelUse.urea?.points.map(({ id }) => id)).toEqual(['node/2', 'node/4']);
    expect(fuelUse.urea?.needL).toBeCloseTo(2.68, 6);
    expect(fuelUse.urea?.rangeKm).toBe(750);
    // Start to km 600, 2 km × 1.3 off the route.
    expect(fuelUse.urea?.longestKm).toBeCloseTo(602.6, 4);
    expect(fuelUse.urea?.shortL).toBe(0);
    expect(cautions.map(({ code }) => code)).not.toContain('urea-short');
  });

  test('says what is missing where a tank does not go far enough, the way past the end included', () => {
    const { fuelUse, cautions } = analysisOf({ rig, trip: { ...inputOf().trip, onward: { km: 60 } } });
    expect(fuelUse.urea?.longestKm).toBeCloseTo(1400, 4);
    expect(fuelUse.urea?.shortL).toBeCloseTo(1.3, 6);
    expect(cautions.find(({ code }) => code === 'urea-short')?.text).toMatch(/Carry 1\.3 l more/);
  });

  test('is nothing for a rig that needs none', () => {
    expect(analysisOf().fuelUse.urea).toBeNull();
  });
});

describe('urea solution by the fuel that is burnt', () => {
  const features = [pointFeature('node/2', 640, UREA)];
  const ureaOf = (detail: FuelDetail['urea']) =>
    analysisOf({ rig: rigWith({ ...(detail === undefined ? {} : { urea: detail }) }), features }).fuelUse
      .urea;

  test('is percent of it: 5 % of 1,340 km at 17 l/100 km are 11.39 l, a tenth of the tank kept', () => {
    const urea = ureaOf({ percentOfFuel: 5, tankLitres: 10 });
    expect(urea?.needL).toBeCloseTo(0.05 * 13.4 * 17, 6);
    expect(urea?.reserveL).toBeCloseTo(1, 12);
    // 9 l usable at 0.0085 l/km.
    expect(urea?.rangeKm).toBeCloseTo(9 / 0.0085, 6);
    expect(urea?.shortL).toBe(0);
  });

  test('is short by what the reserve asks as well: 700 km take 5.95 l of a tank of 6', () => {
    expect(ureaOf({ percentOfFuel: 5, tankLitres: 6, reserveLitres: 0 })?.shortL).toBe(0);
    expect(ureaOf({ percentOfFuel: 5, tankLitres: 6 })?.shortL).toBeCloseTo(5.95 - 5.4, 6);
    expect(ureaOf({ percentOfFuel: 5, tankLitres: 6, reserveLitres: 2 })?.shortL).toBeCloseTo(5.95 - 4, 6);
  });

  test('rises with the fuel: half as much again in sand', () => {
    const sand = analysisOf({
      rig: rigWith({ urea: { percentOfFuel: 5, tankLitres: 20 }, observed: { surface: 'sealed' } }),
      trip: {
        ...inputOf().trip,
        surfaces: [{ fromKm: 0, toKm: 1340, surface: 'sand', allowancePercent: 0 }],
      },
    }).fuelUse.urea;
    expect(sand?.needL).toBeCloseTo(0.05 * 13.4 * 17 * 1.5, 5);
  });
});

describe('what a rig tells of its fuel', () => {
  const lineOf = (detail: object) => {
    const outcome = checkRigValue(rigWith(detail as FuelDetail), 'rig.yaml');
    return outcome.ok ? null : problemLine(outcome.problem);
  };
  test.each<[object, RegExp | null]>([
    [{ observed: { surface: 'sand', massKg: 2900 }, perHour: { idling: 0.8 }, climb: { giveBack: 0 } }, null],
    [{ observed: { surface: 'dunes' } }, /\/fuel\/observed\/surface: "dunes"; expected .*sand/],
    [{ observed: { massKg: 2.9 } }, /\/fuel\/observed\/massKg: 2\.9; expected/],
    [
      { observed: { weight: 2900 } },
      /\/fuel\/observed\/weight: an unknown key; expected one of surface, massKg/,
    ],
    [{ surfaceFactors: { sand: -1.3 } }, /\/fuel\/surfaceFactors\/sand: -1\.3/],
    [{ surfaceFactors: { dunes: 1.3 } }, /\/fuel\/surfaceFactors\/dunes: an unknown key/],
    [{ perHour: { idling: -1 } }, /\/fuel\/perHour\/idling: -1/],
    [{ climb: { efficiency: 35 } }, /\/fuel\/climb\/efficiency: 35/],
    [{ urea: { litresPer1000Km: 2 } }, /\/fuel\/urea\/tankLitres/],
    [{ urea: { tankLitres: 20 } }, /\/fuel\/urea: .*percentOfFuel/],
    [{ urea: { litresPer1000Km: 2, percentOfFuel: 5, tankLitres: 20 } }, /\/fuel\/urea: .*one of/],
    [{ urea: { percentOfFuel: 5, tankLitres: 20, reserveLitres: 20 } }, /\/fuel\/urea\/reserveLitres: 20 l/],
    [
      { engine: { octane: 95 } },
      /\/fuel\/engine\/octane: 95 for an engine that burns diesel; expected a fuel of kind petrol or e85/,
    ],
    [
      { kind: 'petrol', engine: { biodieselPercent: 7 } },
      /\/fuel\/engine\/biodieselPercent: 7 for an engine that burns petrol/,
    ],
    [{ kind: 'petrol', engine: { octane: 95, ethanolPercent: 10 } }, null],
    [
      { hours: { idlingPerDay: 20, airConditioningPerDay: 6 } },
      /\/fuel\/hours: 20 h of idling and 6 h .* expected not more than 24 h/,
    ],
    [{ cans: { litres: 20, owned: 2, fillPercent: 0.95 } }, /\/fuel\/cans\/fillPercent: 0\.95 %/],
    [
      { tanks: [{ name: 'main', litres: 100, unusableLitres: 80, fillPercent: 80 }] },
      /\/fuel\/tanks\/0\/unusableLitres: 80 l .* filled to 80 %/,
    ],
    [{ tanks: [{ name: 'main', litres: 100, fillPercent: 101 }] }, /\/fuel\/tanks\/0\/fillPercent: 101/],
  ])('%j', (detail, expected) => {
    const line = lineOf(detail);
    if (expected === null) expect(line).toBeNull();
    else expect(line).toMatch(expected);
  });

  test('comes back with the defaults that came to bear, and reckons the same again', () => {
    const told = rigWith({ observed: { surface: 'track', massKg: 3200 }, hours: { idlingPerDay: 0.5 } });
    const once = analysisOf({ rig: told });
    expect(once.rig.fuel).toMatchObject({
      observed: { surface: 'track', massKg: 3200 },
      perHour: { idling: 1.67 },
      climb: { efficiency: 0.35, giveBack: 0.3, thresholdM: 10 },
    });
    expect(once.rig.fuel.loadPercentPer100Kg).toBeCloseTo(1.1023, 4);
    const again = analysisOf({ rig: once.rig });
    expect(again.fuel).toEqual(once.fuel);
    expect(again.assumptions.filter(({ path }) => path.startsWith('/rig/fuel'))).toEqual(
      once.assumptions.filter(({ path }) => path.startsWith('/rig/fuel/surfaceFactors')),
    );
    expect(analysisOf().rig.fuel).not.toHaveProperty('climb');
  });
});

describe('fuel use as text', () => {
  test('tells the ranges, and no more where no more was told', () => {
    const text = fuelUseText(analysisOf().fuelUse).join('\n');
    expect(text).toMatch(/907\.1 km, 819\.4 km, 747\.1 km to the last drop/);
    expect(text).toMatch(/785\.7 km, 709\.7 km, 647\.1 km to the reserve/);
    expect(text).not.toMatch(/surface/);
  });

  test('tells terms, surfaces, estimate and urea where they were told', () => {
    const { fuelUse } = analysisOf({
      rig: { ...rig, fuel: { ...rig.fuel, observed: { surface: 'sealed', massKg: 3000 } } },
      trip: { ...inputOf().trip, surfaces: [{ fromKm: 0, toKm: 100, surface: 'sand' }] },
    });
    const text = fuelUseText(fuelUse).join('\n');
    expect(text).toMatch(/130 km of sand at 17 l\/100 km × 1\.5 for the surface/);
    expect(text).toMatch(/sand\s+100\.0\s+30\.0\s+1\.50\s+ours\s+[\d.]+ to [\d.]+/);
    expect(text).toMatch(/physics on sand: Not to be trusted/);
    expect(text).toMatch(/urea solution: .* tank 1\.5 l, which goes 750\.0 km/);
  });
});
