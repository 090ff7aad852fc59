import { FieldNotes } from '../../contract/answers/field-notes.ts';
import type { TripFile } from '../../contract/trip.ts';
import { type Outcome, refused } from '../../core/input/problem.ts';
import { checkTrip } from '../../core/trip/check-trip.ts';
import { misfitWords } from '../../words/words-of.ts';
import { checkShape } from './check-shape.ts';

/** Notes as they came, held against the contract and against themselves. */
export function checkNotesValue(value: unknown, source: string): Outcome<FieldNotes> {
  const shape = checkShape(FieldNotes, value, 'notes-invalid', source);
  if (!shape.ok) return shape;
  const { stops, ...lists } = shape.value;
  const trip: TripFile = stops === undefined ? lists : { ...lists, plan: { stops } };
  const misfit = checkTrip(trip, null);
  if (misfit === null) return shape;
  return refused({ code: 'notes-invalid', source, place: misfit.path, ...misfitWords(misfit) });
}
