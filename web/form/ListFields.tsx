import type { ReactNode } from 'react';
import { useRefocus } from '../kit/use-refocus.ts';
import type { Json } from '../state/json-path.ts';
import { type FieldPath, useField } from './form-context.ts';

interface ListFieldsProps {
  legend: string;
  /** What one entry is called, for its buttons: "tank". */
  one: string;
  at: FieldPath;
  /** A new entry. */
  fresh: (count: number) => Json;
  /** At least so many stay. */
  least?: number;
  children: (entryPath: string, in_: FieldPath['in'], index: number) => ReactNode;
}

/** Entries that can be added and taken away: tanks, stays, stretches. */
export function ListFields({ legend, one, at, fresh, least = 0, children }: ListFieldsProps) {
  const list = useField(at);
  const entries = Array.isArray(list.value) ? list.value : [];
  const { place, soon } = useRefocus<HTMLFieldSetElement>('button[data-add]');
  const without = (index: number) => {
    soon();
    const left = entries.filter((_, place) => place !== index);
    list.set(left.length === 0 && least === 0 ? undefined : left);
  };
  return (
    <fieldset className="list" ref={place}>
      <legend>{legend}</legend>
      {entries.map((_, index) => (
        // Entries are edited in place and have no identity of their own; the count in the key starts fields afresh after a removal.
        <div className="entry" key={`${entries.length} ${entryKey(at.path, index)}`}>
          <div className="entry-fields">{children(`${at.path}/${index}`, at.in, index)}</div>
          {entries.length > least && (
            <button type="button" className="quiet" onClick={() => without(index)}>
              Remove<span className="only-read"> {`${one} ${index + 1}`}</span>
            </button>
          )}
        </div>
      ))}
      <button
        type="button"
        className="quiet"
        data-add
        onClick={() => list.set([...entries, fresh(entries.length)])}
      >
        Add a {one}
      </button>
    </fieldset>
  );
}

const entryKey = (path: string, index: number): string => `${path}/${index}`;
