import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { MassReport, type Vehicle } from '../../../server/contract/vehicle.ts';
import { massAt, massWithFullTanks } from '../../../server/core/mass/mass-at.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { analysisOf } from '../../helpers/analyse-input.ts';
import { containerAt, drive, massOf, PLAIN, rigOf, stateOf } from './rigs.ts';

const at = (behindFrontAxleM: number, heightM = 0.8, sideM = 0) => ({
  position: { behindFrontAxleM, heightM, sideM },
});
const without = <K extends keyof Vehicle>(...keys: K[]): Vehicle => {
  const vehicle = { ...PLAIN };
  for (const key of keys) delete vehicle[key];
  return vehicle;
};

describe('a rig without a vehicle', () => {
  test('has no masses, and no cautions about them', () => {
    const { vehicle: _vehicle, ...simple } = rigOf();
    const analysis = drive(simple);
    expect(analysis.mass).toBeNull();
    expect(massAt(simple, { fuelL: 1, waterL: 1 })).toBeNull();
    expect(analysis.cautions.filter(({ code }) => /mass|axle|roof|overhang|carried/.test(code))).toEqual([]);
    expect(analysis.rig).not.toHaveProperty('vehicle');
  });

  test('positions and empty masses of its tanks change no figure of its gaps', () => {
    const { vehicle: _vehicle, ...placed } = rigOf();
    const bare = {
      ...placed,
      fuel: { ...placed.fuel, tanks: [{ name: 'main', litres: 130, unusableLitres: 3 }] },
    };
    expect(drive(placed).fuel).toEqual(drive(bare).fuel);
    expect(drive(placed).water).toEqual(drive(bare).water);
  });
});

describe('states', () => {
  const rig = rigOf(
    {
      includes: { fuelPercent: 0, driverKg: 75 },
      people: [{ kg: 90, ...at(1.3) }],
      gear: [{ name: 'kitchen', kg: 40, ...at(2.5) }],
      permitted: { totalKg: 3000, frontKg: 1400, rearKg: 1700 },
    },
    { fuel: { cans: { litres: 20, owned: 2, emptyKg: 4.5, ...at(3.2) } } },
  );
  const mass = massOf(rig);
  // Kerb, the driver's 15 kg beyond those included, kitchen, empty cans, 3 l that cannot be drawn.
  const emptyKg = 2600 + 15 + 40 + 9 + 3 * 0.845;

  test('departure: tanks full, cans empty', () => {
    const { totalKg, payloadLeftKg, fuelL, waterL, atKm } = stateOf(mass, 'departure');
    expect(totalKg).toBeCloseTo(emptyKg + 127 * 0.845 + 70, 9);
    expect(payloadLeftKg).toBeCloseTo(3000 - totalKg, 9);
    expect([fuelL, waterL, atKm]).toEqual([127, 70, 0]);
  });

  test('full: tanks and cans; empty: nothing usable', () => {
    expect(stateOf(mass, 'full').totalKg).toBeCloseTo(emptyKg + 167 * 0.845 + 70, 9);
    expect(stateOf(mass, 'full').fuelL).toBeCloseTo(167, 9);
    expect(stateOf(mass, 'empty').totalKg).toBeCloseTo(emptyKg, 9);
    expect(stateOf(mass, 'empty').fuelL).toBe(0);
  });

  test('axle loads against their limits', () => {
    const { front, rear, totalKg } = stateOf(mass, 'departure');
    expect(front!.kg + rear!.kg).toBeCloseTo(totalKg, 9);
    expect(front!.leftKg).toBeCloseTo(1400 - front!.kg, 9);
    expect(rear!.leftKg).toBeCloseTo(1700 - rear!.kg, 9);
  });

  test('what is aboard at the start counts, not what fits', () => {
    const half = analysisOf({
      rig,
      trip: { aboard: { fuelLitres: 60, waterLitres: 20 }, onward: { km: 0 } },
    });
    expect(stateOf(half.mass!, 'departure').totalKg).toBeCloseTo(emptyKg + 60 * 0.845 + 20, 9);
  });

  test('a filling limit keeps a tank from being reckoned fuller', () => {
    const tanks = [{ name: 'main', litres: 100, fillPercent: 95, ...at(2) }];
    expect(containerAt(massOf(rigOf({}, { fuel: { tanks } })), '/fuel/tanks/0').litres).toBeCloseTo(95, 9);
  });

  test('the terms at departure sum to total and axle loads', () => {
    const sum = (terms: { value: number }[]) => terms.reduce((total, { value }) => total + value, 0);
    const departure = stateOf(mass, 'departure');
    expect(sum(mass.working.totalKg)).toBeCloseTo(departure.totalKg, 9);
    expect(sum(mass.working.frontKg)).toBeCloseTo(departure.front!.kg, 9);
    expect(sum(mass.working.rearKg)).toBeCloseTo(departure.rear!.kg, 9);
  });

  test('massAt is the same total, and no level counts beyond full', () => {
    expect(massAt(rig, { fuelL: 127, waterL: 70 })).toBeCloseTo(stateOf(mass, 'departure').totalKg, 9);
    expect(massAt(rig, { fuelL: 0, waterL: 0 })).toBeCloseTo(stateOf(mass, 'empty').totalKg, 9);
    expect(massWithFullTanks(rig)).toBeCloseTo(stateOf(mass, 'departure').totalKg, 9);
  });

  test('the fuel is reckoned with the mass of full tanks', () => {
    const told = { ...rig, fuel: { ...rig.fuel, observed: { massKg: 2500 } } };
    expect(drive(told).fuelUse.load!.massKg).toBeCloseTo(massWithFullTanks(told)!, 9);
  });
});

