import { QuantityField, TextField } from './fields.tsx';
import { ListFields } from './ListFields.tsx';

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
        </>
      )}
    </ListFields>
  );
}

/** The portable cans of a commodity, all alike. */
export function Cans({ commodity }: { commodity: 'fuel' | 'water' }) {
  return (
    <>
      <QuantityField
        label="Cans owned"
        at={`/${commodity}/cans/owned`}
        kind="count"
        hint="empty until filled"
      />
      <QuantityField label="Each can holds" at={`/${commodity}/cans/litres`} kind="volume" />
    </>
  );
}
