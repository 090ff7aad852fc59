import { useCallback, useEffect, useRef, useState } from 'react';
import {
  Button,
  Dialog,
  FileTrigger,
  Heading,
  Label,
  Modal,
  ModalOverlay,
  ProgressBar,
} from 'react-aria-components';
import type { AnalysisReply } from '../../server/contract/map.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import {
  detailsOf,
  type OwnFiles,
  type ProblemDetails,
  sendFiles,
  type UploadStage,
  wasCalledOff,
} from '../api/api.ts';
import { Problem } from '../kit/Problem.tsx';
import { type Said, tripForAnotherRoute } from '../state/said.ts';
import { formatFigure } from '../units/units.ts';
import { type OwnFile, type Role, withFiles } from './guess-role.ts';

interface OpenFilesProps {
  /** The files last dropped on the page. */
  dropped: readonly File[];
  /** The rig and trip on the page; null when nothing is open. */
  said: Said | null;
  /** The demo's trip as it was before any edit, when that is what is open. */
  demoTrip: TripFile | null;
  onClose: () => void;
  onOpened: (reply: AnalysisReply, files: OwnFiles) => void;
}

const ROLE_WORDS: Record<Role, string> = {
  route: 'the route (GPX)',
  extract: 'map extract or waypoints',
  rig: 'rig',
  trip: 'trip',
};

