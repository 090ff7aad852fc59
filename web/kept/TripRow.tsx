import { type FormEvent, useState } from 'react';
import type { KeptResults, TripEntry } from '../../server/contract/kept.ts';
import { duplicateTrip, exportPath, nameTrip, resetDemo } from '../api/kept.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { TripPicture } from './TripPicture.tsx';
import { whenWords } from './when-words.ts';

type Run = <T>(work: () => Promise<T>) => Promise<T | null>;

interface TripRowProps {
  trip: TripEntry;
  isOpen: boolean;
  run: Run;
  onOpen: () => void;
  onDelete: () => void;
}

/** One kept trip: what it came to, and what can be done with it. */
export function TripRow({ trip, isOpen, run, onOpen, onDelete }: TripRowProps) {
  const [naming, setNaming] = useState(false);
  return (
    <li aria-current={isOpen ? 'true' : undefined}>
      {trip.results === null ? <span className="trip-picture" /> : <TripPicture results={trip.results} />}
      <div className="trip-words">
        {naming ? (
          <NameForm trip={trip} run={run} onDone={() => setNaming(false)} />
        ) : (
          <button type="button" className="trip-name" onClick={onOpen}>
            {trip.name}
          </button>
        )}
        <small>
          {isOpen && 'open now, '}changed {whenWords(trip.changedAt, new Date())}
        </small>
        <TripVerdicts results={trip.results} />
      </div>
      <div className="trip-actions">
        {!trip.isDemo && (
          <button type="button" onClick={() => setNaming(true)}>
            Rename
          </button>
        )}
        <button type="button" onClick={() => void run(() => duplicateTrip(trip.id))}>
          Duplicate
        </button>
        <a href={exportPath(trip.id)} download>
          Save as a file
        </a>
        {trip.isDemo
          ? trip.isChanged === true && (
              <button type="button" onClick={() => void run(resetDemo)}>
                Set back
              </button>
            )
          : !isOpen && (
              <button type="button" onClick={onDelete}>
                Delete
              </button>
            )}
      </div>
    </li>
  );
}

const TripVerdicts = ({ results }: { results: KeptResults | null }) =>
  results === null ? (
    <small>not worked out as it stands</small>
  ) : (
    <small>
      fuel <VerdictMark verdict={results.fuel.verdict} />, water{' '}
      <VerdictMark verdict={results.water.verdict} />
    </small>
  );

function NameForm({ trip, run, onDone }: { trip: TripEntry; run: Run; onDone: () => void }) {
  const [name, setName] = useState(trip.name);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() !== '' && name !== trip.name)
      await run(() => nameTrip(trip.id, { revision: trip.revision, name }));
    onDone();
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <input
        aria-label="Name of the trip"
        value={name}
        maxLength={120}
        ref={(field) => field?.focus()}
        onChange={({ target }) => setName(target.value)}
      />
      <button type="submit">Name it so</button>
    </form>
  );
}