describe('the worst place', () => {
  const along = (rig: RigFile, respect: string) => {
    const found = massOf(rig).states.filter(
      (state) => state.kind === 'along' && state.worstFor.some((one) => one === respect),
    );
    expect(found).toHaveLength(1);
    return found[0]!;
  };

  test('of the rear axle, with a tank behind it, is where that tank is full', () => {
    const tanks = [{ name: 'back', litres: 130, ...at(3.5) }];
    expect(along(rigOf({}, { fuel: { tanks } }), 'rear')).toMatchObject({ fuelL: 130, atKm: 0 });
  });

  test('of the front axle is where the tank behind the rear axle has emptied most and the water least', () => {
    const fuelTanks = [{ name: 'back', litres: 130, ...at(3.5) }];
    const waterTanks = [{ name: 'front', litres: 70, ...at(0.2) }];
    const state = along(rigOf({}, { fuel: { tanks: fuelTanks }, water: { tanks: waterTanks } }), 'front');
    // A kilometre takes 0.17 l of fuel, 0.0328 kg more in front, and 18 l / 24 h / 35 km/h of water, 0.0199 kg less;
    // a night of 17 h takes 12.75 l and 11.9 kg. Filled at the tap of km 640, 240 km past a fuel station: the worst is
    // where the day ends, before the night, at km 735. None of the other evenings is 95 km behind a tap or less.
    expect(state.atKm).toBeCloseTo(735, 6);
    expect(state.waterL).toBeCloseTo(70 - ((95 / 35) * 18) / 24, 6);
    expect(state.fuelL).toBeCloseTo(130 - 335 * 0.17, 6);
  });

  test('of stability is where low tanks are empty, though the vehicle is lightest there', () => {
    const low = { fuel: { tanks: [{ name: 'low', litres: 130, ...at(1.4, 0.4) }] } };
    const state = along(rigOf({}, low), 'stability');
    const departure = stateOf(massOf(rigOf({}, low)), 'departure');
    expect(state.stabilityFactor!).toBeLessThan(departure.stabilityFactor!);
    expect(state.totalKg).toBeLessThan(departure.totalKg);
    expect(state.fuelL).toBeLessThan(130);
  });

  test('is never one with less than nothing aboard', () => {
    const dry = massOf(rigOf({}, { fuel: { tanks: [{ name: 'small', litres: 60, ...at(0.2, 0.4) }] } }));
    expect(Math.min(...dry.states.map(({ fuelL }) => fuelL))).toBe(0);
    expect(dry.states.some(({ kind, fuelL }) => kind === 'along' && fuelL === 0)).toBe(true);
  });

  test('of the sides with two tanks is found whichever empties first, unless the rig tells', () => {
    const tanks = [
      { name: 'left', litres: 60, ...at(1.4, 0.6, -0.5) },
      { name: 'right', litres: 60, ...at(1.4, 0.6, 0.5) },
    ];
    const side = (tanksEmpty?: 'in-order' | 'together') =>
      along(rigOf(tanksEmpty === undefined ? {} : { tanksEmpty }, { fuel: { tanks } }), 'side').sideKg!;
    // One full, the other empty: 2 × 60 l × 0.845 kg × 0.5 m / 1.6 m.
    const oneEmptyKg = (2 * 60 * 0.845 * 0.5) / 1.6;
    expect(Math.abs(side())).toBeCloseTo(oneEmptyKg, 9);
    expect(side('in-order')).toBeCloseTo(oneEmptyKg, 9);
    expect(side('together')).toBeCloseTo(0, 9);
  });
});

