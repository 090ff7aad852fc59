import { inSentence } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { below, type FieldPath, useField } from './form-context.ts';
import { QuantityField } from './inputs.tsx';
import { quantity, type RangeItem } from './items.ts';

const ENDS = [
  quantity('low', '/low', 'waterUse'),
  quantity('typical', '/typical', 'waterUse'),
  quantity('high', '/high', 'waterUse', { hint: t('the verdict uses this') }),
];

/** Litres a day that may be one figure or a range: one field, or three once low and high are wanted. */
export function RangeField({ base, label, at, hint }: RangeItem & { base: FieldPath }) {
  const path = below(base, at);
  const { value, set } = useField(path);
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    return (
      <fieldset>
        <legend>{label}</legend>
        {ENDS.map((end) => (
          <QuantityField key={end.at} base={path} {...end} />
        ))}
        <button
          type="button"
          className="quiet"
          onClick={() => set(value.typical ?? 0)}
        >{tx`One figure${<span className="only-read">{tx` for ${inSentence(label)}`}</span>}`}</button>
      </fieldset>
    );
  }
  return (
    <div className="one-figure">
      <QuantityField
        {...quantity(label, at, 'waterUse', { optional: true, ...(hint === undefined ? {} : { hint }) })}
        base={base}
      />
      {typeof value === 'number' && (
        <button
          type="button"
          className="quiet"
          onClick={() => set({ low: value, typical: value, high: value })}
        >{tx`Give low, typical and high${<span className="only-read">{tx` of ${inSentence(label)}`}</span>}`}</button>
      )}
    </div>
  );
}
