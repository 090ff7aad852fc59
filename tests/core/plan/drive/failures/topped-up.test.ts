import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../../server/contract/trip.ts';
import type { MipSolver } from '../../../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../../helpers/course.ts';
import { reckoned } from '../../../../helpers/reckoned.ts';
import { planCarry } from '../../by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Water for all the way, and no can: one that is owned would spare the detour to the pump. */
const RIG: RigFile = {
  ...EXAMPLE_RIG,
  fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 0 } },
  water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'tank', litres: 200 }], cans: { litres: 20, owned: 0 } },
};
const VEHICLE = {
  kerbKg: 2000,
  includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
  people: [{ kg: 75 }],
};

/** Fuel lasts 647 km of 1,000: the pump half way is needed, the tap 2 km from it is not, nor the one far from it. */
function planWith({
  rig = RIG,
  tapOffKm = 0,
  trip = {},
}: {
  rig?: RigFile;
  tapOffKm?: number;
  trip?: TripFile;
}) {
  const features = [
    pointFeature('node/1', 500, DIESEL, 1),
    pointFeature('node/2', 502, TAP, tapOffKm),
    pointFeature('node/3', 700, TAP),
  ];
  const input = inputOf({ document: equatorDocument(1000), features, rig });
  const asked = { ...input, trip: { ...input.trip, ...trip } };
  return planCarry(reckoned(asked), { solver, seconds: 30, clock: () => 0 }).plan;
}

const waterStops = ({ legs }: ReturnType<typeof planWith>) => legs.water.slice(1).map(({ from }) => from.id);

describe('where one halts anyway', () => {
  it('the other commodity is filled up as well, and shown as any filling', () => {
    const plan = planWith({});
    expect(plan.legs.fuel.slice(1).map(({ from }) => from.id)).toEqual(['node/1']);
    expect(waterStops(plan)).toEqual(['node/2']);
    const [before, after] = plan.legs.water;
    expect(before!.arriveL).toBeLessThan(200);
    expect(after!.departL).toBe(200);
    const tap = plan.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/2');
    expect(tap).toMatchObject({ used: true, fillL: expect.closeTo(200 - before!.arriveL, 9) });
    // The aims are those of the plan: nothing is driven or lost for it. A kilometre off is 1.3 of way.
    expect(plan.aims.find(({ aim }) => aim === 'driving-km')!.value).toBeCloseTo(2.6, 2);
  });

  it('it is not for a longer detour, for waiting or for slow filling', () => {
    expect(waterStops(planWith({ tapOffKm: 1.5 }))).toEqual([]);
    expect(waterStops(planWith({ trip: { plan: { stops: [{ id: 'node/2', waitHours: 0.5 }] } } }))).toEqual(
      [],
    );
    const note = { id: 'node/2', on: '2026-05-01', saltOk: true };
    const noted = (litresPerMinute: number) => ({ waterNotes: [{ ...note, litresPerMinute }] });
    // All 200 l would take 33 minutes at 6 l a minute, and 29 at 7.
    expect(waterStops(planWith({ trip: noted(6) }))).toEqual([]);
    expect(waterStops(planWith({ trip: noted(7) }))).toEqual(['node/2']);
  });

  it('it is not where a permitted mass would be broken', () => {
    // 130 l of diesel at 0.845 kg/l (EN 590) and 200 l of water, as at the start.
    const startKg = 2000 + 130 * 0.845 + 200;
    const rig = (totalKg: number): RigFile => ({ ...RIG, vehicle: { ...VEHICLE, permitted: { totalKg } } });
    const aboard = { aboard: { fuelKmSinceFill: 0, waterLitres: 150 } };
    expect(waterStops(planWith({ rig: rig(startKg + 1) }))).toEqual(['node/2']);
    expect(waterStops(planWith({ rig: rig(startKg - 40), trip: aboard }))).toEqual([]);
  });
});
