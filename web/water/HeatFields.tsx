import { ChoiceField, QuantityField } from '../form/fields.tsx';
import { useField } from '../form/form-context.ts';
import type { Json } from '../state/json-path.ts';
import { TYPICAL_HEAT } from './crew-start.ts';

const SUNS = [
  { value: 'shade', words: 'in the shade' },
  { value: 'some', words: 'some sun' },
  { value: 'full', words: 'full sun' },
];
const WORKS = [
  { value: 'easy', words: 'easy: driving, walking about' },
  { value: 'moderate', words: 'moderate: making camp, walking' },
  { value: 'hard', words: 'hard: digging out, pushing' },
];
const at = (key: string) => ({ in: 'rig', path: `/crew/heat/${key}` }) as const;
/** About the WBGT of the typical heat in full sun (ours). */
const TYPICAL_WBGT_C = 29;

/** The heat expected by day and the work done in it. */
export function HeatFields({ onRemove }: { onRemove: () => void }) {
  const heat = useField({ in: 'rig', path: '/crew/heat' });
  const held: { [key: string]: Json } =
    typeof heat.value === 'object' && heat.value !== null && !Array.isArray(heat.value) ? heat.value : {};
  const byWbgt = held.wbgtC !== undefined;
  const typical = Object.entries(TYPICAL_HEAT).every(([key, value]) => held[key] === value);
  const knownAs = (way: string) => {
    const { wbgtC: _, temperatureC: _t, humidityPercent: _h, ...rest } = held;
    const { temperatureC, humidityPercent } = TYPICAL_HEAT;
    heat.set(
      way === 'wbgt' ? { ...rest, wbgtC: TYPICAL_WBGT_C } : { ...rest, temperatureC, humidityPercent },
    );
  };
  return (
    <fieldset>
      <legend>Heat and work</legend>
      {typical && <p className="says">Typical values of a hot dry day: change them.</p>}
      <label className="field">
        <span>Known as</span>
        <span className="control">
          <select value={byWbgt ? 'wbgt' : 'air'} onChange={(event) => knownAs(event.target.value)}>
            <option value="air">temperature and humidity</option>
            <option value="wbgt">WBGT, measured or forecast</option>
          </select>
        </span>
      </label>
      {byWbgt ? (
        <QuantityField label="WBGT" at={at('wbgtC')} kind="celsius" />
      ) : (
        <>
          <QuantityField label="Hottest by day, in the shade" at={at('temperatureC')} kind="celsius" />
          <QuantityField
            label="Humidity then"
            at={at('humidityPercent')}
            kind="percent"
            hint="in a dry desert often 10 to 25 %"
          />
        </>
      )}
      <ChoiceField label="Sun" at={at('sun')} choices={SUNS} />
      <ChoiceField label="Work" at={at('work')} choices={WORKS} />
      <QuantityField label="Hours of it a day" at={at('workHoursPerDay')} kind="hours" />
      <button type="button" className="quiet" onClick={onRemove}>
        Remove the heat
      </button>
    </fieldset>
  );
}
