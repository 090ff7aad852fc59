import { useId } from 'react';
import { QuantityField } from '../form/fields.tsx';
import { fieldAt, useField } from '../form/form-context.ts';

const NAMED = [
  { value: 'running-order', words: 'tanks at 90 % and a driver of 75 kg (EU papers)' },
  { value: 'full-fuel-no-driver', words: 'full fuel, nobody (US papers)' },
];
/** As weighed: full tank, nobody in it. */
const OWN = { fuelPercent: 100, driverKg: 0 };

/** What the kerb mass has in it already, so that nothing is weighed twice. */
export function KerbIncludesField() {
  const id = useId();
  const includes = useField(fieldAt('/vehicle/includes'));
  const own = typeof includes.value === 'object' && includes.value !== null;
  return (
    <>
      <div className={includes.refused === null ? 'field' : 'field wrong'}>
        <label htmlFor={id}>It includes</label>
        <span className="control">
          <select
            id={id}
            value={own ? 'own' : String(includes.value ?? '')}
            aria-describedby={`${id}-remark`}
            onChange={({ target }) => includes.set(target.value === 'own' ? { ...OWN } : target.value)}
          >
            {NAMED.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
            <option value="own">something else</option>
          </select>
        </span>
        <span className="remark" id={`${id}-remark`}>
          {includes.refused !== null ? (
            <span className="error">{includes.refused}</span>
          ) : (
            includes.assumed !== null && <span className="assumed">assumed: {includes.assumed}</span>
          )}
        </span>
      </div>
      {own && (
        <>
          <QuantityField label="Fuel tanks full to" at="/vehicle/includes/fuelPercent" kind="percent" />
          <QuantityField label="Driver" at="/vehicle/includes/driverKg" kind="mass" hint="0: nobody in it" />
          <QuantityField
            label="Water tanks full to"
            at="/vehicle/includes/waterPercent"
            kind="percent"
            optional
            hint="empty: without water"
          />
        </>
      )}
    </>
  );
}
