import { type ReactNode, useRef, useState } from 'react';
import { useForm } from '../form/form-context.ts';
import { FilePick } from '../kit/FilePick.tsx';
import { fileName, saveFile } from '../kit/save-file.ts';
import { worded } from '../language/codes.ts';
import { tx } from '../language/tx.ts';
import { openPlan } from '../state/open-plan.ts';
import type { Said } from '../state/said.ts';

interface FilePartProps<Kind extends keyof Said> {
  kind: Kind;
  title: string;
  /** Its fields; `replace` puts another rig or trip in the place of what is told. */
  children: (replace: (value: Said[Kind]) => void) => ReactNode;
}

/** The rig or the trip as a form that reckons as it is filled in, and as a file to save and open. */
export function FilePart<Kind extends keyof Said>({ kind, title, children }: FilePartProps<Kind>) {
  const { analysis, said, onEdit } = useForm();
  const [unread, setUnread] = useState<string | null>(null);
  const [opened, setOpened] = useState(0);

  // A file takes a moment to be read: what was typed in the meantime is kept.
  const latest = useRef(said);
  latest.current = said;
  const replace = (value: Said[Kind]) => {
    // The fields start afresh, so that no half-typed text hides what it says.
    setOpened((count) => count + 1);
    onEdit({ ...latest.current, [kind]: value });
  };
  const open = async (file: File) => {
    try {
      const read = await openPlan(kind, file, said);
      setUnread(null);
      replace(read[kind]);
    } catch (error) {
      setUnread(error instanceof Error ? error.message : String(error));
    }
  };
  const save = () =>
    saveFile(
      `${fileName(said[kind].name ?? analysis.route.name)}-${kind}.json`,
      'application/json',
      `${JSON.stringify(said[kind], null, 2)}\n`,
    );
  const id = `${kind}-form`;
  return (
    <>
      {unread !== null && (
        <p className="problem" role="alert">
          {unread}
        </p>
      )}
      <section className="form" aria-labelledby={id} key={opened}>
        <div className="table-title">
          <h3 id={id}>{title}</h3>
          <FilePick
            className="quiet"
            accept=".yaml,.yml,.json"
            onFiles={([file]) => file !== undefined && open(file)}
          >{tx`Open${<span className="only-read">{tx` a ${worded(kind)} file`}</span>}`}</FilePick>
          <button
            type="button"
            className="quiet"
            onClick={save}
          >{tx`Save${<span className="only-read">{tx` the ${worded(kind)} as a file`}</span>}`}</button>
        </div>
        {children(replace)}
      </section>
    </>
  );
}
