import { useMemo, useRef, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { ProblemDetails } from '../api/api.ts';
import { Fields } from '../form/Fields.tsx';
import { FormContext, TRIP } from '../form/form-context.ts';
import { fileName, saveFile } from '../kit/save-file.ts';
import { openPlan } from '../state/open-plan.ts';
import type { Said } from '../state/said.ts';
import type { UnitSystem } from '../units/units.ts';
import { RigForm } from './RigForm.tsx';
import { TRIP_ITEMS } from './trip-items.ts';

interface RigPanelProps {
  analysis: Analysis;
  said: Said;
  units: UnitSystem;
  problem: ProblemDetails | null;
  onEdit: (said: Said) => void;
}

/** The rig and the trip as a form that reckons as it is filled in, and as files to save and open. */
export function RigPanel({ analysis, said, units, problem, onEdit }: RigPanelProps) {
  const form = useMemo(
    () => ({ analysis, said, units, problem, onEdit }),
    [analysis, said, units, problem, onEdit],
  );
  const [unread, setUnread] = useState<string | null>(null);
  const [opened, setOpened] = useState(0);

  // A file takes a moment to be read: what was typed in the meantime is kept.
  const latest = useRef(said);
  latest.current = said;
  const open = async (kind: 'rig' | 'trip', files: FileList | null) => {
    const file = files?.[0];
    if (file === undefined) return;
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
  const save = (kind: 'rig' | 'trip') =>
    saveFile(
      `${fileName(said[kind].name ?? analysis.route.name)}-${kind}.json`,
      'application/json',
      `${JSON.stringify(said[kind], null, 2)}\n`,
    );

  return (
    <FormContext.Provider value={form}>
      {unread !== null && (
        <p className="problem" role="alert">
          {unread}
        </p>
      )}
      <section className="form" aria-labelledby="rig-form" key={`rig ${opened}`}>
        <FormTitle id="rig-form" title="Rig" kind="rig" onOpen={open} onSave={save} />
        <RigForm />
      </section>
      <section className="form" aria-labelledby="trip-form" key={`trip ${opened}`}>
        <FormTitle id="trip-form" title="Trip" kind="trip" onOpen={open} onSave={save} />
        <Fields items={TRIP_ITEMS} at={TRIP} />
      </section>
    </FormContext.Provider>
  );
}

function FormTitle(props: {
  id: string;
  title: string;
  kind: 'rig' | 'trip';
  onOpen: (kind: 'rig' | 'trip', files: FileList | null) => void;
  onSave: (kind: 'rig' | 'trip') => void;
}) {
  return (
    <div className="table-title">
      <h3 id={props.id}>{props.title}</h3>
      <FileTrigger
        acceptedFileTypes={['.yaml', '.yml', '.json']}
        onSelect={(files) => props.onOpen(props.kind, files)}
      >
        <Button className="quiet">
          Open<span className="only-read"> a {props.kind} file</span>
        </Button>
      </FileTrigger>
      <button type="button" className="quiet" onClick={() => props.onSave(props.kind)}>
        Save<span className="only-read"> the {props.kind} as a file</span>
      </button>
    </div>
  );
}