describe('a container', () => {
  // 110 l, 10 of them never drawn, in a tank of 20 kg fitted later, 1 m right and 2 m up.
  const tank = { name: 'odd', litres: 110, unusableLitres: 10, emptyKg: 20, ...at(2, 2, 1) };
  const effect = containerAt(massOf(rigOf({}, { water: { tanks: [tank] } })), '/water/tanks/0').whenFull;
  // The vehicle without it: 2,600 kg at 0.75 m, and 3 l of fuel that cannot be drawn at 0.6 m.
  const onKg = 2600 + 3 * 0.845;
  const onHeightM = (2600 * 0.75 + 3 * 0.845 * 0.6) / onKg;

  test('is reckoned with all that it adds, against the vehicle without it', () => {
    expect(effect.totalKg).toBeCloseTo(130, 9);
    expect(effect.cgHeightM).toBeCloseTo((onKg * onHeightM + 130 * 2) / (onKg + 130) - onHeightM, 9);
    const factor = (heightM: number) => 1.6 / (2 * heightM);
    expect(effect.stabilityFactor).toBeCloseTo(factor(onHeightM + effect.cgHeightM!) - factor(onHeightM), 9);
  });

  test('is taken out with what cannot be drawn from it, by its mass', () => {
    // 10 l of diesel, 8.45 kg, and the tank of 20 kg: the vehicle without them is the kerb mass at 0.75 m alone.
    const fuelTank = { name: 'odd', litres: 110, unusableLitres: 10, emptyKg: 20, ...at(2, 2, 1) };
    const whenFull = containerAt(
      massOf(rigOf({}, { fuel: { tanks: [fuelTank] } })),
      '/fuel/tanks/0',
    ).whenFull;
    const kg = 20 + 110 * 0.845;
    expect(whenFull.cgHeightM).toBeCloseTo((2600 * 0.75 + kg * 2) / (2600 + kg) - 0.75, 9);
  });

  test('to the right loads the right wheels', () => {
    expect(effect.sideKg).toBeCloseTo((2 * 130 * 1) / 1.6, 9);
  });

  test('that may not be filled up still has what the kerb mass includes, by its capacity', () => {
    const fuel = { tanks: [{ name: 'main', litres: 100, fillPercent: 80, ...at(2) }] };
    const kg = massWithFullTanks(rigOf({ includes: { fuelPercent: 100, driverKg: 75 } }, { fuel }))!;
    expect(kg).toBeCloseTo(2600 - 20 * 0.845 + 70, 9);
  });
});

