import { ChoiceField, EitherField, QuantityField, TextField, TickField } from '../form/fields.tsx';
import type { FieldPath } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';

const EVIDENCE = [
  { value: 'confirmed', words: 'confirmed by you' },
  { value: 'stated', words: 'stated by its tags' },
  { value: 'implied', words: 'implied by its kind' },
  { value: 'doubtful', words: 'even doubtful' },
];
const SURFACES = ['sealed', 'gravel', 'track', 'sand', 'rock', 'mud', 'salt', 'unknown'].map((value) => ({
  value,
  words: value,
}));
const COMMODITIES = [
  { value: 'fuel', words: 'fuel' },
  { value: 'water', words: 'water' },
];
const FUEL_ABOARD = [
  { key: 'fuelKmSinceFill', words: 'driven since all was full', kind: 'distance', start: 0 },
  { key: 'fuelLitres', words: 'fuel that can be used', kind: 'volume', start: 0 },
] as const;
const WATER_ABOARD = [
  { key: 'waterDaysSinceFill', words: 'days since all was full', kind: 'days', start: 0 },
  { key: 'waterLitres', words: 'water that can be used', kind: 'volume', start: 0 },
] as const;
const ABOARD: FieldPath = { in: 'trip', path: '/aboard' };

const today = (): string => new Date().toISOString().slice(0, 10);

/** What belongs to this journey: what is aboard, what counts, where it halts, what was found out. */
export function TripForm() {
  return (
    <>
      <TextField label="Name of the trip" at={{ in: 'trip', path: '/name' }} />
      <fieldset>
        <legend>At the start and past the end</legend>
        <EitherField label="Fuel aboard" at={ABOARD} ways={FUEL_ABOARD} none="not said: taken as full" />
        <EitherField label="Water aboard" at={ABOARD} ways={WATER_ABOARD} none="not said: taken as full" />
        <QuantityField
          label="From the end to the next supply"
          at="/onward/km"
          kind="distance"
          hint="0 when it is there"
        />
        <QuantityField label="which takes" at="/onward/hours" kind="hours" optional />
        <QuantityField
          label="Coldest night expected"
          at="/coldestNightC"
          kind="celsius"
          optional
          hint="diesel may not stand it"
        />
        <TextField label="Departure" type="date" at="/departure" hint="for seasons and the age of tags" />
      </fieldset>
      <fieldset>
        <legend>What counts</legend>
        <ChoiceField label="Fuel counts from" at="/counting/fuel" choices={EVIDENCE} />
        <ChoiceField label="Water counts from" at="/counting/water" choices={EVIDENCE} />
        <QuantityField label="Looked for within" at="/corridorKm" kind="distance" hint="of the route" />
      </fieldset>
      <fieldset>
        <legend>How it is reckoned</legend>
        <QuantityField label="Allowance for winding" at="/allowancePercent" kind="percent" />
        <QuantityField label="Detour over straight line" at="/detourFactor" kind="factor" />
        <QuantityField label="A sketch from straight steps of" at="/sparseStepKm" kind="distance" />
        <QuantityField label="Days at each camp" at="/campDays" kind="days" />
        <TextField
          label="Part of the file"
          at="/part"
          wholeNumbers
          hint="all, a number from 1, or a track's name"
        />
      </fieldset>
      <ListFields
        legend="What is under the wheels"
        one="stretch"
        at={{ in: 'trip', path: '/surfaces' }}
        fresh={() => ({ fromKm: 0, toKm: 1, surface: 'track' })}
      >
        {(entry) => (
          <>
            <ChoiceField label="Surface" at={`${entry}/surface`} choices={SURFACES} />
            <QuantityField label="from" at={`${entry}/fromKm`} kind="distance" />
            <QuantityField label="to" at={`${entry}/toKm`} kind="distance" />
            <QuantityField
              label="Allowance for winding"
              at={`${entry}/allowancePercent`}
              kind="percent"
              optional
              hint="empty: that of the surface"
            />
          </>
        )}
      </ListFields>
      <ListFields
        legend="Further halts"
        one="halt"
        at={{ in: 'trip', path: '/stays' }}
        fresh={() => ({ atKm: 0, days: 1 })}
      >
        {(entry) => (
          <>
            <TextField label="Name" at={{ in: 'trip', path: `${entry}/name` }} />
            <QuantityField label="at" at={`${entry}/atKm`} kind="distance" />
            <QuantityField label="for" at={`${entry}/days`} kind="days" />
          </>
        )}
      </ListFields>
      <ListFields
        legend="Stretches that cannot be driven back"
        one="stretch"
        at={{ in: 'trip', path: '/oneWay' }}
        fresh={() => ({ fromKm: 0, toKm: 0 })}
      >
        {(entry) => (
          <>
            <QuantityField label="from" at={`${entry}/fromKm`} kind="distance" />
            <QuantityField label="to" at={`${entry}/toKm`} kind="distance" />
          </>
        )}
      </ListFields>
      <ListFields
        legend="What you found out about single points"
        one="finding"
        at={{ in: 'trip', path: '/confirmations' }}
        fresh={() => ({ id: 'node/', on: today(), works: true })}
      >
        {(entry) => (
          <>
            <TextField label="Point" at={`${entry}/id`} hint="its id, as in Supplies" />
            <TextField label="on" type="date" at={`${entry}/on`} />
            <TickField label="It works" at={`${entry}/works`} />
            <ChoiceField
              label="for"
              at={`${entry}/commodity`}
              choices={[{ value: '', words: 'fuel and water' }, ...COMMODITIES]}
            />
          </>
        )}
      </ListFields>
      <ListFields
        legend="Areas you vouch for: the extracts show every supply in them"
        one="area"
        at={{ in: 'trip', path: '/cover' }}
        fresh={() => ({ commodity: 'water', bbox: [0, 0, 0, 0] })}
      >
        {(entry) => (
          <>
            <ChoiceField label="For" at={`${entry}/commodity`} choices={COMMODITIES} />
            <QuantityField label="West (degrees)" at={`${entry}/bbox/0`} kind="count" />
            <QuantityField label="South (degrees)" at={`${entry}/bbox/1`} kind="count" />
            <QuantityField label="East (degrees)" at={`${entry}/bbox/2`} kind="count" />
            <QuantityField label="North (degrees)" at={`${entry}/bbox/3`} kind="count" />
          </>
        )}
      </ListFields>
    </>
  );
}
