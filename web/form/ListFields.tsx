import type { ReactNode } from 'react';
import { useRefocus } from '../kit/hooks/use-refocus.ts';
import { tx } from '../language/tx.ts';
import { below, type FieldPath, useField, useForm } from './form-context.ts';
import type { ListItem } from './items.ts';

interface ListFieldsProps extends Omit<ListItem, 'item' | 'items'> {
  base: FieldPath;
  children: (entry: FieldPath) => ReactNode;
}

/** Entries that can be added and taken away: tanks, stays, stretches. */
export function ListFields({ base, legend, one, at, fresh, least = 0, children }: ListFieldsProps) {
  const form = useForm();
  const path = below(base, at);
  const list = useField(path);
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
      {entries.map((_, index) => {
        const entry = below(path, `/${index}`);
        return (
          // Entries are edited in place and have no identity of their own; the count in the key starts fields afresh after a removal.
          <div className="entry" key={`${entries.length} ${entry.path}`}>
            <div className="entry-fields">{children(entry)}</div>
            {entries.length > least && (
              <button
                type="button"
                className="quiet"
                onClick={() => without(index)}
              >{tx`Remove${<span className="only-read"> {`${one} ${index + 1}`}</span>}`}</button>
            )}
          </div>
        );
      })}
      <button
        type="button"
        className="quiet"
        data-add
        onClick={() => list.set([...entries, fresh(entries.length, form)])}
      >{tx`Add a ${one}`}</button>
    </fieldset>
  );
}
