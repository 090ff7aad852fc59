import { useState } from 'react';
import { Fields } from '../form/Fields.tsx';
import { RIG, useForm } from '../form/form-context.ts';
import { text } from '../form/items.ts';
import { SideView } from '../side-view/SideView.tsx';
import { RIG_SECTIONS, type RigSection } from './sections.ts';
import './rig.css';

const NAME = [text('Name of the rig', '/name')];

/** Every quantity of the rig, part by part; a part that is closed tells what stands in it. */
export function RigForm() {
  const { analysis, units } = useForm();
  return (
    <>
      <Fields items={NAME} at={RIG} />
      <SideView analysis={analysis} units={units} />
      {RIG_SECTIONS.map((section) => (
        <Section key={section.id} section={section} />
      ))}
    </>
  );
}

function Section({ section }: { section: RigSection }) {
  const { said, analysis, units } = useForm();
  const { id, title, says, summary, open, items } = section;
  // Only how it stands at first: afterwards the reader opens and closes it.
  const [opened, setOpened] = useState(open === true || (id === 'vehicle' && said.rig.vehicle === undefined));
  return (
    <details
      className="rig-section"
      open={opened}
      onToggle={(event) => {
        if (event.target === event.currentTarget) setOpened(event.currentTarget.open);
      }}
    >
      <summary>
        <h4>{title}</h4> <span className="soft">{summary(analysis.rig, units)}</span>
      </summary>
      {opened && (
        <>
          <p className="says">{says}</p>
          <Fields items={items} at={RIG} />
        </>
      )}
    </details>
  );
}
