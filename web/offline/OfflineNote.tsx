import { useSyncExternalStore } from 'react';
import { readReach, subscribeToReach } from '../api/reach.ts';
import { whenWords } from '../kept/when-words.ts';
import { t } from '../language/t.ts';

/** Says that the server does not answer, and of when what is shown is. */
export function OfflineNote() {
  const since = useSyncExternalStore(subscribeToReach, readReach);
  if (since === null) return null;
  return (
    <div className="offline" role="status">
      <p>{t`The server does not answer. Shown is its answer of ${whenWords(since.toISOString(), new Date())}; what you change waits in this browser.`}</p>
      <button type="button" onClick={() => window.location.reload()}>
        {t('Try again')}
      </button>
    </div>
  );
}
