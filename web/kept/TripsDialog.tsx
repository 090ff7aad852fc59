import { useEffect, useState } from 'react';
import type { StoreState, TripEntry } from '../../server/contract/kept.ts';
import { deleteTrip, importTrip, restoreTrip, signOut } from '../api/kept.ts';
import { Dialog } from '../kit/Dialog.tsx';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { TripRow } from './TripRow.tsx';
import { useTripList } from './use-trip-list.ts';

interface TripsDialogProps {
  /** The trip on the page. */
  openId: string;
  /** A trip's file that was dropped on the page, to be taken in at once. */
  dropped: File | null;
  onClose: () => void;
  onTrip: (id: string) => void;
}

/** All trips that are kept: opened, renamed, doubled, deleted (and taken back), given away as a file and taken in. */
export function TripsDialog({ openId, dropped, onClose, onTrip }: TripsDialogProps) {
  const { list, problem, run } = useTripList();
  const [gone, setGone] = useState<TripEntry | null>(null);
  const remove = async (trip: TripEntry) => {
    if ((await run(() => deleteTrip(trip.id))) !== null) setGone(trip);
  };
  const takeBack = async () => {
    if (gone !== null && (await run(() => restoreTrip(gone.id))) !== null) setGone(null);
  };
  const takeIn = async (file: File | null) => {
    if (file === null) return;
    const taken = await run(() => importTrip(file, () => {}, new AbortController().signal));
    if (taken !== null) onTrip(taken.id);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: each dropped file is taken in once
  useEffect(() => {
    const timer = setTimeout(() => void takeIn(dropped), 0);
    return () => clearTimeout(timer);
  }, [dropped]);
  return (
    <Dialog title={t('Trips')} mayClose onClose={onClose}>
      {list !== null && <WhereKept store={list.store} />}
      {list?.isShared && <Shared onSignOut={() => void run(signOut).then(reloadIfDone)} />}
      {problem !== null && <Problem problem={problem} />}
      {gone !== null && (
        <p className="gone" role="status">{tx`“${gone.name}” was deleted. ${(
          <button type="button" onClick={() => void takeBack()}>
            {t('Take it back')}
          </button>
        )}`}</p>
      )}
      {list === null && problem === null && <p>{t('Fetching the list…')}</p>}
      <ul className="trips" aria-label={t('Kept trips')}>
        {list?.trips.map((trip) => (
          <TripRow
            key={trip.id}
            trip={trip}
            isOpen={trip.id === openId}
            run={run}
            onOpen={() => onTrip(trip.id)}
            onDelete={() => void remove(trip)}
          />
        ))}
      </ul>
      <p>{tx`A trip file of your own or of a friend (.drystage.json): ${<FilePick onFiles={(files) => void takeIn(files[0] ?? null)}>{t('open a trip file')}</FilePick>}`}</p>
      <div className="dialog-actions">
        <button type="button" className="main" onClick={onClose}>
          {t('Close')}
        </button>
      </div>
    </Dialog>
  );
}

/** Where all of this is kept, and that it is not, where it is not. */
const WhereKept = ({ store }: { store: StoreState }) =>
  store.keeps === 'memory' ? (
    <p
      className="problem"
      role="alert"
    >{tx`Nothing is kept for good: trips are gone when Drystage stops. ${store.why} Save what you need as trip files.`}</p>
  ) : (
    <>
      <p className="quiet-note">
        {store.keeps === 'database'
          ? t('Kept in the database of this server.')
          : tx`Kept on the computer that runs Drystage, in ${store.folder}.`}
      </p>
      {store.why !== null && (
        <p className="problem" role="alert">
          {store.why}
        </p>
      )}
    </>
  );

/** Who else sees all of this, and how to leave it. */
const Shared = ({ onSignOut }: { onSignOut: () => void }) => (
  <p className="quiet-note">{tx`This server is shared: whoever has signed in sees and changes all of this. ${(
    <button type="button" onClick={onSignOut}>
      {t('Sign out')}
    </button>
  )}`}</p>
);

/** The page asks anew, and then for the secret. */
const reloadIfDone = (done: unknown): void => {
  if (done !== null) location.reload();
};
