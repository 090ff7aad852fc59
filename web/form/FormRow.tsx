import { type ReactNode, useId } from 'react';
import { tx } from '../language/tx.ts';

/** What ties a control to its label and its remark. */
export interface ControlMarks {
  id: string;
  'aria-invalid': boolean;
  'aria-describedby': string;
}

interface FormRowProps {
  label: string;
  unit?: string;
  /** A word of help under the control, where nothing else is to be said. */
  hint?: string | undefined;
  /** Why the value was assumed; null where it was told. */
  assumed?: string | null;
  error?: string | null;
  children: (marks: ControlMarks) => ReactNode;
}

/** The one row of the form: label, control, unit, and what is to be said about its value. */
export function FormRow({ label, unit = '', hint, assumed = null, error = null, children }: FormRowProps) {
  const id = useId();
  const remarkId = `${id}-remark`;
  const unitId = `${id}-unit`;
  return (
    <div className={error === null ? 'field' : 'field wrong'}>
      <label htmlFor={id}>{label}</label>
      <span className="control">
        {children({
          id,
          'aria-invalid': error !== null,
          'aria-describedby': unit === '' ? remarkId : `${unitId} ${remarkId}`,
        })}
        {unit !== '' && (
          <span className="unit" id={unitId}>
            {unit}
          </span>
        )}
      </span>
      <span className="remark" id={remarkId}>
        {error !== null ? (
          <span className="error">{error}</span>
        ) : assumed !== null ? (
          <span className="assumed">{tx`assumed: ${assumed}`}</span>
        ) : (
          hint
        )}
      </span>
    </div>
  );
}

interface SelectRowProps extends Omit<FormRowProps, 'unit' | 'children'> {
  value: string;
  choices: readonly { value: string; words: string }[];
  onChoose: (value: string) => void;
}

/** A row with a list to choose from. */
export function SelectRow({ value, choices, onChoose, ...row }: SelectRowProps) {
  return (
    <FormRow {...row}>
      {(marks) => (
        <select {...marks} value={value} onChange={({ target }) => onChoose(target.value)}>
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.words}
            </option>
          ))}
        </select>
      )}
    </FormRow>
  );
}

/** A row with a box to tick: its label stands behind the box. */
export function TickRow(props: { label: string; checked: boolean; onTick: (checked: boolean) => void }) {
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={props.checked}
        onChange={({ target }) => props.onTick(target.checked)}
      />{' '}
      {props.label}
    </label>
  );
}
