import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { FUEL_KINDS } from '../../../server/core/fuel/engine/kinds.ts';
import { WATER_KG_PER_L } from '../../../server/core/mass/densities.ts';
import { FUEL_LIMIT_RULES } from '../../../server/core/mass/report/fuel-limits.ts';
import { cgHeightFromLift } from '../../../server/core/mass/statics.ts';
import { containerAt, drive, massOf, rigOf, standing, stateOf } from './rigs.ts';

const NOTHING_INSIDE = { fuelPercent: 0, driverKg: 0 };
const at = (behindFrontAxleM: number, heightM = 0.8) => ({ position: { behindFrontAxleM, heightM } });

/** Tanks that hold nothing and weigh nothing while empty. */
const EMPTY_TANKS = {
  fuel: { tanks: [{ name: 'main', litres: 80, ...at(1.4) }] },
  water: { tanks: [{ name: 'tank', litres: 50, ...at(1.4) }] },
};

describe('masses on the axles', () => {
  test('an added mass: front m (L − x) / L, rear m x / L, negative behind the rear axle (V1)', () => {
    const mass = standing(
      rigOf({ wheelbaseM: 3 }, { water: { tanks: [{ name: 'w', litres: 100, ...at(1) }] } }),
    );
    const { perLitre } = containerAt(mass, '/water/tanks/0');
    expect(perLitre!.frontKg).toBeCloseTo(2 / 3, 12);
    expect(perLitre!.rearKg).toBeCloseTo(1 / 3, 12);
  });

  test('a worked table of 2,350 kg on a wheelbase of 3 m: front 975.5, rear 1,374.5 kg (V2, V10)', () => {
    // From the rear axle: base 135 cm, driver and cab 205, rear cargo 60, equipment 145, hitch −60 cm.
    const mass = standing(
      rigOf(
        {
          kerbKg: 1800,
          includes: NOTHING_INSIDE,
          wheelbaseM: 3,
          axleKg: { front: (1800 * 1.35) / 3, rear: (1800 * 1.65) / 3 },
          people: [{ name: 'driver and cab', kg: 160, ...at(0.95) }],
          gear: [
            { name: 'rear cargo', kg: 250, ...at(2.4) },
            { name: 'equipment', kg: 50, ...at(1.55) },
            { name: 'hitch', kg: 90, ...at(3.6) },
          ],
        },
        {
          ...EMPTY_TANKS,
          fuel: { tanks: [{ name: 'main', litres: 80, ...at(1.4) }] },
        },
      ),
    );
    const empty = stateOf(mass, 'empty');
    expect(empty.totalKg).toBeCloseTo(2350, 9);
    expect(empty.front!.kg).toBeCloseTo(975.5, 9);
    expect(empty.rear!.kg).toBeCloseTo(1374.5, 9);
  });

  test('two cans of 20.6 kg 0.9 m behind the rear axle: rear +54.21, front −13.01 kg (V3)', () => {
    const cans = { litres: 20, owned: 2, emptyKg: 0.6, ...at(2.85 + 0.9) };
    const { whenFull } = containerAt(standing(rigOf({}, { water: { cans } })), '/water/cans');
    expect(whenFull.totalKg).toBeCloseTo(41.2, 9);
    expect(whenFull.rearKg).toBeCloseTo(54.21, 2);
    expect(whenFull.frontKg).toBeCloseTo(-13.01, 2);
    expect(whenFull.frontKg! + whenFull.rearKg!).toBeCloseTo(41.2, 9);
  });

  test('60 kg on the roof at mid-wheelbase: +30 and +30 kg, centre of gravity +0.0271 m (V4)', () => {
    const tanks = [{ name: 'roof', litres: 60, emptyKg: 0, ...at(1.425, 1.95) }];
    const mass = standing(rigOf({}, { ...EMPTY_TANKS, water: { tanks } }));
    expect(stateOf(mass, 'empty')).toMatchObject({ totalKg: 2600, cgHeightM: 0.75 });
    const { whenFull } = containerAt(mass, '/water/tanks/0');
    expect(whenFull.frontKg).toBeCloseTo(30, 9);
    expect(whenFull.rearKg).toBeCloseTo(30, 9);
    expect(whenFull.cgHeightM).toBeCloseTo(0.0271, 4);
  });

  test('150 kg on a tow ball 1.2 m behind the rear axle: rear +213.2, front −63.2 kg (V5)', () => {
    const { behindRearAxle } = standing(
      rigOf({ gear: [{ name: 'tow ball', kg: 150, ...at(2.85 + 1.2, 0.5) }] }),
    );
    expect(behindRearAxle!.kg).toBe(150);
    expect(behindRearAxle!.rearKg).toBeCloseTo(213.2, 1);
    expect(behindRearAxle!.frontKg).toBeCloseTo(-63.2, 1);
  });
});

