import { useEffect, useRef, useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { ExtractList, KeptExtract } from '../../server/contract/kept.ts';
import { detailsOf, type ProblemDetails, type UploadStage, wasCalledOff } from '../api/api.ts';
import { getExtracts, keepExtract } from '../api/kept.ts';
import { Dialog } from '../kit/Dialog.tsx';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { UploadProgress } from '../open/UploadProgress.tsx';
import type { Keeper } from './keeper.ts';

interface MapsDialogProps {
  extracts: Analysis['extracts'];
  keeper: Keeper;
  onClose: () => void;
  /** The trip has more map data now and is to be reckoned again. */
  onAdded: () => void;
}

/** The map data of the trip, and more of it: from a file, or of what is kept from another trip. */
export function MapsDialog({ extracts, keeper, onClose, onAdded }: MapsDialogProps) {
  const { list, stage, problem, add, send, callOff } = useMaps(keeper, onAdded);
  const busy = stage !== null;
  const others = list?.extracts.filter(({ name }) => !extracts.some(({ source }) => source === name)) ?? [];
  return (
    <Dialog title="Map data of this trip" mayClose={!busy} onClose={onClose}>
      <ul className="maps">
        {extracts.map(({ source, asOf }) => (
          <li key={source}>
            {source} <small>{ageWords(asOf)}</small>
          </li>
        ))}
      </ul>
      {problem !== null && <Problem problem={problem} />}
      {others.length > 0 && (
        <>
          <h3>Kept from before</h3>
          <ul className="maps">
            {others.map((extract) => (
              <KeptMap key={extract.id} extract={extract} busy={busy} onAdd={() => void add(extract.id)} />
            ))}
          </ul>
        </>
      )}
      <p>
        A further extract of OpenStreetMap (.osm.pbf, .osm, Overpass JSON, GeoJSON). It is kept for other
        trips too:{' '}
        <FilePick disabled={busy} onFiles={(files) => void send(files)}>
          choose a file
        </FilePick>
      </p>
      {stage !== null && <UploadProgress stage={stage} />}
      <div className="dialog-actions">
        <button type="button" className="main" onClick={busy ? callOff : onClose}>
          {busy ? 'Call it off' : 'Close'}
        </button>
      </div>
    </Dialog>
  );
}

function KeptMap({ extract, busy, onAdd }: { extract: KeptExtract; busy: boolean; onAdd: () => void }) {
  const { name, asOf, counts, shows } = extract;
  const commodities = [shows.fuel && 'fuel', shows.water && 'water'].filter(Boolean).join(' and ');
  return (
    <li>
      <span>
        {name}{' '}
        <small>
          {ageWords(asOf)}, {counts.supplies} supplies{commodities === '' ? '' : ` (${commodities})`}
        </small>
      </span>
      <button type="button" disabled={busy} onClick={onAdd}>
        Add to this trip
      </button>
    </li>
  );
}

const ageWords = (asOf: string | null): string =>
  asOf === null ? 'of a day not known' : `as of ${asOf.slice(0, 10)}`;

/** The extracts that are kept, and one more for the trip. */
function useMaps(keeper: Keeper, onAdded: () => void) {
  const [list, setList] = useState<ExtractList | null>(null);
  const [stage, setStage] = useState<UploadStage | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const upload = useRef<AbortController | null>(null);
  useEffect(() => {
    const control = new AbortController();
    getExtracts(control.signal).then(setList, (error: unknown) => {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    });
    return () => {
      control.abort();
      upload.current?.abort();
    };
  }, []);
  const run = async (work: () => Promise<string>): Promise<void> => {
    setProblem(null);
    setStage({ stage: 'reading' });
    try {
      if (await keeper.addExtract(await work())) onAdded();
    } catch (error) {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    } finally {
      setStage(null);
    }
  };
  const send = async ([file]: readonly File[]): Promise<void> => {
    if (file === undefined) return;
    const control = new AbortController();
    upload.current = control;
    await run(async () => (await keepExtract(file, setStage, control.signal)).id);
  };
  return {
    list,
    stage,
    problem,
    add: (id: string) => run(async () => id),
    send,
    callOff: () => upload.current?.abort(),
  };
}
