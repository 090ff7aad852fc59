import { RigFile } from '../../contract/rig.ts';
import { TripFile } from '../../contract/trip.ts';
import { type Outcome, type ProblemCode, refused } from '../../core/input/problem.ts';
import type { Misfit } from '../../core/phrases/misfits.ts';
import { checkRig } from '../../core/rig/check-rig.ts';
import { checkTrip } from '../../core/trip/check-trip.ts';
import { misfitWords } from '../../words/words-of.ts';
import { checkShape } from './check-shape.ts';
import { inLitres } from './kilograms.ts';

/** What an analysis goes by. */
export interface RigAndTrip {
  rig: RigFile;
  trip: TripFile;
}

/** A rig as it came (parsed YAML or JSON), outcomeOf against the contract and against itself. */
export function checkRigValue(value: unknown, source: string): Outcome<RigFile> {
  const shape = checkShape(RigFile, inLitres(value), 'rig-invalid', source);
  return shape.ok ? fitRig(shape.value, source) : shape;
}

/** A trip as it came, outcomeOf against the contract, against itself and, where there is one, against its rig. */
export function checkTripValue(value: unknown, source: string, rig: RigFile | null): Outcome<TripFile> {
  const shape = checkShape(TripFile, value, 'trip-invalid', source);
  return shape.ok ? fitTrip(shape.value, source, rig) : shape;
}

/** A rig and, where there is one, a trip of the right shape, held against themselves and each other. */
export function fitPlan(rig: RigFile, trip: TripFile | undefined): Outcome<RigAndTrip> {
  const alone = fitRig(rig, 'rig');
  if (!alone.ok) return alone;
  const together = trip === undefined ? null : fitTrip(trip, 'trip', rig);
  return together?.ok === false ? together : { ok: true, value: { rig, trip: trip ?? {} } };
}

/** A rig of the right shape, held against itself. */
export const fitRig = (rig: RigFile, source: string): Outcome<RigFile> =>
  outcomeOf(rig, checkRig(rig), 'rig-invalid', source);

/** A trip of the right shape, held against itself and, where there is one, against its rig. */
export const fitTrip = (trip: TripFile, source: string, rig: RigFile | null): Outcome<TripFile> =>
  outcomeOf(trip, checkTrip(trip, rig), 'trip-invalid', source);

function outcomeOf<T>(value: T, misfit: Misfit | null, code: ProblemCode, source: string): Outcome<T> {
  if (misfit === null) return { ok: true, value };
  const vouchable = misfit.misfit === 'unusual';
  return refused({ code, source, place: misfit.path, vouchable, ...misfitWords(misfit) });
}
