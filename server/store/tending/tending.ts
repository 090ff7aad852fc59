import type { Store } from '../library/store.ts';
import { sweepTempFolders } from './temp-folders.ts';

const HOUR_MS = 3_600_000;

/** Takes away what is there no more for anybody: trips deleted long ago, halves of extracts, old answers, temporary files. */
export async function tend(store: Store, isStart: boolean): Promise<void> {
  store.driver.tryDisk?.();
  store.lookOver();
  // On a disk that takes no more nothing is taken away that may be wanted back.
  const { keeps } = store.state;
  if (keeps !== 'memory') {
    store.purge();
    // Beside a database another server may be taking files in.
    await store.extracts.sweep(isStart && keeps === 'folder' ? 0 : HOUR_MS);
  }
  await sweepTempFolders();
}

/** Tends a store hourly, until it is told to stop; `onFault` is told what went wrong. */
export function tendHourly(store: Store, onFault: (text: string) => void, everyMs = HOUR_MS): () => void {
  const timer = setInterval(() => {
    tend(store, false).catch((error: unknown) =>
      onFault(error instanceof Error ? error.message : String(error)),
    );
  }, everyMs).unref();
  return () => clearInterval(timer);
}
