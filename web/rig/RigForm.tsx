import { ChoiceField, EitherField, QuantityField, TextField, TickField } from './fields.tsx';
import { ListFields } from './ListFields.tsx';

const FUELS = [
  { value: 'diesel', words: 'diesel' },
  { value: 'petrol', words: 'petrol' },
  { value: 'lpg', words: 'LPG' },
  { value: 'cng', words: 'CNG' },
  { value: 'lng', words: 'LNG' },
  { value: 'e85', words: 'E85' },
];

const SHARED_WAYS = [
  { key: 'litres', words: 'an amount', kind: 'volume', start: 20 },
  { key: 'fraction', words: 'a share of what the tanks give', kind: 'share', start: 0.2 },
] as const;
const FUEL_WAYS = [{ key: 'km', words: 'a distance', kind: 'distance', start: 100 }, ...SHARED_WAYS] as const;
const WATER_WAYS = [
  { key: 'days', words: 'days of drinking', kind: 'days', start: 2 },
  ...SHARED_WAYS,
] as const;

/** Every quantity of the rig: what it holds, what it uses, what it must keep, how fast it goes. */
export function RigForm() {
  return (
    <>
      <TextField label="Name of the rig" at={{ in: 'rig', path: '/name' }} />
      <fieldset>
        <legend>Fuel</legend>
        <ChoiceField label="Runs on" at="/fuel/kind" choices={FUELS} />
        <UseFields of="Uses" base="/fuel/litresPer100Km" kind="fuelUse" />
        <Tanks commodity="fuel" />
        <Cans commodity="fuel" />
        <EitherField label="Reserve" at={{ in: 'rig', path: '/fuel/reserve' }} ways={FUEL_WAYS} none="none" />
        <QuantityField
          label="and of each stretch's need"
          at="/fuel/reserve/shareOfNeed"
          kind="share"
          optional
        />
      </fieldset>
      <fieldset>
        <legend>Water</legend>
        <UseFields of="All aboard use" base="/water/litresPerDay" kind="waterUse" />
        <Tanks commodity="water" />
        <Cans commodity="water" />
        <EitherField
          label="Reserve"
          at={{ in: 'rig', path: '/water/reserve' }}
          ways={WATER_WAYS}
          none="none"
        />
        <QuantityField
          label="and of each stretch's need"
          at="/water/reserve/shareOfNeed"
          kind="share"
          optional
        />
        <TickField label="Rope and bucket aboard, for wells without a pump" at="/equipment/ropeAndBucket" />
      </fieldset>
      <fieldset>
        <legend>Pace</legend>
        <QuantityField label="Driving a day" at="/pace/hoursPerDay" kind="hours" />
        <QuantityField label="Slow" at="/pace/kmPerHour/slow" kind="speed" hint="the verdict uses this" />
        <QuantityField label="Typical" at="/pace/kmPerHour/typical" kind="speed" />
        <QuantityField label="Fast" at="/pace/kmPerHour/fast" kind="speed" />
      </fieldset>
    </>
  );
}

function UseFields({ of, base, kind }: { of: string; base: string; kind: 'fuelUse' | 'waterUse' }) {
  return (
    <>
      <QuantityField label={`${of} at best`} at={`${base}/low`} kind={kind} />
      <QuantityField label={`${of} typically`} at={`${base}/typical`} kind={kind} />
      <QuantityField label={`${of} at worst`} at={`${base}/high`} kind={kind} hint="the verdict uses this" />
    </>
  );
}

function Tanks({ commodity }: { commodity: 'fuel' | 'water' }) {
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

function Cans({ commodity }: { commodity: 'fuel' | 'water' }) {
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
