import { type ExportPack, packOf } from '../../../server/app/export/pack.ts';
import { fitPlan } from '../../../server/app/input/plan-input.ts';
import type { LoadedTrip } from '../../../server/app/loaded-trip.ts';
import { planTrip } from '../../../server/app/plan-trip.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { problemLine } from '../../../server/core/input/problem.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import type { World } from '../../checker/world/world.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { loadSwiss } from '../../real/swiss-trip.ts';

const TODAY = '2026-08-10';
const solver = await loadSolver();

function planned(loaded: LoadedTrip, rig: RigFile, trip: TripFile): ExportPack {
  const fits = fitPlan(rig, trip);
  if (!fits.ok) throw new Error(problemLine(fits.problem));
  const options = { today: TODAY, solver, seconds: 30, extras: false, cab: true };
  const outcome = planTrip(loaded, fits.value, options);
  if (!outcome.ok) throw new Error(problemLine(outcome.problem));
  const pack = packOf(loaded, outcome.value, TODAY);
  if (!pack.ok) throw new Error(problemLine(pack.problem));
  return pack.value;
}

/** A drawn trip, planned. */
export const worldPack = ({ loaded, rig, trip }: World): ExportPack => planned(loaded, rig, trip);

/** The Swiss route, planned, with more than a thousand supplies of fuel and none of water. */
export async function swissPack(): Promise<ExportPack> {
  const rig = {
    ...EXAMPLE_RIG,
    fuel: {
      ...EXAMPLE_RIG.fuel,
      tanks: [{ name: 'main', litres: 60, unusableLitres: 3 }],
      cans: { litres: 20, owned: 0 },
      reserve: { km: 100, shareOfNeed: 0 },
    },
  };
  const trip = {
    aboard: { waterLitres: 70 },
    onward: { km: 0 },
    allowancePercent: 7,
    departure: TODAY,
    plan: { mostCans: { fuel: 0, water: 8 } },
  };
  return planned(await loadSwiss(), rig, trip);
}