/** The dialog for the reader's own route and extracts. It keeps everything chosen until the answer is there. */
export function OpenFiles({ dropped, said, demoTrip, onClose, onOpened }: OpenFilesProps) {
  const demo = demoTrip !== null;
  const [files, setFiles] = useState<OwnFile[]>([]);
  const [keepTrip, setKeepTrip] = useState(!demo);
  const [stage, setStage] = useState<UploadStage | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const [lacking, setLacking] = useState<string | null>(null);
  const upload = useRef<AbortController | null>(null);

  const chosen = useRef<readonly OwnFile[]>([]);
  chosen.current = files;

  const add = useCallback((added: readonly File[]) => {
    if (added.length === 0) return;
    setProblem(null);
    setLacking(null);
    withFiles(chosen.current, added).then(setFiles, (error: unknown) =>
      setLacking(`A file could not be read: ${error instanceof Error ? error.message : String(error)}`),
    );
  }, []);
  useEffect(() => add(dropped), [add, dropped]);
  useEffect(() => () => upload.current?.abort(), []);

  const send = async () => {
    const ofRole = (role: Role) => files.filter((each) => each.role === role).map((each) => each.file);
    const [route, ...otherRoutes] = ofRole('route');
    const extracts = ofRole('extract');
    const rigFile = ofRole('rig')[0];
    const tripFile = ofRole('trip')[0];
    const lack = lackOf({ route, otherRoutes, extracts, rig: rigFile ?? said?.rig });
    setLacking(lack);
    if (lack !== null || route === undefined) return;

    const control = new AbortController();
    upload.current = control;
    setProblem(null);
    setStage({ stage: 'sending', share: 0 });
    try {
      const keptTrip = said === null ? null : keepTrip ? said.trip : tripForAnotherRoute(said.trip, demoTrip);
      const own: OwnFiles = {
        route,
        extracts,
        rig: rigFile === undefined ? said!.rig : await rigFile.text(),
        trip: tripFile === undefined ? keptTrip : await tripFile.text(),
      };
      onOpened(await sendFiles(own, setStage, control.signal), own);
    } catch (error) {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    } finally {
      setStage(null);
    }
  };

  const busy = stage !== null;
  return (
    <ModalOverlay
      isOpen
      isDismissable={!busy}
      onOpenChange={(open) => !open && onClose()}
      className="overlay"
    >
      <Modal className="modal">
        <Dialog className="dialog">
          <Heading slot="title">Open your own route</Heading>
          <p>
            The route as GPX, and one or more extracts of OpenStreetMap that cover it (.osm.pbf, .osm,
            Overpass JSON, GeoJSON), or waypoints of your own. A rig and a trip file if you have them.
          </p>
          <div className="drop">
            Drop files on the page, or{' '}
            <FileTrigger allowsMultiple onSelect={(list) => add(list === null ? [] : [...list])}>
              <Button isDisabled={busy}>choose files</Button>
            </FileTrigger>
          </div>

          {files.length > 0 && (
            <ul className="chosen" aria-label="Chosen files">
              {files.map((each) => (
                <li key={each.key}>
                  <span className="name">
                    {each.file.name} <span className="soft">{sizeText(each.file.size)}</span>
                  </span>
                  <select
                    aria-label={`${each.file.name} is`}
                    value={each.role}
                    disabled={busy}
                    onChange={(event) => {
                      const role = event.target.value as Role;
                      setFiles(files.map((other) => (other.key === each.key ? { ...other, role } : other)));
                    }}
                  >
                    {Object.entries(ROLE_WORDS).map(([role, words]) => (
                      <option key={role} value={role}>
                        {words}
                      </option>
                    ))}
                  </select>
                  <button
                    type="button"
                    className="quiet"
                    disabled={busy}
                    onClick={() => setFiles(files.filter((other) => other.key !== each.key))}
                  >
                    Remove<span className="only-read"> {each.file.name}</span>
                  </button>
                </li>
              ))}
            </ul>
          )}

          {said !== null && !files.some((each) => each.role === 'rig') && (
            <p>
              Reckoned with the rig on the page: <b>{said.rig.name ?? 'unnamed rig'}</b>. It can be changed
              afterwards.
            </p>
          )}
          {said !== null && !files.some((each) => each.role === 'trip') && (
            <label className="tick">
              <input
                type="checkbox"
                checked={keepTrip}
                disabled={busy}
                onChange={(event) => setKeepTrip(event.target.checked)}
              />{' '}
              Keep what {demo ? "the demo's" : 'this'} trip says of places and days: aboard, onward, halts,
              findings
            </label>
          )}

          {lacking !== null && (
            <p className="problem" role="alert">
              {lacking}
            </p>
          )}
          {problem !== null && <Problem problem={problem} />}
          {stage !== null && (
            <ProgressBar
              className="progress"
              isIndeterminate={stage.stage === 'reading'}
              value={stage.stage === 'sending' ? stage.share * 100 : 100}
              valueLabel={
                stage.stage === 'sending'
                  ? `${Math.floor(stage.share * 100)} % sent`
                  : 'all sent; being read and reckoned'
              }
            >
              {({ percentage, valueText, isIndeterminate }) => (
                <>
                  <Label>{isIndeterminate ? 'Reading…' : 'Sending…'}</Label> <span>{valueText}</span>
                  <span className={isIndeterminate ? 'bar reading' : 'bar'}>
                    <span style={{ width: `${percentage ?? 100}%` }} />
                  </span>
                </>
              )}
            </ProgressBar>
          )}
          <div className="dialog-actions">
            <Button onPress={() => (busy ? upload.current?.abort() : onClose())}>
              {busy ? 'Call it off' : 'Close'}
            </Button>
            <Button className="main" isDisabled={busy || files.length === 0} onPress={() => void send()}>
              Work it out
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** What is missing before the files can be sent, null when nothing is. */
function lackOf(chosen: {
  route: File | undefined;
  otherRoutes: readonly File[];
  extracts: readonly File[];
  rig: unknown;
}): string | null {
  if (chosen.route === undefined)
    return 'No route among these files: add a GPX file, or say which one it is.';
  if (chosen.otherRoutes.length > 0) return 'More than one file is said to be the route: choose one.';
  if (chosen.extracts.length === 0) {
    return 'No map extract among these files: without one no supply is known. Add an extract that covers the route.';
  }
  return chosen.rig === undefined ? 'No rig is open: add a rig file.' : null;
}

function sizeText(bytes: number): string {
  if (bytes < 1e6) return `${formatFigure(Math.max(1, bytes / 1e3), 0)}\u00a0kB`;
  return `${formatFigure(bytes / 1e6, bytes < 1e7 ? 1 : 0)}\u00a0MB`;
}
