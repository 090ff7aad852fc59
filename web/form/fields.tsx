import { type ReactNode, useId, useState } from 'react';
import { fieldText, type QuantityKind, readTyped, unitOf } from '../units/quantities.ts';
import { type FieldPath, fieldAt, useField, useForm } from './form-context.ts';

interface FieldProps {
  label: string;
  at: FieldPath | string;
  /** A word of help under the field. */
  hint?: string;
}

const TYPICAL_WORDS = 'typical, change it';

const pathOf = (at: FieldPath | string): FieldPath => (typeof at === 'string' ? fieldAt(at) : at);

/** A field's frame: label, control, unit, and what is to be said about its value. */
function Frame(props: {
  id: string;
  label: string;
  unit?: string;
  hint?: string | undefined;
  assumed: string | null;
  error: string | null;
  children: ReactNode;
}) {
  const { id, label, unit, hint, assumed, error } = props;
  return (
    <div className={error === null ? 'field' : 'field wrong'}>
      <label htmlFor={id}>{label}</label>
      <span className="control">
        {props.children}
        {unit !== undefined && unit !== '' && (
          <span className="unit" id={`${id}-unit`}>
            {unit}
          </span>
        )}
      </span>
      <span className="remark" id={`${id}-remark`}>
        {error !== null ? (
          <span className="error">{error}</span>
        ) : assumed !== null ? (
          <span className="assumed">assumed: {assumed}</span>
        ) : (
          hint
        )}
      </span>
    </div>
  );
}

/** A quantity in the reader's units; reckons as it is typed. Emptied, it falls back to what we assume. */
export function QuantityField(
  props: FieldProps & {
    kind: QuantityKind;
    optional?: boolean;
    /** What "add" puts in: while it stands unchanged it is said to be no more than typical. */
    typical?: number | undefined;
  },
) {
  const { units } = useForm();
  const field = useField(pathOf(props.at));
  const [draft, setDraft] = useState<string | null>(null);
  const [complaint, setComplaint] = useState<string | null>(null);
  const id = useId();
  const text = typeof field.value === 'number' ? fieldText(field.value, props.kind, units) : '';

  const type = (typed: string) => {
    setDraft(typed);
    if (typed.trim() === '' && props.optional === true) {
      setComplaint(null);
      field.set(undefined);
      return;
    }
    const read = readTyped(typed, props.kind, units);
    setComplaint(read.ok ? null : read.why);
    if (read.ok) field.set(read.value);
  };
  const error = complaint ?? field.refused;
  return (
    <Frame
      id={id}
      label={props.label}
      unit={unitOf(props.kind, units)}
      hint={props.typical !== undefined && field.value === props.typical ? TYPICAL_WORDS : props.hint}
      assumed={field.assumed}
      error={error}
    >
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={draft ?? text}
        aria-invalid={error !== null}
        aria-describedby={`${id}-unit ${id}-remark`}
        onChange={(event) => type(event.target.value)}
        onBlur={() => {
          if (complaint === null) setDraft(null);
        }}
      />
    </Frame>
  );
}

export function TextField(props: FieldProps & { type?: 'text' | 'date'; wholeNumbers?: boolean }) {
  const field = useField(pathOf(props.at));
  const id = useId();
  const text = field.value === undefined || field.value === null ? '' : String(field.value);
  const read = (typed: string) => {
    if (typed === '') return undefined;
    return props.wholeNumbers === true && /^\d+$/.test(typed) ? Number(typed) : typed;
  };
  return (
    <Frame id={id} label={props.label} hint={props.hint} assumed={field.assumed} error={field.refused}>
      <input
        id={id}
        className="wide"
        type={props.type ?? 'text'}
        autoComplete="off"
        value={text}
        aria-invalid={field.refused !== null}
        aria-describedby={`${id}-remark`}
        onChange={(event) => field.set(read(event.target.value))}
      />
    </Frame>
  );
}

export function ChoiceField(props: FieldProps & { choices: readonly { value: string; words: string }[] }) {
  const field = useField(pathOf(props.at));
  const id = useId();
  return (
    <Frame id={id} label={props.label} hint={props.hint} assumed={field.assumed} error={field.refused}>
      <select
        id={id}
        value={typeof field.value === 'string' ? field.value : ''}
        aria-invalid={field.refused !== null}
        aria-describedby={`${id}-remark`}
        onChange={(event) => field.set(event.target.value === '' ? undefined : event.target.value)}
      >
        {props.choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.words}
          </option>
        ))}
      </select>
    </Frame>
  );
}

export function TickField({ label, at }: FieldProps) {
  const field = useField(pathOf(at));
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={field.value === true}
        onChange={(event) => field.set(event.target.checked)}
      />{' '}
      {label}
    </label>
  );
}

/** Quantity that stands in one of several ways (a reserve in km, litres, a share …): the way, and then its figure. */
export function EitherField(props: {
  label: string;
  /** Path of the object that holds the one or the other key. */
  at: FieldPath;
  ways: readonly { key: string; words: string; kind: QuantityKind; start: number }[];
  /** Words for "none of these", where that is allowed. */
  none?: string;
}) {
  const id = useId();
  const holder = useField(props.at);
  const held =
    typeof holder.value === 'object' && holder.value !== null && !Array.isArray(holder.value)
      ? holder.value
      : {};
  const way = props.ways.find((each) => held[each.key] !== undefined);
  const others = Object.fromEntries(
    Object.entries(held).filter(([key]) => !props.ways.some((each) => each.key === key)),
  );
  const choose = (key: string) => {
    const next = props.ways.find((each) => each.key === key);
    const left = next === undefined ? others : { ...others, [key]: next.start };
    holder.set(Object.keys(left).length === 0 ? undefined : left);
  };
  return (
    <div className="either">
      <Frame
        id={id}
        label={props.label}
        assumed={holder.assumed}
        error={way === undefined ? holder.refused : null}
      >
        <select
          id={id}
          value={way?.key ?? ''}
          aria-describedby={`${id}-remark`}
          onChange={(event) => choose(event.target.value)}
        >
          {(props.none !== undefined || way === undefined) && (
            <option value="">{props.none ?? 'not said'}</option>
          )}
          {props.ways.map((each) => (
            <option key={each.key} value={each.key}>
              {each.words}
            </option>
          ))}
        </select>
      </Frame>
      {way !== undefined && (
        <QuantityField
          key={way.key}
          label={way.words}
          at={{ in: props.at.in, path: `${props.at.path}/${way.key}` }}
          kind={way.kind}
        />
      )}
    </div>
  );
}
