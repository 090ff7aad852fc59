import type { RigFile } from '../../server/contract/rig.ts';
import { ChoiceField, QuantityField, TextField, TickField } from '../form/fields.tsx';
import { useField, useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { LitresField } from '../form/LitresField.tsx';
import { useRefocus } from '../kit/use-refocus.ts';
import type { Json } from '../state/json-path.ts';
import { TYPICAL_HEAT, TYPICAL_PERSON, TYPICAL_PET, withCrew, withoutCrew } from './crew-start.ts';
import { HeatFields } from './HeatFields.tsx';
import { WaterFigures } from './WaterFigures.tsx';
import './water.css';

const LEVELS = [
  { value: 'emergency', words: 'emergency: drinking only' },
  { value: 'basic', words: 'basic: no shower, few dishes' },
  { value: 'careful', words: 'careful: away from water' },
  { value: 'plenty', words: 'plenty: with a short shower' },
];
const PETS = [
  { value: 'dog', words: 'dog' },
  { value: 'cat', words: 'cat' },
  { value: 'other', words: 'other' },
];
const USES = [
  { key: 'drinking', words: 'Drinking' },
  { key: 'cooking', words: 'Cooking' },
  { key: 'washingUp', words: 'Washing up' },
  { key: 'washing', words: 'Washing' },
  { key: 'shower', words: 'Shower' },
];

/** Who drinks from the tanks, in what heat, and what comes of it: litres a day, days that they last, and the reserve. */
export function CrewSection() {
  const { said, analysis, units, onEdit } = useForm();
  const told = said.rig.crew !== undefined;
  const { place, soon } = useRefocus<HTMLDivElement>('input, button');
  const becomes = (rig: RigFile) => {
    soon();
    onEdit({ ...said, rig });
  };
  return (
    <div ref={place}>
      {told ? (
        <CrewFields onRemove={() => becomes(withoutCrew(said.rig, analysis.waterUse.litresPerDay))} />
      ) : (
        <p>
          One figure for all aboard is reckoned with.{' '}
          <button type="button" onClick={() => becomes(withCrew(said.rig))}>
            Add a crew
          </button>
        </p>
      )}
      <fieldset>
        <legend>Until help comes</legend>
        <QuantityField
          label="Somebody raises the alarm after"
          at="/alarmHours"
          kind="hours"
          optional
          hint="the reserve lasts at least until help is there"
        />
        <QuantityField label="Help is there after another" at="/helpHours" kind="hours" optional />
      </fieldset>
      <WaterFigures use={analysis.waterUse} units={units} />
    </div>
  );
}

function CrewFields({ onRemove }: { onRemove: () => void }) {
  const { said } = useForm();
  // A file may keep the observed figure in either place; it means the same.
  const observedAt = {
    in: 'rig',
    path: said.rig.water.litresPerDay === undefined ? '/crew/observedLitresPerDay' : '/water/litresPerDay',
  } as const;
  const observed = useField(observedAt);
  const heat = useField({ in: 'rig', path: '/crew/heat' });
  const { place, soon } = useRefocus<HTMLDivElement>('select, button');
  const setHeat = (value: Json | undefined) => {
    soon();
    heat.set(value);
  };
  return (
    <>
      <ListFields
        legend="People"
        one="person"
        at={{ in: 'rig', path: '/crew/people' }}
        fresh={() => ({ ...TYPICAL_PERSON, count: 1 })}
        least={1}
      >
        {(entry) => (
          <>
            <TextField label="Who" at={{ in: 'rig', path: `${entry}/name` }} />
            <QuantityField
              label="How many alike"
              at={{ in: 'rig', path: `${entry}/count` }}
              kind="count"
              optional
              hint="empty: one"
            />
            <ChoiceField label="Uses water" at={{ in: 'rig', path: `${entry}/level` }} choices={LEVELS} />
            <details>
              <summary>Own figures, litres a day of one person</summary>
              {USES.map(({ key, words }) => (
                <LitresField
                  key={key}
                  label={words}
                  at={{ in: 'rig', path: `${entry}/${key}` }}
                  hint="empty: that of the level"
                />
              ))}
            </details>
          </>
        )}
      </ListFields>
      <ListFields
        legend="Pets"
        one="pet"
        at={{ in: 'rig', path: '/crew/pets' }}
        fresh={() => ({ ...TYPICAL_PET })}
      >
        {(entry) => (
          <>
            <ChoiceField label="Pet" at={{ in: 'rig', path: `${entry}/kind` }} choices={PETS} />
            <QuantityField label="weighs" at={{ in: 'rig', path: `${entry}/kg` }} kind="mass" />
            <LitresField
              label="Drinks"
              at={{ in: 'rig', path: `${entry}/litresPerDay` }}
              hint="empty: by body mass"
            />
          </>
        )}
      </ListFields>
      <div ref={place}>
        {heat.said === undefined ? (
          <p>
            Heat is not told: mild weather is reckoned with.{' '}
            <button type="button" onClick={() => setHeat({ ...TYPICAL_HEAT })}>
              Add the heat expected
            </button>
          </p>
        ) : (
          <HeatFields onRemove={() => setHeat(undefined)} />
        )}
      </div>
      <LitresField
        label="As observed, all aboard"
        at={observedAt}
        hint="your own figure wins over the sum of the parts"
      />
      {observed.said !== undefined && (
        <p className="says">
          The observed figure wins over the sum of the parts.{' '}
          <button type="button" className="quiet" onClick={() => observed.set(undefined)}>
            Reckon from the crew instead
          </button>
        </p>
      )}
      <QuantityField
        label="For the vehicle"
        at={{ in: 'rig', path: '/crew/vehicleLitresPerDay' }}
        kind="waterUse"
        hint="radiator, screen"
      />
      <QuantityField
        label="Spilled and leaked"
        at={{ in: 'rig', path: '/crew/lossPercent' }}
        kind="percent"
      />
      <TickField
        label="Camps are near water that I mark safe for skin: washing water is not carried"
        at={{ in: 'rig', path: '/crew/washingAtSource' }}
      />
      <button type="button" className="quiet" onClick={onRemove}>
        Remove the crew: one figure for all aboard
      </button>
    </>
  );
}
