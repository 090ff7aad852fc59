import type { ReactNode } from 'react';
import { ChoiceField, QuantityField, TextField, TickField } from '../form/fields.tsx';
import { fieldAt, useField, useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { formatLength } from '../units/units.ts';
import { PositionFields } from '../vehicle/PositionFields.tsx';
import { PLACES } from '../vehicle/vehicle-start.ts';

const GRADES = [
  { value: '', words: 'drinking and washing' },
  { value: 'drinking', words: 'drinking only' },
  { value: 'washing', words: 'washing only' },
];

/** The fixed tanks of a commodity. */
export function Tanks({ commodity }: { commodity: 'fuel' | 'water' }) {
  return (
    <ListFields
      legend="Fixed tanks"
      one="tank"
      at={{ in: 'rig', path: `/${commodity}/tanks` }}
      fresh={(count) => ({ name: `tank ${count + 1}`, litres: 40, unusableLitres: 0 })}
      least={1}
    >
      {(entry) => (
        <>
          <TextField label="Tank" at={`${entry}/name`} />
          <QuantityField label="Holds" at={`${entry}/litres`} kind="volume" />
          <QuantityField label="of it unusable" at={`${entry}/unusableLitres`} kind="volume" optional />
          <QuantityField
            label="Filled to"
            at={`${entry}/fillPercent`}
            kind="percent"
            optional
            hint="empty: to the brim"
          />
          {commodity === 'water' && (
            <>
              <ChoiceField label="Kept for" at={`${entry}/grade`} choices={GRADES} />
              <TickField label="Apart: no pipe, pump or tap joins it to another tank" at={`${entry}/apart`} />
            </>
          )}
          <MassAndPlace at={entry} of="tank">
            <QuantityField
              label="Empty tank weighs"
              at={`${entry}/emptyKg`}
              kind="mass"
              optional
              hint="empty: part of the kerb mass"
            />
            <PositionFields
              at={`${entry}/position`}
              start={commodity === 'fuel' ? PLACES.fuelTank : PLACES.waterTank}
              whose="the tank's"
            />
          </MassAndPlace>
        </>
      )}
    </ListFields>
  );
}

/** The portable cans of a commodity, all alike. */
export function Cans({ commodity }: { commodity: 'fuel' | 'water' }) {
  const at = `/${commodity}/cans`;
  return (
    <fieldset>
      <legend>Portable cans</legend>
      <QuantityField label="Cans owned" at={`${at}/owned`} kind="count" hint="empty until filled" />
      <QuantityField label="Each can holds" at={`${at}/litres`} kind="volume" />
      <QuantityField
        label="Filled to"
        at={`${at}/fillPercent`}
        kind="percent"
        optional
        hint="empty: to the brim"
      />
      {commodity === 'water' && <ChoiceField label="Kept for" at={`${at}/grade`} choices={GRADES} />}
      <MassAndPlace at={at} of="cans">
        <QuantityField label="An empty can weighs" at={`${at}/emptyKg`} kind="mass" optional />
        <PositionFields
          at={`${at}/position`}
          start={commodity === 'fuel' ? PLACES.fuelCans : PLACES.waterCans}
          whose="the cans'"
        />
      </MassAndPlace>
    </fieldset>
  );
}

/** Mass, place and marking of a container, folded away until they are wanted. */
function MassAndPlace({ at, of, children }: { at: string; of: string; children: ReactNode }) {
  const { units } = useForm();
  const x = useField(fieldAt(`${at}/position/behindFrontAxleM`)).value;
  const told = typeof x === 'number' ? `${formatLength(x, units)} behind the front axle` : 'place not told';
  return (
    <details>
      <summary>
        Mass and place <span className="soft">{told}</span>
      </summary>
      {children}
      <TextField
        label="Marking"
        at={`${at}/marking`}
        hint={`approval, age, grade, as written on the ${of}`}
      />
    </details>
  );
}