describe('what the kerb mass includes', () => {
  /** Beyond the kerb mass with everything full. */
  const beyondKerb = (includes: 'running-order' | 'full-fuel-no-driver') => {
    const mass = standing(rigOf({ includes }, EMPTY_TANKS));
    const waterKg = 50;
    return {
      kg: stateOf(mass, 'full').totalKg - 2600 - waterKg,
      kgPerLitre: containerAt(mass, '/fuel/tanks/0').kgPerLitre,
      payloadLeftKg: stateOf(standing(rigOf({ includes, permitted: { totalKg: 3000 } }, EMPTY_TANKS)), 'full')
        .payloadLeftKg,
    };
  };

  test('EU: tanks at 90 % and a driver of 75 kg (V6): a full tank of 80 l adds 8 l, 6.7 kg of 0.84 kg/l (V7)', () => {
    const { kg, kgPerLitre } = beyondKerb('running-order');
    expect(kg / kgPerLitre).toBeCloseTo(8, 9);
    expect((kg / kgPerLitre) * 0.84).toBeCloseTo(6.7, 1);
    expect(0.9 * 80 * 0.84).toBeCloseTo(60.5, 1);
    const { working } = standing(rigOf({ includes: 'running-order' }, EMPTY_TANKS));
    const inside = working.totalKg.find(({ label }) => label === 'filling of main in the kerb mass');
    expect((inside!.value / kgPerLitre) * 0.84).toBeCloseTo(-60.5, 1);
  });

  test('US: full fuel, no driver (V7, from memory): only the driver is added', () => {
    expect(beyondKerb('full-fuel-no-driver').kg).toBeCloseTo(75, 9);
  });

  test('payload left is the permitted mass less all that is aboard (V6)', () => {
    expect(beyondKerb('full-fuel-no-driver').payloadLeftKg).toBeCloseTo(3000 - 2600 - 75 - 50, 9);
  });
});

describe('height of the centre of gravity', () => {
  const lift = { wheelbaseM: 2.85, totalKg: 2600, wheelRadiusM: 0.38, levelKg: 1250 };

  test('by lifting an axle (ISO 10392, V8): 0.6209 m (V9)', () => {
    expect(cgHeightFromLift({ ...lift, liftedKg: 1330, degrees: 20 })).toBeCloseTo(0.6209, 4);
    expect(cgHeightFromLift({ ...lift, liftedKg: 1250, degrees: 20 })).toBe(0.38);
  });

  test('the same through a rig file, steps averaged', () => {
    const { cgHeightM: _told, ...untold } = rigOf({}, EMPTY_TANKS).vehicle!;
    const withSteps = (steps: { degrees: number; groundAxleKg: number }[]): RigFile => ({
      ...rigOf({}, EMPTY_TANKS),
      vehicle: { ...untold, axleLift: { lifted: 'rear', wheelRadiusM: 0.38, steps } },
    });
    const one = standing(withSteps([{ degrees: 20, groundAxleKg: 1330 }]));
    expect(stateOf(one, 'empty').cgHeightM).toBeCloseTo(0.6209, 4);
    expect(stateOf(one, 'empty').stabilityFactor).toBeCloseTo(1.6 / (2 * 0.6209), 3);
    const two = standing(
      withSteps([
        { degrees: 20, groundAxleKg: 1330 },
        { degrees: 20, groundAxleKg: 1250 },
      ]),
    );
    expect(stateOf(two, 'empty').cgHeightM).toBeCloseTo((0.6209 + 0.38) / 2, 4);
  });

  test('static stability factor: track over twice the height (NHTSA’s definition)', () => {
    expect(stateOf(standing(rigOf({}, EMPTY_TANKS)), 'empty').stabilityFactor).toBeCloseTo(1.6 / 1.5, 12);
  });
});

