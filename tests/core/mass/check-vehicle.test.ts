import { describe, expect, test } from 'vitest';
import { checkRigValue } from '../../../server/app/input/plan-input.ts';
import type { Position, Vehicle } from '../../../server/contract/vehicle.ts';
import { PLAIN, rigOf } from './rigs.ts';

const at = (behindFrontAxleM: number, heightM = 0.8) => ({ position: { behindFrontAxleM, heightM } });

describe('refusals name the key', () => {
  const placeOf = (rig: unknown) => {
    const outcome = checkRigValue(rig, 'rig.yaml');
    return outcome.ok ? null : outcome.problem.place;
  };
  const gearAt = (position: Position) => ({ gear: [{ name: 'box', kg: 10, position }] });

  test.each<[string, string, Partial<Vehicle>]>([
    ['axle loads that miss the kerb mass', '/vehicle/axleKg', { axleKg: { front: 1250, rear: 1377 } }],
    ['a limit below the kerb mass', '/vehicle/permitted/totalKg', { permitted: { totalKg: 2500 } }],
    ['an axle limit below its kerb load', '/vehicle/permitted/rearKg', { permitted: { rearKg: 1300 } }],
    [
      'height told and measured',
      '/vehicle/axleLift',
      { axleLift: { lifted: 'rear', wheelRadiusM: 0.4, steps: [{ degrees: 20, groundAxleKg: 1300 }] } },
    ],
    [
      'a cabin inside out',
      '/vehicle/cabin',
      { cabin: { fromM: 2, toM: 1, floorHeightM: 0.7, roofHeightM: 1.9 } },
    ],
    [
      'a place far behind the vehicle',
      '/vehicle/gear/0/position/behindFrontAxleM',
      { bodyRearOverhangM: 1, ...gearAt({ behindFrontAxleM: 5.36, heightM: 1 }) },
    ],
    [
      'a place far ahead of it',
      '/vehicle/gear/0/position/behindFrontAxleM',
      gearAt({ behindFrontAxleM: -2.1, heightM: 1 }),
    ],
    [
      'a place far beside it',
      '/vehicle/gear/0/position/sideM',
      gearAt({ behindFrontAxleM: 1, heightM: 1, sideM: -1.45 }),
    ],
    [
      'a kerb mass less than what it includes',
      '/vehicle/kerbKg',
      { kerbKg: 150, includes: { fuelPercent: 100, driverKg: 75 }, axleKg: { front: 75, rear: 75 } },
    ],
  ])('%s', (_, place, vehicle) => {
    expect(placeOf(rigOf(vehicle))).toBe(place);
  });

  test('a place of a tank counts as well', () => {
    const tanks = [{ name: 'far', litres: 70, ...at(9) }];
    expect(placeOf(rigOf({}, { water: { tanks } }))).toBe('/water/tanks/0/position/behindFrontAxleM');
  });

  test.each<[string, object]>([
    ['/vehicle/kerbKg', { kerbKg: -1 }],
    ['/vehicle/colour', { colour: 'sand' }],
    ['/vehicle/wheelbaseM', { wheelbaseM: 285 }],
    ['/vehicle/gear/0/position/heightM', gearAt({ behindFrontAxleM: 1, heightM: -1 })],
    ['/vehicle/gear/0/kg', { gear: [{ name: 'balloon', kg: -5 }] }],
  ])('the shape: %s', (place, vehicle) => {
    expect(placeOf({ ...rigOf(), vehicle: { ...PLAIN, ...vehicle } })).toBe(place);
  });

  test('axle loads within the tolerance of 1 %, at least 20 kg (ours), and places at the edge stand', () => {
    expect(placeOf(rigOf({ axleKg: { front: 1250, rear: 1376 } }))).toBeNull();
    expect(
      placeOf(rigOf({ bodyRearOverhangM: 1, ...gearAt({ behindFrontAxleM: 5.35, heightM: 1 }) })),
    ).toBeNull();
    expect(placeOf(rigOf())).toBeNull();
  });
});
