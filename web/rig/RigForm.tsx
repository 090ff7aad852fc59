import { useState } from 'react';
import { TextField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { SideView } from '../side-view/SideView.tsx';
import { RIG_SECTIONS, type RigSection } from './sections.ts';
import './rig.css';

/** Every quantity of the rig, part by part; a part that is closed tells what stands in it. */
export function RigForm() {
  const { analysis, units } = useForm();
  return (
    <>
      <TextField label="Name of the rig" at={{ in: 'rig', path: '/name' }} />
      <SideView analysis={analysis} units={units} />
      {RIG_SECTIONS.map((section) => (
        <Section key={section.id} section={section} />
      ))}
    </>
  );
}

function Section({ section }: { section: RigSection }) {
  const { said, analysis, units } = useForm();
  const { id, title, says, summary, open, Component } = section;
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
          <Component />
        </>
      )}
    </details>
  );
}