describe('limits of some countries on carried fuel', () => {
  const limits = (kind: 'diesel' | 'petrol', cans: { litres: number; owned: number }, tankL = 130) => {
    const tanks = [{ name: 'main', litres: tankL, ...at(1.4) }];
    const fuel = { kind, tanks, cans: { ...cans, emptyKg: 4, ...at(3) } };
    const { fuelLimits } = standing(rigOf({ kerbKg: 9000, axleKg: { front: 4000, rear: 5000 } }, { fuel }));
    return new Map(fuelLimits.map((limit) => [limit.code, limit]));
  };
  const oversOf = (rows: ReturnType<typeof limits>) =>
    [...rows.values()].filter((limit) => limit.over).map(({ code }) => code);

  test('ADR 1.1.3.3 (a), own use: fixed tanks 1,500 l, cans 60 l (K8)', () => {
    expect(oversOf(limits('diesel', { litres: 20, owned: 3 }, 1500))).toEqual([]);
    expect(oversOf(limits('diesel', { litres: 20, owned: 4 }, 1501))).toEqual([
      'adr-own-use-tanks',
      'adr-own-use-cans',
    ]);
    expect(limits('diesel', { litres: 20, owned: 4 }).get('adr-own-use-cans')).toMatchObject({
      carried: 80,
      limit: 60,
      unit: 'l',
    });
  });

  test('ADR 1.1.3.1 (a), private: 60 l a can, 240 l in all (K9, figures from memory)', () => {
    const rows = limits('diesel', { litres: 60, owned: 4 });
    expect(rows.get('adr-private-can')).toMatchObject({ carried: 60, limit: 60, over: false });
    expect(rows.get('adr-private-cans')).toMatchObject({ carried: 240, limit: 240, over: false });
    expect(oversOf(limits('diesel', { litres: 61, owned: 4 }))).toEqual(
      expect.arrayContaining(['adr-private-can', 'adr-private-cans']),
    );
  });

  test('ADR 1.1.3.6, small loads: petrol 333 l, diesel 1,000 l (K10)', () => {
    expect(limits('petrol', { litres: 111, owned: 3 }).get('adr-small-load-petrol')).toMatchObject({
      limit: 333,
      over: false,
    });
    expect(limits('petrol', { litres: 112, owned: 3 }).get('adr-small-load-petrol')!.over).toBe(true);
    expect(limits('diesel', { litres: 112, owned: 3 }).has('adr-small-load-petrol')).toBe(false);
    expect(limits('diesel', { litres: 200, owned: 5 }).get('adr-small-load-diesel')).toMatchObject({
      carried: 1000,
      limit: 1000,
      over: false,
    });
  });

  test('United Kingdom, petrol: 30 l without notice, cans of 20 l of metal, 275 l with notice (K11)', () => {
    const rows = limits('petrol', { litres: 20, owned: 2 });
    expect(rows.get('uk-petrol-unnotified')).toMatchObject({ carried: 40, limit: 30, over: true });
    expect(rows.get('uk-petrol-can')).toMatchObject({ carried: 20, limit: 20, over: false });
    expect(rows.get('uk-petrol-can')!.text).toMatch(/plastics 10 l/);
    expect(rows.get('uk-petrol-notified')).toMatchObject({ limit: 275, over: false });
    expect(limits('diesel', { litres: 20, owned: 2 }).has('uk-petrol-unnotified')).toBe(false);
  });

  test('United States, materials of trade: 30 l a can, 200 kg in all (K12)', () => {
    const rows = limits('diesel', { litres: 30, owned: 6 });
    expect(rows.get('us-materials-of-trade-can')).toMatchObject({ carried: 30, limit: 30, over: false });
    expect(rows.get('us-materials-of-trade')).toMatchObject({ limit: 200, unit: 'kg', over: false });
    expect(rows.get('us-materials-of-trade')!.carried).toBeCloseTo(6 * (4 + 30 * 0.845), 9);
    expect(limits('diesel', { litres: 30, owned: 7 }).get('us-materials-of-trade')!.over).toBe(true);
  });

  test('each rule has its own code and a source', () => {
    expect(new Set(FUEL_LIMIT_RULES.map(({ code }) => code)).size).toBe(FUEL_LIMIT_RULES.length);
    expect(FUEL_LIMIT_RULES.filter(({ source }) => source === '')).toEqual([]);
  });

  test('what is over is a caution that puts the rules of the place first', () => {
    const rig = rigOf({}, { fuel: { cans: { litres: 20, owned: 4, emptyKg: 4, ...at(3) } } });
    const caution = drive(rig).cautions.find(({ code }) => code === 'carried-fuel');
    expect(caution!.text).toMatch(
      /rules of the place come first.*80 l against 60 l \(ADR 1\.1\.3\.3 \(a\)\)/,
    );
  });
});

