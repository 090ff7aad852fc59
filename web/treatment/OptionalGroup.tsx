import type { ReactNode } from 'react';
import type { Json } from '../json-path.ts';
import { type FieldPath, useField } from '../rig/form-context.ts';

interface OptionalGroupProps {
  legend: string;
  at: FieldPath;
  /** What "add" puts in. */
  start: Json;
  /** Shown while the group still holds what "add" put in. */
  typical: string;
  children: ReactNode;
}

/** Values that only make sense together: absent until added, removed together. */
export function OptionalGroup({ legend, at, start, typical, children }: OptionalGroupProps) {
  const group = useField(at);
  if (group.said === undefined) {
    return (
      <p className="add-group">
        <button type="button" className="quiet" onClick={() => group.set(start)}>
          Add {legend.toLowerCase()}
        </button>
      </p>
    );
  }
  return (
    <fieldset>
      <legend>{legend}</legend>
      {JSON.stringify(group.said) === JSON.stringify(start) && <p className="says">{typical}</p>}
      {children}
      <button type="button" className="quiet" onClick={() => group.set(undefined)}>
        Remove {legend.toLowerCase()}
      </button>
    </fieldset>
  );
}
