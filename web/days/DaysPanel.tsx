import type { Analysis } from '../../server/contract/analysis.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { Fields } from '../form/Fields.tsx';
import { TRIP, useForm } from '../form/form-context.ts';
import { withCamp, withRestDay, withSurface } from '../state/edit-trip.ts';
import type { Focus } from '../state/focus.ts';
import { formatFigure } from '../units/units.ts';
import { DayTable } from './DayTable.tsx';
import { PLACES, TIMES } from './day-items.tsx';
import { MarkedPlaces } from './MarkedPlaces.tsx';
import './days.css';
import { tx } from '../language/tx.ts';

interface DaysPanelProps {
  marked: Focus['marked'];
  onFocus: (next: Partial<Focus>) => void;
}

/** When it sets out, where it stops, what it drives on, and what that makes of each day. */
export function DaysPanel({ marked, onFocus }: DaysPanelProps) {
  const { analysis, said, units, onEdit } = useForm();
  const trip = (change: (before: TripFile) => TripFile) => onEdit({ ...said, trip: change(said.trip) });
  const onCamp = (atKm: number) => trip((before) => withCamp(before, atKm));
  const onRestDay = (atKm: number) => trip((before) => withRestDay(before, atKm));
  return (
    <div className="days form">
      <DaysWords analysis={analysis} />
      <Fields items={TIMES} at={TRIP} />
      <MarkedPlaces
        {...{ marked, units, onCamp, onRestDay }}
        onSurface={(fromKm, toKm, surface) =>
          trip((before) => withSurface(before, { fromKm, toKm, surface }))
        }
      />
      <DayTable {...{ analysis, units, onFocus, onCamp, onRestDay }} />
      <Fields items={PLACES} at={TRIP} />
    </div>
  );
}

function DaysWords({ analysis }: { analysis: Analysis }) {
  const { drivingHours, elapsedDays } = analysis.days;
  return (
    <p>{tx`At the slow pace ${<b>{tx`${formatFigure(drivingHours.slow, 1)} hours`}</b>} of driving in ${<b>{tx`${formatFigure(elapsedDays.slow, 1)} days`}</b>}, nights and halts included; typically ${formatFigure(elapsedDays.typical, 1)}, fast ${formatFigure(elapsedDays.fast, 1)}. Water goes by the time that passes, nights included.`}</p>
  );
}
