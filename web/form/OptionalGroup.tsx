import type { ReactNode } from 'react';
import { useRefocus } from '../kit/use-refocus.ts';
import type { Json } from '../state/json-path.ts';
import { type FieldPath, useField } from './form-context.ts';

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
  const { place, soon } = useRefocus<HTMLDivElement>('input, button');
  const set = (value: Json | undefined) => {
    soon();
    group.set(value);
  };
  return (
    <div ref={place}>
      {group.said === undefined ? (
        <p>
          <button type="button" className="quiet" onClick={() => set(start)}>
            Add {legend.toLowerCase()}
          </button>
        </p>
      ) : (
        <fieldset>
          <legend>{legend}</legend>
          {JSON.stringify(group.said) === JSON.stringify(start) && <p className="says">{typical}</p>}
          {children}
          <button type="button" className="quiet" onClick={() => set(undefined)}>
            Remove {legend.toLowerCase()}
          </button>
        </fieldset>
      )}
    </div>
  );
}