describe('what the rig does not tell', () => {
  test('a tank without a place leaves no axle load, and is named', () => {
    const analysis = drive(rigOf({}, { water: { tanks: [{ name: 'somewhere', litres: 70 }] } }));
    const departure = stateOf(analysis.mass!, 'departure');
    expect(departure).toMatchObject({ front: null, rear: null, sideKg: null, cgHeightM: null });
    expect(departure.totalKg).toBeGreaterThan(2600);
    expect(analysis.mass!.missing).toEqual(['/water/tanks/0/position']);
    expect(analysis.cautions.find(({ code }) => code === 'mass-incomplete')!.text).toContain(
      '/water/tanks/0/position',
    );
    expect(analysis.mass!.working.frontKg).toEqual([]);
  });

  test.each([
    ['wheelbaseM', ['/vehicle/wheelbaseM', '/vehicle/axleKg'], { front: null, rear: null }],
    ['axleKg', ['/vehicle/axleKg'], { front: null, rear: null }],
    ['cgHeightM', ['/vehicle/cgHeightM'], { cgHeightM: null, stabilityFactor: null }],
    ['trackM', ['/vehicle/trackM'], { sideKg: null, stabilityFactor: null }],
  ] as const)('without %s what hangs on it is not told', (key, paths, nulls) => {
    const rig = { ...rigOf(), vehicle: without(key) };
    const mass = massOf(rig);
    expect(paths).toEqual(expect.arrayContaining(mass.missing));
    expect(mass.missing.length).toBeGreaterThan(0);
    expect(stateOf(mass, 'departure')).toMatchObject(nulls);
    expect(stateOf(mass, 'departure').totalKg).toBeCloseTo(2600 + 130 * 0.845 + 70, 9);
  });

  test('a driver whom nobody placed counts in the total and leaves no axle load', () => {
    const mass = massOf(rigOf({ includes: 'full-fuel-no-driver' }));
    expect(mass.missing).toEqual(['/vehicle/people/0/position']);
    expect(stateOf(mass, 'departure').totalKg).toBeCloseTo(2600 + 75 + 70, 9);
  });

  test('a driver whom the kerb mass includes and nobody listed rides on, whatever the mass', () => {
    const mass = massOf(rigOf({ includes: { fuelPercent: 0, driverKg: 90 } }));
    expect(stateOf(mass, 'empty').totalKg).toBeCloseTo(2600 + 3 * 0.845, 9);
    expect(mass.missing).toEqual([]);
  });

  test('limits that were not told are said to be missing, not met', () => {
    const caution = drive(rigOf()).cautions.find(({ code }) => code === 'mass-limit-unknown');
    expect(caution!.text).toContain('/vehicle/permitted/totalKg');
    expect(stateOf(massOf(rigOf()), 'departure').payloadLeftKg).toBeNull();
  });

  test('defaults are told once: a settled rig assumes nothing more and weighs the same', () => {
    const { includes: _includes, ...vehicle } = PLAIN;
    const rig = { ...rigOf({}, { fuel: { cans: { litres: 10, owned: 2, ...at(3) } } }), vehicle };
    const first = settleRig(rig);
    const why = Object.fromEntries(toContract(first.assumptions).map((one) => [one.path, one]));
    expect(why['/vehicle/includes']!.why).toMatch(/ours/);
    expect(why['/vehicle/people']!.value).toBe('a driver of 75 kg');
    expect(why['/vehicle/cgSideM']!.why).toBe('ours');
    // 4.7 kg for 20 l (K2, from memory), by size.
    expect(why['/fuel/cans/emptyKg']!.value).toBe('2.4 kg');
    const second = settleRig(first.settled);
    expect(second.assumptions).toEqual([]);
    expect(massWithFullTanks(second.settled)).toBe(massWithFullTanks(rig));
  });

  test('untold, a kerb mass is read as the heavier of the usual ways', () => {
    const { includes: _includes, ...vehicle } = PLAIN;
    const heaviest = massWithFullTanks({ ...rigOf(), vehicle })!;
    for (const includes of ['running-order', 'full-fuel-no-driver'] as const) {
      expect(heaviest).toBeGreaterThanOrEqual(massWithFullTanks(rigOf({ includes }))!);
    }
  });

  test('a tank fitted later is not part of the kerb mass, nor is what is in it', () => {
    const weighed = (tank: { emptyKg?: number }) =>
      massWithFullTanks(
        rigOf(
          { includes: { fuelPercent: 100, driverKg: 75 } },
          { fuel: { tanks: [{ name: 'second', litres: 40, ...tank, ...at(2) }] } },
        ),
      )!;
    expect(weighed({ emptyKg: 15 }) - weighed({})).toBeCloseTo(15 + 40 * 0.845, 9);
  });
});

test('the report has the shape that the contract promises', () => {
  const full = massOf(rigOf({ permitted: { totalKg: 3000 } }, { fuel: { cans: { litres: 20, owned: 4 } } }));
  expect(Value.Errors(MassReport, full)).toEqual([]);
  expect(Value.Check(MassReport, massOf(rigOf()))).toBe(true);
  expect(Value.Check(MassReport, { ...full, states: [{}] })).toBe(false);
});
