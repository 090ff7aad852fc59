import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { MassReport, Vehicle } from '../../../server/contract/vehicle.ts';
import { sharesOf } from '../../../server/core/mass/containers.ts';
import { massAt } from '../../../server/core/mass/mass-at.ts';
import { massModelOf } from '../../../server/core/mass/settle-mass.ts';
import { contentsAt, fullContents } from '../../../server/core/mass/states.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { containerAt, drive, levelAt, rigOf, standing } from './rigs.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const position = fc.record({
  behindFrontAxleM: number(-1, 4.5),
  heightM: number(0.3, 2.3),
  sideM: number(-1, 1),
});
const tank = fc.record(
  {
    name: fc.constant('tank'),
    litres: number(20, 200),
    unusableLitres: number(0, 8),
    fillPercent: number(60, 100),
    emptyKg: number(0, 30),
    position,
  },
  { requiredKeys: ['name', 'litres', 'position'] },
);
const cans = fc.record({ litres: number(5, 30), owned: fc.integer({ min: 0, max: 6 }), position });
const riders = fc.array(fc.record({ name: fc.constant('load'), kg: number(1, 120), position }), {
  maxLength: 4,
});
const vehicle: fc.Arbitrary<Partial<Vehicle>> = fc.record(
  {
    includes: fc.constantFrom('running-order' as const, 'full-fuel-no-driver' as const),
    people: fc.array(fc.record({ kg: number(40, 120), position }), { minLength: 1, maxLength: 4 }),
    pets: riders,
    gear: riders,
    cgSideM: number(-0.1, 0.1),
    tanksEmpty: fc.constantFrom('in-order' as const, 'together' as const),
  },
  { requiredKeys: ['includes', 'people'] },
);
const rigs: fc.Arbitrary<RigFile> = fc
  .record({
    vehicle,
    fuel: fc.record({ tanks: fc.array(tank, { minLength: 1, maxLength: 3 }), cans }),
    water: fc.record({ tanks: fc.array(tank, { minLength: 1, maxLength: 3 }), cans }),
  })
  .map(({ vehicle: changes, ...stores }) => rigOf(changes, stores));

const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
const mirrored = <T extends { position?: { sideM?: number } }>(one: T): T =>
  one.position === undefined
    ? one
    : { ...one, position: { ...one.position, sideM: -(one.position.sideM ?? 0) } };

/** The rig seen in a mirror. */
function mirrorOf(rig: RigFile): RigFile {
  const told = rig.vehicle!;
  const store = <S extends RigFile['water']>(one: S): S => ({
    ...one,
    tanks: one.tanks.map(mirrored),
    ...(one.cans === undefined ? {} : { cans: mirrored(one.cans) }),
  });
  return {
    ...rig,
    fuel: { ...rig.fuel, tanks: rig.fuel.tanks.map(mirrored), cans: mirrored(rig.fuel.cans!) },
    water: store(rig.water),
    vehicle: {
      ...told,
      cgSideM: -(told.cgSideM ?? 0),
      people: (told.people ?? []).map(mirrored),
      pets: (told.pets ?? []).map(mirrored),
      gear: (told.gear ?? []).map(mirrored),
    },
  };
}

const worstOf = (mass: MassReport, respect: string) =>
  mass.states.find(({ worstFor }) => worstFor.some((one) => one === respect))!;

