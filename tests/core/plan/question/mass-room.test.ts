import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { Vehicle } from '../../../../server/contract/vehicle.ts';
import { massRoomOf } from '../../../../server/core/plan/question/mass-room.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';

const AT = (behindFrontAxleM: number) => ({ behindFrontAxleM, heightM: 1 });

/** Kerb mass without driver and fluids: 1,000 kg on each axle, 3 m apart. Tanks amidships. */
const rigWith = (vehicle: Partial<Vehicle>): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: {
    kind: 'diesel',
    litresPer100Km: EXAMPLE_RIG.fuel.litresPer100Km,
    tanks: [{ name: 'main', litres: 100, position: AT(1.5) }],
  },
  water: { litresPerDay: 18, tanks: [{ name: 'floor', litres: 100, position: AT(1.5) }] },
  vehicle: {
    kerbKg: 2000,
    includes: { fuelPercent: 0, driverKg: 0 },
    axleKg: { front: 1000, rear: 1000 },
    wheelbaseM: 3,
    people: [{ name: 'driver', kg: 80, position: AT(1.5) }],
    permitted: { rearKg: 1200 },
    ...vehicle,
  },
});

const leftOnRear = (rig: RigFile): number | undefined =>
  massRoomOf(rig)?.limits.find(({ name }) => name === 'rear')?.leftKg;

describe('room on an axle', () => {
  const all = leftOnRear(rigWith({}));

  test('is what is permitted, less all that rests on it', () => {
    // Half of the driver and of 100 l of each fluid: diesel of 0.83 to 0.85 kg a litre.
    expect(all).toBeGreaterThan(1200 - 1000 - 40 - 50 - 43);
    expect(all).toBeLessThan(1200 - 1000 - 40 - 50 - 41);
  });

  test('is bounded by the part that is known where a place is not told', () => {
    const driver = { name: 'driver', kg: 80 };
    expect(leftOnRear(rigWith({ people: [driver] }))).toBeCloseTo(all! + 40, 9);
    // Without the driver it is over already: then it is over.
    expect(leftOnRear(rigWith({ people: [driver], permitted: { rearKg: 1000 } }))).toBeLessThan(-80);
  });

  test('is not known where no axle load is told', () => {
    const { vehicle, ...rest } = rigWith({});
    const { axleKg: _, ...bare } = vehicle!;
    expect(massRoomOf({ ...rest, vehicle: bare })).toBeNull();
  });
});
