import type { ReactNode } from 'react';
import { useRefocus } from '../kit/hooks/use-refocus.ts';
import { inSentence } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Json } from '../state/json-path.ts';
import { below, type FieldPath, useField } from './form-context.ts';
import type { OptionalGroupItem, PartItem } from './items.ts';

interface PartProps {
  told: boolean;
  /** What holds while it is not told. */
  without: string;
  add: { words: string; onClick: () => void };
  leaveOut: { words: string; onClick: () => void };
  children: ReactNode;
}

/** What need not be told: a sentence and "add" while it is absent, its fields and "leave out" after. */
export function Part({ told, without, add, leaveOut, children }: PartProps) {
  const { place, soon } = useRefocus<HTMLDivElement>(FIRST_CONTROL);
  const pressed = (act: () => void) => () => {
    soon();
    act();
  };
  return (
    <div ref={place}>
      {told ? (
        <>
          {children}
          <button type="button" className="quiet" onClick={pressed(leaveOut.onClick)}>
            {leaveOut.words}
          </button>
        </>
      ) : (
        <p className="add-part">
          <span className="soft">{without}</span>{' '}
          <button type="button" onClick={pressed(add.onClick)}>
            {add.words}
          </button>
        </p>
      )}
    </div>
  );
}

const FIRST_CONTROL = 'input, select, summary, button';

type At<T> = Omit<T, 'item' | 'items'> & { base: FieldPath; children: ReactNode };

/** A part that is one value of the file. */
export function PartFields({ base, what, at, without, start, leaveOut, children }: At<PartItem>) {
  const part = useField(below(base, at));
  return (
    <Part
      told={part.said !== undefined}
      without={without}
      add={{ words: t`Add ${what}`, onClick: () => part.set(start) }}
      leaveOut={{ words: leaveOut ?? t`Leave out ${what}`, onClick: () => part.set(undefined) }}
    >
      {children}
    </Part>
  );
}

/** Values that only make sense together, under a legend: absent until added, removed together. */
export function OptionalGroup({ base, legend, at, start, typical, children }: At<OptionalGroupItem>) {
  const group = useField(below(base, at));
  const { place, soon } = useRefocus<HTMLDivElement>(FIRST_CONTROL);
  const set = (value: Json | undefined) => {
    soon();
    group.set(value);
  };
  return (
    <div ref={place}>
      {group.said === undefined ? (
        <p>
          <button
            type="button"
            className="quiet"
            onClick={() => set(start)}
          >{tx`Add ${inSentence(legend)}`}</button>
        </p>
      ) : (
        <fieldset>
          <legend>{legend}</legend>
          {JSON.stringify(group.said) === JSON.stringify(start) && <p className="says">{typical}</p>}
          {children}
          <button
            type="button"
            className="quiet"
            onClick={() => set(undefined)}
          >{tx`Remove ${inSentence(legend)}`}</button>
        </fieldset>
      )}
    </div>
  );
}
