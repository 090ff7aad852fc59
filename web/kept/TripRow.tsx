import { type FormEvent, useState } from 'react';
import type { KeptResults, TripEntry } from '../../server/contract/kept.ts';
import { duplicateTrip, exportPath, nameTrip, resetDemo } from '../api/kept.ts';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
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
        <small>{tx`${isOpen && t('open now, ')}changed ${whenWords(trip.changedAt, new Date())}`}</small>
        <TripVerdicts results={trip.results} />
      </div>
      <div className="trip-actions">
        {!trip.isDemo && (
          <button type="button" onClick={() => setNaming(true)}>
            {t('Rename')}
          </button>
        )}
        <button type="button" onClick={() => void run(() => duplicateTrip(trip.id))}>
          {t('Duplicate')}
        </button>
        <a href={exportPath(trip.id)} download>
          {t('Save as a file')}
        </a>
        {trip.isDemo
          ? trip.isChanged === true && (
              <button type="button" onClick={() => void run(resetDemo)}>
                {t('Set back')}
              </button>
            )
          : !isOpen && (
              <button type="button" onClick={onDelete}>
                {t('Delete')}
              </button>
            )}
      </div>
    </li>
  );
}

const TripVerdicts = ({ results }: { results: KeptResults | null }) =>
  results === null ? (
    <small>{t('not worked out as it stands')}</small>
  ) : (
    <small>{tx`fuel ${<VerdictMark verdict={results.fuel.verdict} />}, water ${<VerdictMark verdict={results.water.verdict} />}`}</small>
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
        aria-label={t('Name of the trip')}
        value={name}
        maxLength={120}
        ref={(field) => field?.focus()}
        onChange={({ target }) => setName(target.value)}
      />
      <button type="submit">{t('Name it so')}</button>
    </form>
  );
}
