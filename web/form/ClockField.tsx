import { useId } from 'react';
import { clockOf, hoursOf } from '../words/local-time.ts';
import { useField } from './form-context.ts';

/** A time of day, kept in the file as hours: 7.5 for half past seven. */
export function ClockField({ label, path, hint }: { label: string; path: string; hint: string }) {
  const field = useField({ in: 'trip', path });
  const id = useId();
  return (
    <div className={field.refused === null ? 'field' : 'field wrong'}>
      <label htmlFor={id}>{label}</label>
      <span className="control">
        <input
          id={id}
          className="wide"
          type="time"
          value={typeof field.value === 'number' ? clockOf(field.value) : ''}
          aria-invalid={field.refused !== null}
          aria-describedby={`${id}-remark`}
          onChange={(event) => field.set(hoursOf(event.target.value) ?? undefined)}
        />
      </span>
      <span className="remark" id={`${id}-remark`}>
        {field.refused === null ? hint : <span className="error">{field.refused}</span>}
      </span>
    </div>
  );
}
