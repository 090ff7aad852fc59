import { useRef, useState } from 'react';
import { t } from '../language/t.ts';
import { type QuantityKind, unitOf } from '../units/conversions.ts';
import { fieldText, readTyped, type Typed } from '../units/quantities.ts';
import { clockOf, hoursOf } from '../words/local-time.ts';
import { FormRow, SelectRow, TickRow } from './FormRow.tsx';
import { below, type FieldPath, type FieldValue, useField, useForm } from './form-context.ts';
import type { ChoiceItem, ClockItem, QuantityItem, TextItem, TickItem } from './items.ts';

/** A field with the place that its path begins at. */
type At<T> = T & { base: FieldPath };

const TYPICAL_WORDS = t('typical, change it');

/** What is being typed, and what is wrong with it: what cannot be read stays as it was typed. */
function useDraft(field: FieldValue, kind: QuantityKind, mayBeEmpty: boolean) {
  const { units } = useForm();
  const [draft, setDraft] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);
  /** What stood there when the typing began: its own text, typed again, is it again to the last digit. */
  const before = useRef<{ text: string; value: number } | null>(null);
  const text = typeof field.value === 'number' ? fieldText(field.value, kind, units) : '';
  const type = (typed: string) => {
    if (draft === null)
      before.current = typeof field.value === 'number' ? { text, value: field.value } : null;
    setDraft(typed);
    const known = before.current;
    const read: Typed =
      known?.text === typed ? { ok: true, value: known.value } : readTyped(typed, kind, units);
    const emptied = typed.trim() === '' && mayBeEmpty;
    setComplaint(read.ok || emptied ? null : read.why);
    if (emptied) field.set(undefined);
    else if (read.ok) field.set(read.value);
  };
  const leave = () => {
    if (complaint === null) setDraft(null);
  };
  return { shown: draft ?? text, complaint, type, leave };
}

/** A quantity in the reader's units; reckons as it is typed. Emptied, it falls back to what we assume. */
export function QuantityField({ base, label, at, kind, hint, optional = false, typical }: At<QuantityItem>) {
  const { units } = useForm();
  const field = useField(below(base, at));
  const draft = useDraft(field, kind, optional);
  return (
    <FormRow
      label={label}
      unit={unitOf(kind, units)}
      hint={typical !== undefined && field.value === typical ? TYPICAL_WORDS : hint}
      assumed={field.assumed}
      error={draft.complaint ?? field.refused}
    >
      {(marks) => (
        <input
          {...marks}
          inputMode="decimal"
          autoComplete="off"
          value={draft.shown}
          onChange={({ target }) => draft.type(target.value)}
          onBlur={draft.leave}
        />
      )}
    </FormRow>
  );
}

export function TextField({ base, label, at, hint, type, wholeNumbers = false }: At<TextItem>) {
  const field = useField(below(base, at));
  const text = field.value === undefined || field.value === null ? '' : String(field.value);
  const read = (typed: string) => {
    if (typed === '') return undefined;
    return wholeNumbers && /^\d+$/.test(typed) ? Number(typed) : typed;
  };
  return (
    <FormRow label={label} hint={hint} assumed={field.assumed} error={field.refused}>
      {(marks) => (
        <input
          {...marks}
          className="wide"
          type={type ?? 'text'}
          autoComplete="off"
          value={text}
          onChange={({ target }) => field.set(read(target.value))}
        />
      )}
    </FormRow>
  );
}

/** A time of day, kept in the file as hours: 7.5 for half past seven. */
export function ClockField({ base, label, at, hint }: At<ClockItem>) {
  const field = useField(below(base, at));
  return (
    <FormRow label={label} hint={hint} error={field.refused}>
      {(marks) => (
        <input
          {...marks}
          className="wide"
          type="time"
          value={typeof field.value === 'number' ? clockOf(field.value) : ''}
          onChange={({ target }) => field.set(hoursOf(target.value) ?? undefined)}
        />
      )}
    </FormRow>
  );
}

export function ChoiceField({ base, label, at, hint, choices }: At<ChoiceItem>) {
  const field = useField(below(base, at));
  return (
    <SelectRow
      {...{ label, hint, choices }}
      value={typeof field.value === 'string' ? field.value : ''}
      assumed={field.assumed}
      error={field.refused}
      onChoose={(value) => field.set(value === '' ? undefined : value)}
    />
  );
}

export function TickField({ base, label, at }: At<TickItem>) {
  const field = useField(below(base, at));
  return <TickRow label={label} checked={field.value === true} onTick={field.set} />;
}
