import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ContainerEffect } from '../../../server/contract/vehicle.ts';
import { heldShares } from '../../../web/side-view/held-shares.ts';
import { numberPlaces } from '../../../web/side-view/number-places.ts';
import { sceneOf } from '../../../web/side-view/scene.ts';
import { drive, rigOf, stateOf } from '../../core/mass/rigs.ts';
import { FULL_RIG } from '../../helpers/full-plan.ts';

const full = drive(FULL_RIG);
const mass = full.mass!;

describe('the scene', () => {
  it('weighs as much as the axles carry, at every state', () => {
    const { kerbKg, includes } = FULL_RIG.vehicle!;
    const { fuelPercent, driverKg } = includes as { fuelPercent: number; driverKg: number };
    // The main tank came with the vehicle: what the kerb mass has in it is weighed there.
    const inKerbKg = (90 * fuelPercent) / 100;
    for (const state of mass.states) {
      const scene = sceneOf(full.rig, mass, state);
      const ridesKg = scene.things.reduce((sum, { kg }) => sum + kg, 0);
      const fuelKgPerLitre = mass.containers[0]!.kgPerLitre;
      expect(kerbKg - driverKg - inKerbKg * fuelKgPerLitre + ridesKg).toBeCloseTo(state.totalKg, 3);
    }
  });

  it('puts the centre of gravity where the axle loads balance', () => {
    const state = stateOf(mass, 'departure');
    const { centre } = sceneOf(full.rig, mass, state);
    const { front, rear } = state;
    expect(front!.kg * centre!.xM).toBeCloseTo(rear!.kg * (2.85 - centre!.xM), 6);
    expect(centre!.heightM).toBe(state.cgHeightM);
  });

  it('keeps everything that has a place inside the picture', () => {
    const { things, extent } = sceneOf(full.rig, mass, stateOf(mass, 'full'));
    for (const { place, widthM, tallM } of things) {
      expect(place!.behindFrontAxleM - widthM / 2).toBeGreaterThanOrEqual(extent.frontM);
      expect(place!.behindFrontAxleM + widthM / 2).toBeLessThanOrEqual(extent.rearM);
      expect(place!.heightM + tallM / 2).toBeLessThanOrEqual(extent.topM);
    }
  });

  it('draws a container of twice the volume with twice the face', () => {
    const analysis = drive(
      rigOf(
        {},
        {
          fuel: {
            tanks: [
              { name: 'a', litres: 40 },
              { name: 'b', litres: 80 },
            ],
          },
        },
      ),
    );
    const { things } = sceneOf(analysis.rig, analysis.mass!, stateOf(analysis.mass!, 'departure'));
    const face = (name: string) => {
      const thing = things.find((one) => one.name === name)!;
      return thing.widthM * thing.tallM;
    };
    expect(face('b')).toBeCloseTo(2 * face('a'), 9);
  });

  it('is no scheme only where all its measures are told', () => {
    expect(sceneOf(full.rig, mass, mass.states[0]!).body.toldInFull).toBe(true);
    const plain = drive(rigOf());
    expect(sceneOf(plain.rig, plain.mass!, plain.mass!.states[0]!).body.toldInFull).toBe(false);
  });
});

describe('the levels drawn', () => {
  const tank = fc.record({ litres: fc.integer({ min: 5, max: 300 }), dead: fc.integer({ min: 0, max: 4 }) });
  const containersOf = (tanks: readonly { litres: number; dead: number }[]): ContainerEffect[] =>
    tanks.map(({ litres, dead }, index) => ({
      ...mass.containers[0]!,
      path: `/fuel/tanks/${index}`,
      litres,
      unusableLitres: dead,
    }));

  it('add up to what is aboard, none above what it may hold', () => {
    fc.assert(
      fc.property(
        fc.array(tank, { minLength: 1, maxLength: 4 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('together' as const, 'in-order' as const),
        (tanks, share, emptying) => {
          const containers = containersOf(tanks);
          const fuelL = share * tanks.reduce((sum, { litres, dead }) => sum + litres - dead, 0);
          const held = heldShares(containers, { kind: 'along', fuelL, waterL: 0 }, emptying);
          const drawable = held.reduce((sum, litres, index) => sum + litres - tanks[index]!.dead, 0);
          expect(drawable).toBeCloseTo(fuelL, 6);
          held.forEach((litres, index) => {
            expect(litres).toBeLessThanOrEqual(tanks[index]!.litres + 1e-9);
            expect(litres).toBeGreaterThanOrEqual(tanks[index]!.dead - 1e-9);
          });
        },
      ),
    );
  });

  it('in order empty the first tank before the second is touched', () => {
    const containers = containersOf([
      { litres: 50, dead: 0 },
      { litres: 50, dead: 0 },
    ]);
    const held = (fuelL: number) => heldShares(containers, { kind: 'along', fuelL, waterL: 0 }, 'in-order');
    expect(held(70)).toEqual([20, 50]);
    expect(held(30)).toEqual([0, 30]);
  });

  it('leave cans empty but where all is full', () => {
    const cans = mass.containers.findIndex(({ path }) => path === '/fuel/cans');
    expect(heldShares(mass.containers, stateOf(mass, 'departure'), 'in-order')[cans]).toBe(0);
    expect(heldShares(mass.containers, stateOf(mass, 'full'), 'in-order')[cans]).toBe(
      mass.containers[cans]!.litres,
    );
  });
});

describe('the numbers in the drawing', () => {
  it('never stand on one another, as long as there is room', () => {
    const place = fc.record({ x: fc.integer({ min: 0, max: 300 }), y: fc.integer({ min: 0, max: 200 }) });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), (wished) => {
        const placed = numberPlaces(wished);
        placed.forEach((a, index) => {
          for (const b of placed.slice(index + 1)) {
            expect(Math.abs(a.x - b.x) >= 17 || Math.abs(a.y - b.y) >= 14).toBe(true);
          }
        });
      }),
    );
  });

  it('stand where they are wished when nothing is in the way', () => {
    const wished = [
      { x: 10, y: 10 },
      { x: 100, y: 10 },
    ];
    expect(numberPlaces(wished)).toEqual(wished);
  });
});
