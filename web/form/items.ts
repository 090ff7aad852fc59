import type { ComponentType } from 'react';
import type { Json } from '../state/json-path.ts';
import type { QuantityKind } from '../units/conversions.ts';
import type { FieldPath, FormState } from './form-context.ts';

export interface Choice {
  value: string;
  words: string;
}

interface Field {
  label: string;
  /** Path below the place that the items stand at. */
  at: string;
  /** A word of help under the field. */
  hint?: string;
}

export interface QuantityItem extends Field {
  item: 'quantity';
  kind: QuantityKind;
  /** May be emptied: it is then as if it had never been told. */
  optional?: boolean;
  /** What "add" puts in: while it stands unchanged it is said to be no more than typical. */
  typical?: number;
}

/** An amount that may be one figure or a range. */
export interface RangeItem extends Field {
  item: 'range';
}

export interface TextItem extends Field {
  item: 'text';
  type?: 'date';
  /** Digits alone are kept as a number. */
  wholeNumbers?: boolean;
}

/** A time of day, kept in the file as hours. */
export interface ClockItem extends Field {
  item: 'clock';
}

export interface ChoiceItem extends Field {
  item: 'choice';
  /** An empty value takes what was told away. */
  choices: readonly Choice[];
}

export interface TickItem extends Omit<Field, 'hint'> {
  item: 'tick';
}

/** One of the ways in which something is told: how it is known, what choosing it makes of the value, what it asks. */
export interface Option extends Choice {
  holds: (told: Json | undefined) => boolean;
  becomes: (told: Json | undefined, form: FormState) => Json | undefined;
  items?: readonly FormItem[];
}

/** Something told in one of several ways: the way, and below it what that way asks for. */
export interface SwitchItem extends Omit<Field, 'hint'> {
  item: 'switch';
  options: readonly Option[];
}

interface Holder {
  items: readonly FormItem[];
}

/** Entries that can be added and taken away; its items stand at each entry. */
export interface ListItem extends Holder {
  item: 'list';
  legend: string;
  /** What one entry is called, for its buttons: "tank". */
  one: string;
  at: string;
  /** A new entry, where there are so many. */
  fresh: (count: number, form: FormState) => Json;
  /** At least so many stay. */
  least?: number;
}

/** What need not be told: a sentence and "add" while it is absent, its items and "leave out" after. */
export interface PartItem extends Holder {
  item: 'part';
  /** What it is, for its buttons: "the wheelbase". */
  what: string;
  at: string;
  /** What holds while it is not told. */
  without: string;
  /** What "add" puts in: typical values. */
  start: Json;
  /** Words of the button that takes it out, where they are not "Leave out" and what it is. */
  leaveOut?: string;
}

/** Values that only make sense together, under a legend of their own: absent until added, removed together. */
export interface OptionalGroupItem extends Holder {
  item: 'optional-group';
  legend: string;
  at: string;
  start: Json;
  /** Shown while the group still holds what "add" put in. */
  typical: string;
}

export interface GroupItem extends Holder {
  item: 'group';
  legend: string;
  /** Where its items stand, below the place of the group. */
  at: string;
}

/** Folded away until it is wanted. */
export interface FoldItem extends Holder {
  item: 'fold';
  /** A component of its own where the heading tells what stands inside. */
  summary: string | ComponentType<{ at: FieldPath }>;
}

export interface NoteItem {
  item: 'note';
  words: string;
  /** `says`: what the fields below are for; `soft`: that there is nothing to tell. */
  tone: 'says' | 'soft';
}

/** Items that stand there in some cases only. */
export interface CaseItem extends Holder {
  item: 'case';
  when: (form: FormState) => boolean;
}

/** What is like nothing else in the form. */
export interface OwnItem {
  item: 'own';
  name: string;
  Component: ComponentType<{ at: FieldPath }>;
  /** What its fields can be found by. */
  items: readonly FormItem[];
}

/** One thing that stands in a form. */
export type FormItem =
  | QuantityItem
  | RangeItem
  | TextItem
  | ClockItem
  | ChoiceItem
  | TickItem
  | SwitchItem
  | ListItem
  | PartItem
  | OptionalGroupItem
  | GroupItem
  | FoldItem
  | NoteItem
  | CaseItem
  | OwnItem;

type More<T> = Partial<Omit<T, 'item' | 'label' | 'at'>>;

/** A quantity in the reader's units. */
export const quantity = (
  label: string,
  at: string,
  kind: QuantityKind,
  more: More<QuantityItem> = {},
): QuantityItem => ({ item: 'quantity', label, at, kind, ...more });

/** A quantity that need not be told; `hint` says what holds without it. */
export const optional = (label: string, at: string, kind: QuantityKind, hint?: string): QuantityItem =>
  quantity(label, at, kind, { optional: true, ...(hint === undefined ? {} : { hint }) });

export const text = (label: string, at: string, more: More<TextItem> = {}): TextItem => ({
  item: 'text',
  label,
  at,
  ...more,
});

export const choice = (label: string, at: string, choices: readonly Choice[]): ChoiceItem => ({
  item: 'choice',
  label,
  at,
  choices,
});

export const tick = (label: string, at: string): TickItem => ({ item: 'tick', label, at });

export const range = (label: string, at: string, hint: string): RangeItem => ({
  item: 'range',
  label,
  at,
  hint,
});

export const says = (words: string): NoteItem => ({ item: 'note', words, tone: 'says' });

export const group = (legend: string, items: readonly FormItem[], at = ''): GroupItem => ({
  item: 'group',
  legend,
  items,
  at,
});

export const fold = (summary: FoldItem['summary'], items: readonly FormItem[]): FoldItem => ({
  item: 'fold',
  summary,
  items,
});

export const when = (holds: CaseItem['when'], items: readonly FormItem[]): CaseItem => ({
  item: 'case',
  when: holds,
  items,
});

export const own = (
  name: string,
  Component: OwnItem['Component'],
  items: readonly FormItem[] = [],
): OwnItem => ({
  item: 'own',
  name,
  Component,
  items,
});
