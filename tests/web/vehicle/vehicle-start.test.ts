import { describe, expect, it } from 'vitest';
import { checkRigValue } from '../../../server/app/input/plan-input.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { typicalStill, withVehicle } from '../../../web/vehicle/vehicle-start.ts';
import { drive } from '../../core/mass/rigs.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

const withCans: RigFile = {
  ...EXAMPLE_RIG,
  fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 2 } },
};

describe('a typical vehicle', () => {
  const added = withVehicle(withCans);

  it('is one that the server takes, and every figure of its masses can be told', () => {
    expect(checkRigValue(added, 'rig')).toEqual({ ok: true, value: added });
    expect(drive(added).mass!.missing).toEqual([]);
  });

  it('comes without limits: a limit that nobody told would look like one', () => {
    expect(added.vehicle!.permitted).toBeUndefined();
    expect(drive(added).cautions.map(({ code }) => code)).toContain('mass-limit-unknown');
  });

  it('keeps what the rig told before, places included', () => {
    const position = { behindFrontAxleM: 1, heightM: 0.4 };
    const placed = withVehicle({
      ...withCans,
      water: { ...withCans.water, tanks: [{ name: 'jug', litres: 20, position }] },
    });
    expect(placed.water.tanks[0]).toEqual({ name: 'jug', litres: 20, position });
    expect(placed.fuel.litresPer100Km).toEqual(withCans.fuel.litresPer100Km);
  });

  it('is said to be typical until the last of its figures is changed', () => {
    const before = typicalStill(added);
    expect(before).toContain('kerb mass');
    expect(before.at(-1)).toMatch(/places$/);
    const next = { ...added, vehicle: { ...added.vehicle!, kerbKg: 2510 } };
    expect(typicalStill(next)).toEqual(before.filter((words) => words !== 'kerb mass'));
    expect(typicalStill(withCans)).toEqual([]);
  });
});
