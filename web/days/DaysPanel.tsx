import { useMemo } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import type { ProblemDetails } from '../api/api.ts';
import { ClockField } from '../form/ClockField.tsx';
import { QuantityField, TextField } from '../form/fields.tsx';
import { FormContext } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { withCamp, withRestDay, withSurface } from '../state/edit-trip.ts';
import type { Focus } from '../state/focus.ts';
import type { Said } from '../state/said.ts';
import { formatFigure, type UnitSystem } from '../units/units.ts';
import { DayTable } from './DayTable.tsx';
import { MarkedPlaces } from './MarkedPlaces.tsx';
import { Surfaces } from './Surfaces.tsx';
import './days.css';

interface DaysPanelProps {
  analysis: Analysis;
  said: Said;
  units: UnitSystem;
  problem: ProblemDetails | null;
  marked: Focus['marked'];
  onFocus: (next: Partial<Focus>) => void;
  onEdit: (said: Said) => void;
}

/** When it sets out, where it stops, what it drives on, and what that makes of each day. */
export function DaysPanel({ analysis, said, units, problem, marked, onFocus, onEdit }: DaysPanelProps) {
  const form = useMemo(
    () => ({ analysis, said, units, problem, onEdit }),
    [analysis, said, units, problem, onEdit],
  );
  const trip = (change: (before: TripFile) => TripFile) => onEdit({ ...said, trip: change(said.trip) });
  const onCamp = (atKm: number) => trip((before) => withCamp(before, atKm));
  const onRestDay = (atKm: number) => trip((before) => withRestDay(before, atKm));
  return (
    <FormContext.Provider value={form}>
      <div className="days form">
        <DaysWords analysis={analysis} />
        <TextField label="Departure" type="date" at="/departure" />
        <ClockField
          label="Each day's driving begins at"
          path="/departureHour"
          hint="with it water goes by the time that passes"
        />
        <QuantityField
          label="Camp after driving for"
          at="/campAfterHours"
          kind="hours"
          optional
          hint="empty: as long as the rig's day"
        />
        <MarkedPlaces
          {...{ marked, units, onCamp, onRestDay }}
          onSurface={(fromKm, toKm, surface) =>
            trip((before) => withSurface(before, { fromKm, toKm, surface }))
          }
        />
        <DayTable {...{ analysis, units, onFocus, onCamp, onRestDay }} />
        <ListFields
          legend="Camps"
          one="camp"
          at={{ in: 'trip', path: '/camps' }}
          fresh={() => ({ atKm: Math.round(analysis.route.lengthKm / 2) })}
        >
          {(entry) => (
            <>
              <TextField label="Camp" at={{ in: 'trip', path: `${entry}/name` }} />
              <QuantityField label="at" at={`${entry}/atKm`} kind="distance" />
            </>
          )}
        </ListFields>
        <ListFields
          legend="Rest days and waiting"
          one="halt"
          at={{ in: 'trip', path: '/stays' }}
          fresh={() => ({ atKm: 0, days: 1 })}
        >
          {(entry) => (
            <>
              <TextField label="Halt" at={{ in: 'trip', path: `${entry}/name` }} />
              <QuantityField label="at" at={`${entry}/atKm`} kind="distance" />
              <QuantityField label="for" at={`${entry}/days`} kind="days" />
            </>
          )}
        </ListFields>
        <Surfaces lengthKm={analysis.route.lengthKm} />
      </div>
    </FormContext.Provider>
  );
}

function DaysWords({ analysis }: { analysis: Analysis }) {
  const { drivingHours, elapsedDays, waterCharge } = analysis.days;
  return (
    <p>
      At the slow pace <b>{formatFigure(drivingHours.slow, 1)}&nbsp;hours</b> of driving in{' '}
      <b>{formatFigure(elapsedDays.slow, 1)}&nbsp;days</b>, nights and halts included; typically{' '}
      {formatFigure(elapsedDays.typical, 1)}, fast {formatFigure(elapsedDays.fast, 1)}.{' '}
      {waterCharge === 'elapsed'
        ? 'Water goes by the time that passes, nights included.'
        : 'Water goes by every day begun, until the hour of departure is told.'}
    </p>
  );
}