describe('what litres weigh', () => {
  // kg/m³ at 4, 10, 15, 20, 25, 30, 35, 40 °C: Tanaka et al., Metrologia 38 (2001) (K15).
  test.each([999.975, 999.703, 999.103, 998.207, 997.047, 995.649, 994.033, 992.215])(
    'water of %f kg/m³ is within 0.8 %% of what is reckoned with, never heavier (K15)',
    (kgPerM3) => {
      const litreKg = kgPerM3 / 1000;
      expect(WATER_KG_PER_L).toBeGreaterThan(litreKg);
      expect(WATER_KG_PER_L / litreKg - 1).toBeLessThan(0.008);
    },
  );

  test('20 l of diesel at 845 kg/m³ are 16.9 kg; water, petrol not less than 19.96 and 14.9 kg (K16)', () => {
    const can = { cans: { litres: 20, owned: 1, emptyKg: 0, ...at(3) } };
    const fullKg = (kind: 'diesel' | 'petrol', path: string) =>
      containerAt(massOf(rigOf({}, { fuel: { kind, ...can }, water: can })), path).whenFull.totalKg;
    expect(fullKg('diesel', '/fuel/cans')).toBeCloseTo(16.9, 9);
    expect(fullKg('petrol', '/fuel/cans')).toBeGreaterThanOrEqual(14.9);
    expect(fullKg('petrol', '/fuel/cans')).toBeCloseTo(15.5, 9);
    expect(fullKg('diesel', '/water/cans')).toBeGreaterThanOrEqual(19.96);
    expect((20 * FUEL_KINDS.diesel.densityKgPerM3.typical) / 1000).toBeCloseTo(16.64, 9);
    expect((20 * FUEL_KINDS.petrol.densityKgPerM3.typical) / 1000).toBeCloseTo(14.9, 9);
    expect(fullKg('diesel', '/water/cans')).toBeCloseTo(20, 9);
  });
});

test('a 95 l tank just ahead of the rear axle loads it less for a litre than a 40 l tank at the very back (common practice)', () => {
  const tanks = [
    { name: 'ahead of the rear axle', litres: 95, emptyKg: 22, ...at(2.85 - 0.35, 0.6) },
    { name: 'at the very back', litres: 40, emptyKg: 12, ...at(2.85 + 0.95, 0.6) },
  ];
  const mass = massOf(rigOf({}, { fuel: { tanks } }));
  const [ahead, back] = ['/fuel/tanks/0', '/fuel/tanks/1'].map((path) => containerAt(mass, path).perLitre!);
  expect(ahead!.rearKg).toBeLessThan(back!.rearKg);
  expect(ahead!.frontKg).toBeGreaterThan(0);
  expect(back!.frontKg).toBeLessThan(0);
});
