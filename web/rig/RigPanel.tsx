import { useRef, useState } from 'react';
import { Fields } from '../form/Fields.tsx';
import { TRIP, useForm } from '../form/form-context.ts';
import { FilePick } from '../kit/FilePick.tsx';
import { fileName, saveFile } from '../kit/save-file.ts';
import { openPlan } from '../state/open-plan.ts';
import type { Said } from '../state/said.ts';
import { KeptRigs } from './KeptRigs.tsx';
import { RigForm } from './RigForm.tsx';
import { TRIP_ITEMS } from './trip-items.ts';

/** The rig and the trip as a form that reckons as it is filled in, and as files to save and open. */
export function RigPanel() {
  const { analysis, said, onEdit } = useForm();
  const [unread, setUnread] = useState<string | null>(null);
  const [opened, setOpened] = useState(0);

  // A file takes a moment to be read: what was typed in the meantime is kept.
  const latest = useRef(said);
  latest.current = said;
  const open = async (kind: keyof Said, file: File) => {
    try {
      const read = await openPlan(kind, file, said);
      setUnread(null);
      // The fields start afresh, so that no half-typed text hides what the file says.
      setOpened((count) => count + 1);
      onEdit({ ...latest.current, [kind]: read[kind] });
    } catch (error) {
      setUnread(error instanceof Error ? error.message : String(error));
    }
  };
  const save = (kind: keyof Said) =>
    saveFile(
      `${fileName(said[kind].name ?? analysis.route.name)}-${kind}.json`,
      'application/json',
      `${JSON.stringify(said[kind], null, 2)}\n`,
    );

  return (
    <>
      {unread !== null && (
        <p className="problem" role="alert">
          {unread}
        </p>
      )}
      <section className="form" aria-labelledby="rig-form" key={`rig ${opened}`}>
        <FormTitle id="rig-form" title="Rig" kind="rig" onOpen={open} onSave={save} />
        <KeptRigs
          rig={said.rig}
          onTake={(rig) => {
            setOpened((count) => count + 1);
            onEdit({ ...latest.current, rig });
          }}
        />
        <RigForm />
      </section>
      <section className="form" aria-labelledby="trip-form" key={`trip ${opened}`}>
        <FormTitle id="trip-form" title="Trip" kind="trip" onOpen={open} onSave={save} />
        <Fields items={TRIP_ITEMS} at={TRIP} />
      </section>
    </>
  );
}

function FormTitle(props: {
  id: string;
  title: string;
  kind: keyof Said;
  onOpen: (kind: keyof Said, file: File) => void;
  onSave: (kind: keyof Said) => void;
}) {
  const { id, title, kind, onOpen, onSave } = props;
  return (
    <div className="table-title">
      <h3 id={id}>{title}</h3>
      <FilePick
        className="quiet"
        accept=".yaml,.yml,.json"
        onFiles={([file]) => file !== undefined && onOpen(kind, file)}
      >
        Open<span className="only-read"> a {kind} file</span>
      </FilePick>
      <button type="button" className="quiet" onClick={() => onSave(kind)}>
        Save<span className="only-read"> the {kind} as a file</span>
      </button>
    </div>
  );
}
