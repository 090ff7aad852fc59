import { useId, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { MassReport } from '../../server/contract/vehicle.ts';
import type { UnitSystem } from '../units/units.ts';
import { typicalStill } from '../vehicle/vehicle-start.ts';
import { withoutPaths } from '../words/field-words.ts';
import { saidIn } from '../words/said.ts';
import { EffectTable, RiderTable } from './EffectTable.tsx';
import { FuelLimits } from './FuelLimits.tsx';
import { MassTable } from './MassTable.tsx';
import { SideDrawing } from './SideDrawing.tsx';
import { sceneOf } from './scene.ts';
import { stateWords } from './state-words.ts';
import '../table/plain-table.css';
import './side-view.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

/** Cautions that speak of masses: they stand beside the picture as well as among the notes. */
const MASS_CAUTIONS: readonly string[] = [
  'mass-over-limit',
  'mass-over-limit-full',
  'axle-lifts',
  'mass-incomplete',
  'mass-limit-unknown',
  'axle-lift-few',
  'roof-load',
  'roof-over-limit',
  'rear-overhang',
  'behind-body',
  'fuel-in-cabin',
  'carried-fuel',
];

/** What the loaded vehicle weighs and where: drawn from the side, as a table, and what to mind about it. */
export function SideView({ analysis, units }: { analysis: Analysis; units: UnitSystem }) {
  const { mass, rig } = analysis;
  return mass === null || rig.vehicle === undefined ? null : (
    <MassView analysis={analysis} mass={mass} units={units} />
  );
}

function MassView(props: { analysis: Analysis; mass: MassReport; units: UnitSystem }) {
  const { analysis, mass, units } = props;
  const [chosen, setChosen] = useState(0);
  const name = useId();
  const state = mass.states[chosen] ?? mass.states[0];
  if (state === undefined) return null;
  const scene = sceneOf(analysis.rig, mass, state);
  const fullScaleKg = Math.max(
    1,
    ...mass.states.flatMap(({ front, rear }) =>
      [front, rear].flatMap((axle) => (axle === null ? [] : [axle.kg, axle.limitKg ?? 0])),
    ),
  );
  const typical = typicalStill(analysis.rig);
  const cautions = analysis.cautions.filter(({ code }) => MASS_CAUTIONS.includes(code));
  return (
    <section className="side-view" aria-labelledby={`${name}-title`}>
      <h4 id={`${name}-title`}>{t('What it weighs, and where')}</h4>
      <fieldset className="state-switch">
        <legend className="only-read">{t('Shown for')}</legend>
        {mass.states.map((each, index) => (
          // Worst places come and go with the route; the four kinds keep their order.
          <label key={stateWords(each, 'metric')}>
            <input type="radio" name={name} checked={each === state} onChange={() => setChosen(index)} />{' '}
            {stateWords(each, units)}
          </label>
        ))}
      </fieldset>
      <SideDrawing
        scene={scene}
        state={state}
        fullScaleKg={fullScaleKg}
        units={units}
        title={t`The vehicle from the side, ${stateWords(state, units)}. The tables below hold the same figures.`}
      />
      <p className="says">{tx`Wheels, places and levels to scale; boxes by volume or mass.${!scene.body.toldInFull && t(' The body is a scheme: its measures are not all told.')}${scene.centre !== null && t(' The crossed ring is the centre of gravity.')}${scene.things.some(({ place }) => place === null) && t(' What has no place is in the table only.')}`}</p>
      {typical.length > 0 && (
        <p className="typical-still">{tx`${<b>{t('Still the typical values:')}</b>} ${typical.join(', ')}. Change those that are not your own: until then these are the masses of some ordinary wagon.`}</p>
      )}
      <MassTable state={state} mass={mass} units={units} />
      <EffectTable things={scene.things} mass={mass} units={units} />
      <RiderTable things={scene.things} units={units} />
      {cautions.length > 0 && (
        <>
          <h4>{t('To mind')}</h4>
          <ul>
            {cautions.map((caution) => (
              <li key={`${caution.code} ${caution.text}`}>{withoutPaths(saidIn(units, caution))}</li>
            ))}
          </ul>
        </>
      )}
      <FuelLimits limits={mass.fuelLimits} units={units} />
    </section>
  );
}
