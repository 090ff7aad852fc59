import { TextField } from './fields.tsx';
import { useForm } from './form-context.ts';
import { RIG_SECTIONS } from './sections.ts';

/** Every quantity of the rig, part by part; a part that is closed tells what stands in it. */
export function RigForm() {
  const { analysis, units } = useForm();
  return (
    <>
      <TextField label="Name of the rig" at={{ in: 'rig', path: '/name' }} />
      {RIG_SECTIONS.map(({ id, title, says, summary, open, Component }) => (
        <details className="rig-section" key={id} open={open === true}>
          <summary>
            <h4>{title}</h4> <span className="soft">{summary(analysis.rig, units)}</span>
          </summary>
          <p className="says">{says}</p>
          <Component />
        </details>
      ))}
    </>
  );
}
