import { useCallback, useEffect, useRef, useState } from 'react';
import type { TripFile } from '../../server/contract/trip.ts';
import type { OwnFiles } from '../api/api.ts';
import type { OpenedTrip } from '../api/kept.ts';
import { Dialog } from '../kit/Dialog.tsx';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { type Said, tripForAnotherRoute } from '../state/said.ts';
import { ChosenFiles } from './ChosenFiles.tsx';
import { type OwnFile, type Role, withFiles } from './guess-role.ts';
import { sendable } from './own-files.ts';
import { UploadProgress } from './UploadProgress.tsx';
import { useUpload } from './use-upload.ts';

interface OpenFilesProps {
  /** The files last dropped on the page. */
  dropped: readonly File[];
  /** The rig and trip on the page; null when nothing is open. */
  said: Said | null;
  /** The demo's trip as it was before any edit, when that is what is open. */
  demoTrip: TripFile | null;
  onClose: () => void;
  onOpened: (opened: OpenedTrip, files: OwnFiles) => void;
}

/** The dialog for the reader's own route and extracts. It keeps everything chosen until the answer is there. */
export function OpenFiles({ dropped, said, demoTrip, onClose, onOpened }: OpenFilesProps) {
  const demo = demoTrip !== null;
  const [keepTrip, setKeepTrip] = useState(!demo);
  const { stage, problem, send, callOff, forgetProblem } = useUpload(onOpened);
  const { files, setFiles, add, lacking, setLacking } = useChosen(dropped, forgetProblem);
  const busy = stage !== null;

  const sendAll = () => {
    const keptTrip =
      said === null || keepTrip ? (said?.trip ?? null) : tripForAnotherRoute(said.trip, demoTrip);
    const ready = sendable(files, said?.rig, keptTrip);
    setLacking(ready.ok ? null : ready.lack);
    if (ready.ok) void send(ready.read);
  };
  return (
    <Dialog title={t('Open a route')} mayClose={!busy} onClose={onClose}>
      <p>
        {t(
          'The route as GPX, and one or more extracts of OpenStreetMap that cover it (.osm.pbf, .osm, Overpass JSON, GeoJSON), or waypoints of your own. A rig and a trip file if you have them.',
        )}
      </p>
      <div className="drop">{tx`Drop files on the page, or ${(
        <FilePick multiple disabled={busy} onFiles={add}>
          {t('choose files')}
        </FilePick>
      )}`}</div>
      {files.length > 0 && <ChosenFiles files={files} busy={busy} onFiles={setFiles} />}
      {said !== null && (
        <FromThePage
          {...{ said, demo, keepTrip, busy }}
          roles={files.map(({ role }) => role)}
          onKeep={setKeepTrip}
        />
      )}
      {lacking !== null && (
        <p className="problem" role="alert">
          {lacking}
        </p>
      )}
      {problem !== null && <Problem problem={problem} />}
      {stage !== null && <UploadProgress stage={stage} />}
      <div className="dialog-actions">
        <button type="button" onClick={busy ? callOff : onClose}>
          {busy ? t('Call it off') : t('Close')}
        </button>
        <button type="button" className="main" disabled={busy || files.length === 0} onClick={sendAll}>
          {t('Work it out')}
        </button>
      </div>
    </Dialog>
  );
}

/** The files that the reader dropped or chose, and what was found wrong with them here. */
function useChosen(dropped: readonly File[], onAdd: () => void) {
  const [files, setFiles] = useState<OwnFile[]>([]);
  const [lacking, setLacking] = useState<string | null>(null);
  const latest = useRef({ files, onAdd });
  latest.current = { files, onAdd };
  const add = useCallback((added: readonly File[]) => {
    if (added.length === 0) return;
    latest.current.onAdd();
    setLacking(null);
    withFiles(latest.current.files, added).then(setFiles, (error: unknown) =>
      setLacking(t`A file could not be read: ${error instanceof Error ? error.message : String(error)}`),
    );
  }, []);
  useEffect(() => add(dropped), [add, dropped]);
  return { files, setFiles, add, lacking, setLacking };
}

/** What of the page goes with files that bring no rig or no trip of their own. */
function FromThePage(props: {
  said: Said;
  roles: readonly Role[];
  demo: boolean;
  keepTrip: boolean;
  busy: boolean;
  onKeep: (keep: boolean) => void;
}) {
  const { said, roles, demo, keepTrip, busy, onKeep } = props;
  return (
    <>
      {!roles.includes('rig') && (
        <p>{tx`Reckoned with the rig on the page: ${<b>{said.rig.name ?? t('unnamed rig')}</b>}. It can be changed afterwards.`}</p>
      )}
      {!roles.includes('trip') && (
        <label className="tick">
          <input
            type="checkbox"
            checked={keepTrip}
            disabled={busy}
            onChange={({ target }) => onKeep(target.checked)}
          />{' '}
          {demo
            ? t("Keep what the demo's trip says of places and days: aboard, onward, halts, findings")
            : t('Keep what this trip says of places and days: aboard, onward, halts, findings')}
        </label>
      )}
    </>
  );
}
