import { type KeyboardEvent, type ReactNode, useContext, useId, useRef, useState } from 'react';
import { t } from '../language/t.ts';
import { FindContext, finds, inside, wishOf } from './find.ts';
import { useForm } from './form-context.ts';
import type { FormItem } from './items.ts';

interface FindFieldsProps {
  /** "Find a field of the rig" */
  label: string;
  items: readonly FormItem[];
  /** Beside the box: an index of the form's parts; `show` ends the search. */
  index?: (show: () => void) => ReactNode;
  children: ReactNode;
}

/** What is found, and what a field that is not told yet can be added by. */
const FOUND = '.found, .found-way:not(:has(.found))';
const CONTROL = 'input, select, textarea, summary, button';

/** A form with a box to find its fields by their labels: what is typed leaves only those, Enter goes to the first. */
export function FindFields({ label, items, index, children }: FindFieldsProps) {
  const form = useForm();
  const id = useId();
  const [typed, setTyped] = useState('');
  const place = useRef<HTMLDivElement>(null);
  const wish = wishOf(typed);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') setTyped('');
    if (event.key !== 'Enter') return;
    place.current?.querySelector(FOUND)?.querySelector<HTMLElement>(CONTROL)?.focus();
  };
  return (
    <>
      <div className="find-fields">
        <input
          type="search"
          aria-label={label}
          aria-describedby={id}
          placeholder={label}
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          onKeyDown={onKeyDown}
        />
        <p id={id} role="status" className="soft">
          {wish !== null && tellingOf(items.some((item) => finds(item, wish, form) !== null))}
        </p>
        {index?.(() => setTyped(''))}
      </div>
      <div ref={place}>
        <FindContext.Provider value={wish}>{children}</FindContext.Provider>
      </div>
    </>
  );
}

const tellingOf = (isThere: boolean): string =>
  isThere ? t('Enter goes to the first one.') : t('No field is called so.');

interface SearchedProps {
  item: FormItem;
  /** Draws it; unfolded where something in it was looked for. */
  children: (unfolded: boolean) => ReactNode;
}

/** One item in a form that may be searched: what is found stands there as ever, what leads to it without the rest. */
export function Searched({ item, children }: SearchedProps) {
  const wish = useContext(FindContext);
  const form = useForm();
  if (wish === null) return children(false);
  const how = finds(item, wish, form);
  if (how === null) return null;
  const isWay = how === 'within' && WAYS.includes(item.item);
  return (
    <FindContext.Provider value={how === 'itself' ? null : inside(item, wish)}>
      {how === 'itself' || isWay ? (
        <div className={isWay ? 'found-way' : 'found'}>{children(true)}</div>
      ) : (
        children(true)
      )}
    </FindContext.Provider>
  );
}

/** Where a field stands in what is not told yet, its button leads to it. */
const WAYS: readonly FormItem['item'][] = ['list', 'part', 'optional-group', 'own', 'switch'];
