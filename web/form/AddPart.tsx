import type { ReactNode } from 'react';
import { useRefocus } from '../kit/use-refocus.ts';
import type { Json } from '../state/json-path.ts';
import { fieldAt, useField } from './form-context.ts';

interface AddPartProps {
  /** Path in the rig of what may be left out. */
  at: string;
  /** What it is, for its buttons: "the wheelbase". */
  what: string;
  /** What holds while it is not told. */
  without: string;
  /** What "add" puts in: typical values. */
  start: Json;
  children: ReactNode;
}

/** A part of the rig that need not be told: a sentence and "add" while it is absent, its fields and "leave out" after. */
export function AddPart({ at, what, without, start, children }: AddPartProps) {
  const part = useField(fieldAt(at));
  const { place, soon } = useRefocus<HTMLDivElement>('input, select, button');
  const set = (value: Json | undefined) => {
    soon();
    part.set(value);
  };
  return (
    <div ref={place}>
      {part.said === undefined ? (
        <p className="add-part">
          <span className="soft">{without}</span>{' '}
          <button type="button" onClick={() => set(start)}>
            Add {what}
          </button>
        </p>
      ) : (
        <>
          {children}
          <button type="button" className="quiet" onClick={() => set(undefined)}>
            Leave out {what}
          </button>
        </>
      )}
    </div>
  );
}
