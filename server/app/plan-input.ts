import { RigFile } from '../contract/rig.ts';
import { TripFile } from '../contract/trip.ts';
import type { Outcome, Problem, ProblemCode } from '../core/input/problem.ts';
import type { Misfit } from '../core/phrases/misfits.ts';
import { checkRig } from '../core/rig/check-rig.ts';
import { checkTrip } from '../core/trip/check-trip.ts';
import { misfitWords } from '../words/words-of.ts';
import { checkShape } from './check-shape.ts';

const refusal = (code: ProblemCode, source: string, misfit: Misfit): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, source, place: misfit.path, ...misfitWords(misfit) },
});

/** A rig as it came (parsed YAML or JSON), held against the contract and against itself. */
export function checkRigValue(value: unknown, source: string): Outcome<RigFile> {
  const shape = checkShape(RigFile, value, 'rig-invalid', source);
  if (!shape.ok) return shape;
  const misfit = checkRig(shape.value);
  return misfit === null ? shape : refusal('rig-invalid', source, misfit);
}

/** A trip as it came, held against the contract, against itself and, where there is one, against its rig. */
export function checkTripValue(value: unknown, source: string, rig: RigFile | null): Outcome<TripFile> {
  const shape = checkShape(TripFile, value, 'trip-invalid', source);
  if (!shape.ok) return shape;
  const misfit = checkTrip(shape.value, rig);
  return misfit === null ? shape : refusal('trip-invalid', source, misfit);
}
