import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Analysis } from '../../../server/contract/analysis.ts';
import type { ExtractsForTrip } from '../../../server/contract/kept.ts';
import { detailsOf, type ProblemDetails, wasCalledOff } from '../../api/api.ts';
import { getExtractsFor } from '../../api/maps.ts';
import { Dialog } from '../../kit/Dialog.tsx';
import { FilePick } from '../../kit/FilePick.tsx';
import { Problem } from '../../kit/Problem.tsx';
import { t } from '../../language/t.ts';
import { tx } from '../../language/tx.ts';
import type { Keeper } from '../keeper.ts';
import { MapProgress } from './MapProgress.tsx';
import { OverpassPart } from './OverpassPart.tsx';

interface MapsDialogProps {
  analysis: Analysis;
  tripId: string;
  keeper: Keeper;
  onClose: () => void;
}

/** The map data of the trip, and more of it: from a file, of what is kept from another trip, or asked for. */
export function MapsDialog({ analysis, tripId, keeper, onClose }: MapsDialogProps) {
  const { maps } = keeper;
  const work = useSyncExternalStore(maps.subscribe, maps.read);
  const busy = work.job !== null;
  const { found, problem } = useExtractsFor(tripId, `${busy} ${keeper.read().trip?.revision ?? 0}`);
  const { extracts } = analysis;
  const others = found?.filter(({ name }) => !extracts.some(({ source }) => source === name)) ?? [];
  return (
    <Dialog title={t('Map data of this trip')} mayClose onClose={onClose}>
      <ul className="maps">
        {extracts.map(({ source, asOf }) => (
          <TripMap
            key={source}
            name={source}
            asOf={asOf}
            kept={found?.find(({ name }) => name === source) ?? null}
            busy={busy}
            onTakeOff={() => void maps.takeOff(source)}
          />
        ))}
      </ul>
      {extracts.length === 0 && <p>{t('None: the route is dry until there is some.')}</p>}
      {[work.problem, problem].map((one) => one !== null && <Problem key={one.code} problem={one} />)}
      {work.keptOnly !== null && (
        <p role="status">{tx`“${work.keptOnly}” is kept. It was meant for the trip that was open before.`}</p>
      )}
      {others.length > 0 && (
        <>
          <h3>{t('Kept from before')}</h3>
          <ul className="maps">
            {others.map((extract) => (
              <KeptMap
                key={extract.id}
                extract={extract}
                busy={busy}
                onAdd={() => void maps.add(extract.id, extract.name)}
              />
            ))}
          </ul>
        </>
      )}
      <p>{tx`A further extract of OpenStreetMap (.osm.pbf, .osm, Overpass JSON, GeoJSON). It is kept for other trips too: ${(
        <FilePick disabled={busy} onFiles={([file]) => file !== undefined && void maps.send(file)}>
          {t('choose a file')}
        </FilePick>
      )}`}</p>
      <OverpassPart
        {...{ tripId, busy }}
        routeName={analysis.route.name}
        onAsk={(ask) => void maps.ask(tripId, ask)}
      />
      <MapProgress {...work} />
      {busy && <p className="quiet-note">{t('The page may be used meanwhile.')}</p>}
      <div className="dialog-actions">
        {busy && (
          <button type="button" onClick={maps.callOff}>
            {t('Call it off')}
          </button>
        )}
        <button type="button" className="main" onClick={onClose}>
          {t('Close')}
        </button>
      </div>
    </Dialog>
  );
}

type ForTrip = ExtractsForTrip['extracts'][number];

/** An extract that the trip has; one that is not kept by itself is gone once it is taken off. */
function TripMap(props: {
  name: string;
  asOf: string | null;
  kept: ForTrip | null;
  busy: boolean;
  onTakeOff: () => void;
}) {
  const { name, asOf, kept, busy, onTakeOff } = props;
  return (
    <li>
      <span>
        {name}{' '}
        <small>
          {ageWords(asOf)}
          {kept !== null && `, ${fitWords(kept)}`}
          {kept === null && t(', not kept by itself: once taken off, its file is needed again')}
        </small>
      </span>
      <button
        type="button"
        disabled={busy}
        onClick={onTakeOff}
      >{tx`Take off${<span className="only-read"> {name}</span>}`}</button>
    </li>
  );
}

function KeptMap({ extract, busy, onAdd }: { extract: ForTrip; busy: boolean; onAdd: () => void }) {
  const { name, asOf } = extract;
  return (
    <li>
      <span>
        {name}{' '}
        <small>
          {ageWords(asOf)}, {fitWords(extract)}
        </small>
      </span>
      <button
        type="button"
        disabled={busy}
        onClick={onAdd}
      >{tx`Add${<span className="only-read"> {name}</span>} to this trip`}</button>
    </li>
  );
}

const ageWords = (asOf: string | null): string =>
  asOf === null ? t('of a day not known') : t`as of ${asOf.slice(0, 10)}`;

/** What an extract has for the route, or how far it misses it. */
function fitWords({ offRouteKm, supplies }: ForTrip): string {
  if (offRouteKm === null) return t('with nothing that has a place');
  if (offRouteKm > 0) return t`misses the route by ${Math.max(1, Math.round(offRouteKm))} km`;
  return supplies === 0 ? t('with no supply along the route') : t`with ${supplies} supplies along the route`;
}

/** What each kept extract has for the trip's route, anew at each other `round`. */
function useExtractsFor(tripId: string, round: string) {
  const [found, setFound] = useState<readonly ForTrip[] | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each round asks once more
  useEffect(() => {
    const control = new AbortController();
    getExtractsFor(tripId, control.signal).then(
      ({ extracts }) => {
        setFound(extracts);
        setProblem(null);
      },
      (error: unknown) => {
        if (!wasCalledOff(error)) setProblem(detailsOf(error));
      },
    );
    return () => control.abort();
  }, [tripId, round]);
  return { found, problem };
}
