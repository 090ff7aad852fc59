import { createContext } from 'react';
import type { FormState } from './form-context.ts';
import type { FormItem } from './items.ts';

/** What a reader looks for in a form: only what it finds is shown. */
export interface Wish {
  /** As typed, in small letters. */
  readonly words: readonly string[];
  /** What stands over the items in question, in small letters: "fuel fixed tanks". */
  readonly within: string;
}

/** Null while nothing is looked for. */
export const FindContext = createContext<Wish | null>(null);

/** What was typed as a wish; null where that is nothing. */
export function wishOf(typed: string): Wish | null {
  const words = typed.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  return words.length === 0 ? null : { words, within: '' };
}

/** What an item is called by on the screen. */
function wordsOf(item: FormItem): string {
  if ('label' in item) return item.label;
  if ('legend' in item) return item.legend;
  if (item.item === 'part') return item.what;
  return item.item === 'fold' && typeof item.summary === 'string' ? item.summary : '';
}

/** The wish as it goes on inside an item. */
export const inside = (item: FormItem, wish: Wish): Wish => ({
  ...wish,
  within: `${wish.within} ${wordsOf(item)}`.toLocaleLowerCase(),
});

const holdsAll = ({ words, within }: Wish): boolean => words.every((word) => within.includes(word));

/** Items that stand in another one now; those of a switch may come once that way is chosen. */
function itemsIn(item: FormItem, form: FormState): readonly FormItem[] {
  if (item.item === 'switch') return item.options.flatMap(({ items = [] }) => items);
  if (item.item === 'case' && !item.when(form)) return [];
  return 'items' in item ? item.items : [];
}

/**
 * Whether an item is what is looked for: each word stands in its own words or in those over it. `within`: something inside
 * it is; null: neither.
 */
export function finds(item: FormItem, wish: Wish, form: FormState): 'itself' | 'within' | null {
  if (item.item === 'case' && !item.when(form)) return null;
  const further = inside(item, wish);
  if (holdsAll(further)) return 'itself';
  return itemsIn(item, form).some((each) => finds(each, further, form) !== null) ? 'within' : null;
}
