import { Fields } from '../form/Fields.tsx';
import { RIG, TRIP, useForm } from '../form/form-context.ts';
import { Part } from '../form/Part.tsx';
import { CREW_ITEMS, HELP_ITEMS } from './crew-items.tsx';
import { withCrew, withoutCrew } from './crew-start.ts';
import { WaterFigures } from './WaterFigures.tsx';
import './water.css';
import { t } from '../language/t.ts';

/** Who drinks from the tanks, in what heat, and what comes of it: litres a day, days that they last, and the reserve. */
export function CrewSection() {
  const { said, analysis, units, onEdit } = useForm();
  const { rig } = said;
  return (
    <>
      <Part
        told={rig.crew !== undefined}
        without={t('One figure for all aboard is reckoned with.')}
        add={{ words: t('Add a crew'), onClick: () => onEdit({ ...said, rig: withCrew(rig) }) }}
        leaveOut={{
          words: t('Remove the crew: one figure for all aboard'),
          onClick: () => onEdit({ ...said, rig: withoutCrew(rig, analysis.waterUse.litresPerDay) }),
        }}
      >
        <Fields items={CREW_ITEMS} at={RIG} />
      </Part>
      <Fields items={HELP_ITEMS} at={TRIP} />
      <WaterFigures use={analysis.waterUse} units={units} />
    </>
  );
}
