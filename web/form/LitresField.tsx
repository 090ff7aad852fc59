import type { QuantityKind } from '../units/quantities.ts';
import { QuantityField } from './fields.tsx';
import { type FieldPath, fieldAt, useField } from './form-context.ts';

const pathOf = (at: FieldPath | string): FieldPath => (typeof at === 'string' ? fieldAt(at) : at);

interface LitresFieldProps {
  label: string;
  at: FieldPath;
  hint?: string;
  kind?: QuantityKind;
}

/** An amount that may be one figure or a range: one field, or three once low and high are wanted. */
export function LitresField({ label, at, hint, kind = 'waterUse' }: LitresFieldProps) {
  const { in: file, path } = pathOf(at);
  const field = useField(at);
  const ranged = typeof field.value === 'object' && field.value !== null && !Array.isArray(field.value);
  if (!ranged) {
    const one = field.value;
    return (
      <div className="one-figure">
        <QuantityField label={label} at={at} kind={kind} optional {...(hint === undefined ? {} : { hint })} />
        {typeof one === 'number' && (
          <button
            type="button"
            className="quiet"
            onClick={() => field.set({ low: one, typical: one, high: one })}
          >
            Give low, typical and high<span className="only-read"> of {label.toLowerCase()}</span>
          </button>
        )}
      </div>
    );
  }
  const typical = field.value !== null && 'typical' in Object(field.value) ? Object(field.value).typical : 0;
  return (
    <fieldset>
      <legend>{label}</legend>
      {(['low', 'typical', 'high'] as const).map((end) => (
        <QuantityField
          key={end}
          label={end}
          at={{ in: file, path: `${path}/${end}` }}
          kind={kind}
          {...(end === 'high' ? { hint: 'the verdict uses this' } : {})}
        />
      ))}
      <button type="button" className="quiet" onClick={() => field.set(typical)}>
        One figure<span className="only-read"> for {label.toLowerCase()}</span>
      </button>
    </fieldset>
  );
}
