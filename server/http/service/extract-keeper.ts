import type { NamedFile } from '../../app/ports.ts';
import type { ExtractReading } from '../../contract/kept.ts';
import type { Store } from '../../store/library/store.ts';
import type { StoredExtract } from '../../store/port/port.ts';
import type { TripLoader } from './trip-loader.ts';

/** A file being taken in. */
interface Incoming {
  name: string;
  startedAt: string;
  progress: SharedArrayBuffer;
}

/** Takes extracts in that were sent, and tells how that goes on. */
export class ExtractKeeper {
  readonly #store: Store;
  readonly #loader: TripLoader;
  readonly #incoming = new Set<Incoming>();

  constructor(store: Store, loader: TripLoader) {
    this.#store = store;
    this.#loader = loader;
  }

  /** Those being read, in the order in which they came. */
  get reading(): ExtractReading[] {
    return [...this.#incoming].map(({ name, startedAt, progress }) => {
      const [done = 0, total = 0] = new Float64Array(progress);
      return { name, startedAt, doneBytes: done, totalBytes: total === 0 ? null : total };
    });
  }

  /** Takes a file in that came. Throws InputProblem, and leaves nothing behind then. */
  async keep(file: NamedFile, name: string | null, signal: AbortSignal): Promise<StoredExtract> {
    const incoming: Incoming = {
      name: name ?? file.source,
      startedAt: new Date().toISOString(),
      progress: new SharedArrayBuffer(2 * Float64Array.BYTES_PER_ELEMENT),
    };
    this.#incoming.add(incoming);
    const { progress } = incoming;
    try {
      return await this.#store.extracts.add(
        { path: file.path, fileName: file.source, name: name ?? undefined, isOurs: true },
        (path) => this.#loader.ingest({ path, source: file.source, progress }, signal),
      );
    } finally {
      this.#incoming.delete(incoming);
    }
  }
}