describe('the loads of any rig', () => {
  test('should sum to its total mass, in every state', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(rigs, (rig) => {
        for (const { front, rear, totalKg } of drive(rig).mass!.states) {
          expect(front!.kg + rear!.kg).toBeCloseTo(totalKg, 6);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('should be the sum of what each container and each term puts there', () => {
    fc.assert(
      fc.property(rigs, (rig) => {
        const mass = standing(rig);
        const [departure, full, empty] = mass.states;
        for (const side of ['front', 'rear'] as const) {
          const key = `${side}Kg` as const;
          const added = mass.containers.map(
            ({ perLitre, litres, unusableLitres }) => perLitre![key] * (litres - unusableLitres),
          );
          expect(empty![side]!.kg + sumOf(added)).toBeCloseTo(full![side]!.kg, 6);
          expect(sumOf(mass.working[key].map(({ value }) => value))).toBeCloseTo(departure![side]!.kg, 6);
        }
        const toTheSide = mass.containers.map(
          ({ perLitre, litres, unusableLitres }) => perLitre!.sideKg! * (litres - unusableLitres),
        );
        expect(empty!.sideKg! + sumOf(toTheSide)).toBeCloseTo(full!.sideKg!, 6);
      }),
    );
  });

  test('should turn over with the rig in a mirror, and be even where nothing is to a side', () => {
    fc.assert(
      fc.property(rigs, (rig) => {
        const [seen, mirror] = [standing(rig), standing(mirrorOf(rig))];
        for (const [index, state] of seen.states.entries()) {
          expect(mirror.states[index]!.sideKg).toBeCloseTo(-state.sideKg!, 6);
          expect(mirror.states[index]!.cgHeightM).toBeCloseTo(state.cgHeightM!, 9);
        }
      }),
    );
    expect(standing(rigOf()).states.map(({ sideKg }) => sideKg)).toEqual([0, 0, 0]);
  });

  test('should never be below what the worst places say, anywhere along the route', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(rigs, fc.array(number(0, 1340), { minLength: 20, maxLength: 20 }), (rig, kms) => {
        const { fuel, water, mass } = drive(rig);
        const worst = worstOf(mass!, 'total').totalKg;
        for (const km of kms) {
          const levels = { fuelL: levelAt(fuel.gaps, km), waterL: levelAt(water.gaps, km) };
          expect(massAt(rig, levels)!).toBeLessThanOrEqual(worst + 1e-6);
        }
        const driven = mass!.states.filter(({ kind }) => kind === 'departure' || kind === 'along');
        for (const state of driven) {
          expect(state.front!.kg).toBeLessThanOrEqual(worstOf(mass!, 'front').front!.kg + 1e-6);
          expect(state.rear!.kg).toBeLessThanOrEqual(worstOf(mass!, 'rear').rear!.kg + 1e-6);
          expect(state.stabilityFactor!).toBeGreaterThanOrEqual(
            worstOf(mass!, 'stability').stabilityFactor! - 1e-9,
          );
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('containers', () => {
  test('should never hold more than they may, nor less than what cannot be drawn, at any level', () => {
    fc.assert(
      fc.property(
        rigs,
        number(-100, 2000),
        number(-100, 2000),
        fc.constantFrom('together' as const, 'first-first' as const, 'last-first' as const),
        (rig, fuelL, waterL, emptying) => {
          const model = massModelOf(settleRig(rig).settled)!;
          const contents = contentsAt(model, { fuelL, waterL }, emptying);
          const full = fullContents(model);
          for (const [index, container] of model.containers.entries()) {
            expect(contents[index]!).toBeLessThanOrEqual(container.litres + 1e-9);
            expect(full[index]!).toBeLessThanOrEqual(container.litres);
            expect(contents[index]!).toBeGreaterThanOrEqual(container.fixed ? container.unusableL : 0);
          }
        },
      ),
    );
  });

  test('should together hold the level, whichever empties first', () => {
    fc.assert(
      fc.property(rigs, number(0, 1), (rig, share) => {
        const tanks = massModelOf(rig)!.containers.filter((one) => one.fixed && one.commodity === 'fuel');
        const level = share * sumOf(tanks.map((one) => one.litres - one.unusableL));
        for (const emptying of ['together', 'first-first', 'last-first'] as const) {
          expect(sumOf(sharesOf(tanks, level, emptying))).toBeCloseTo(level, 9);
        }
      }),
    );
  });

  test('should load the rear axle more for a litre the further back they are', () => {
    fc.assert(
      fc.property(number(-1, 4.4), number(0.01, 1), (xM, furtherM) => {
        const tanks = [xM, xM + furtherM].map((behindFrontAxleM) => ({
          name: 'tank',
          litres: 60,
          position: { behindFrontAxleM, heightM: 0.6 },
        }));
        const mass = standing(rigOf({}, { water: { tanks } }));
        const rearKg = (index: number) => containerAt(mass, `/water/tanks/${index}`).perLitre!.rearKg;
        expect(rearKg(1)).toBeGreaterThan(rearKg(0));
      }),
    );
  });

  test('more aboard is never less mass', () => {
    fc.assert(
      fc.property(rigs, number(0, 300), number(0, 300), number(0, 50), (rig, fuelL, waterL, more) => {
        const lessKg = massAt(rig, { fuelL, waterL })!;
        expect(massAt(rig, { fuelL: fuelL + more, waterL })!).toBeGreaterThanOrEqual(lessKg - 1e-9);
        expect(massAt(rig, { fuelL, waterL: waterL + more })!).toBeGreaterThanOrEqual(lessKg - 1e-9);
      }),
    );
  });
});
