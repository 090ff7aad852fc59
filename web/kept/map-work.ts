import type { OverpassAsk } from '../../server/contract/answers/overpass.ts';
import type { ExtractReading } from '../../server/contract/supplies/readings.ts';
import { detailsOf, type ProblemDetails, type UploadStage, wasCalledOff } from '../api/api.ts';
import { askOverpass, keepExtract, watchReadings } from '../api/maps.ts';

/** What keeps the trip that the map data is for. */
interface TripKeeper {
  /** Another number for each trip that was opened. */
  readonly opening: number;
  addExtract(id: string): Promise<boolean>;
  takeOffExtract(name: string): Promise<boolean>;
}

export interface MapWorkState {
  /** What is at work, by its name; null while nothing is. */
  readonly job: { readonly name: string; readonly stage: UploadStage } | null;
  /** Extracts on their way to the server, of other windows as well. */
  readonly readings: readonly ExtractReading[];
  readonly problem: ProblemDetails | null;
  /** An extract that came after another trip was opened: it is kept and not added. */
  readonly keptOnly: string | null;
}

const NOTHING: MapWorkState = { job: null, readings: [], problem: null, keptOnly: null };

/** Brings map data to the trip, one job at a time, while the page goes on; knows nothing of React. */
export class MapWork {
  #state = NOTHING;
  readonly #keeper: TripKeeper;
  readonly #listeners = new Set<() => void>();
  #control: AbortController | null = null;

  constructor(keeper: TripKeeper) {
    this.#keeper = keeper;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
  readonly read = (): MapWorkState => this.#state;

  /** Sends a file to be kept, and adds it to the trip. */
  send(file: File): Promise<void> {
    const onStage = (stage: UploadStage) => this.#set({ job: { name: file.name, stage } });
    return this.#bring(file.name, async (signal) => (await keepExtract(file, onStage, signal)).id);
  }

  /** Has an Overpass server asked what was shown, and adds what comes. */
  ask(tripId: string, ask: OverpassAsk): Promise<void> {
    return this.#bring(ask.name, async (signal) => (await askOverpass(tripId, ask, signal)).id);
  }

  /** Adds a kept extract. */
  add(id: string, name: string): Promise<void> {
    return this.#bring(name, async () => id);
  }

  takeOff(name: string): Promise<void> {
    return this.#work(name, async () => void (await this.#keeper.takeOffExtract(name)));
  }

  readonly callOff = (): void => this.#control?.abort();

  #bring(name: string, get: (signal: AbortSignal) => Promise<string>): Promise<void> {
    const { opening } = this.#keeper;
    return this.#work(name, async (signal) => {
      const id = await get(signal);
      if (this.#keeper.opening === opening) await this.#keeper.addExtract(id);
      else this.#set({ keptOnly: name });
    });
  }

  async #work(name: string, work: (signal: AbortSignal) => Promise<void>): Promise<void> {
    if (this.#control !== null) return;
    const control = new AbortController();
    this.#control = control;
    this.#set({ job: { name, stage: { stage: 'reading' } }, problem: null, keptOnly: null });
    const stop = watchReadings((readings) => this.#set({ readings }));
    try {
      await work(control.signal);
    } catch (error) {
      if (!wasCalledOff(error)) this.#set({ problem: detailsOf(error) });
    } finally {
      stop();
      this.#control = null;
      this.#set({ job: null, readings: [] });
    }
  }

  #set(change: Partial<MapWorkState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}
