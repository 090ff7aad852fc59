import type { KeptTripReply, TripChangeEntry } from '../../server/contract/kept.ts';
import { detailsOf, type ProblemDetails } from '../api/api.ts';
import { duplicateTrip, getChanges, getTrip, putTrip, standTrip, type Written } from '../api/kept.ts';
import { addExtract, takeOffExtract } from '../api/maps.ts';
import { t } from '../language/t.ts';
import type { Said } from '../state/said.ts';
import { dropDraft, keepDraft, readDraft } from './draft.ts';
import { MapWork } from './map-work.ts';

/** Wait after the last edit before saving, and the longest that an edit waits, ms: within a second it is saved. */
export const QUIET_MS = 300;
export const LONGEST_MS = 800;
/** Waits before a save is tried again that no server answered, ms; the last one again and again. */
export const RETRY_MS = [1000, 2000, 4000, 8000, 15_000];

/** How what is said stands to what is kept. `own`: nothing was changed of the demo, which stays as it is. */
export type Saving =
  | { readonly state: 'own' | 'saving' }
  /** `isLasting`: for good, and not until the server stops. */
  | { readonly state: 'saved'; readonly isLasting: boolean }
  /** The server does not answer: kept in this browser (where that can be) and tried again. */
  | { readonly state: 'waiting'; readonly inBrowser: boolean }
  /** The trip was changed elsewhere: both versions are offered. */
  | { readonly state: 'elsewhere'; readonly kept: KeptTripReply }
  | { readonly state: 'refused'; readonly problem: ProblemDetails };

type KeptTrip = Pick<KeptTripReply, 'id' | 'name' | 'revision' | 'standsAt'>;

export interface KeeperState {
  /** The trip that is written to; null while the demo is as it was. */
  readonly trip: KeptTrip | null;
  readonly saving: Saving;
  /** The newest first. */
  readonly changes: readonly TripChangeEntry[];
}

/** The demo, which stays as it is. */
const DEMO_ID = 'demo';

const NOTHING: KeeperState = { trip: null, saving: { state: 'own' }, changes: [] };

/** What a keeper asks of the page. */
export interface KeeperPage {
  /** Rig and trip are to be these: undone, redone, or taken from elsewhere. */
  readonly onSaid: (said: Said) => void;
  /** What is changed from one to the other, in words. */
  readonly wordsOf: (before: Said, after: Said) => string;
  /** What is on the page, the demo until now, is kept under this id from now on. */
  readonly onOwn: (id: string) => void;
}

const sameSaid = (a: Said, b: Said): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * Saves every change of a trip within a second, one write at a time, each going out from the revision of the one before.
 * What is not acknowledged yet is in the browser's storage. The first change of the demo makes a trip of the reader's own.
 */
export class Keeper {
  #state = NOTHING;
  #page: KeeperPage = { onSaid: () => {}, wordsOf: () => t('A change'), onOwn: () => {} };
  readonly #listeners = new Set<() => void>();
  /** As the server has it. */
  #savedSaid: Said | null = null;
  /** As the page has it, where that is something else. */
  #wanted: Said | null = null;
  #wantedSince = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #tries = 0;
  /** Whether the last write is kept for good. */
  #isLasting = true;
  /** The write that goes on now. */
  #underWay: Promise<unknown> | null = null;
  /** Counts the trips that were opened: what an older one still answers is no matter. */
  #opening = 0;

  /** Brings map data to the trip. */
  readonly maps = new MapWork(this);

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
  readonly read = (): KeeperState => this.#state;

  set page(page: KeeperPage) {
    this.#page = page;
  }

  /** Another number for each trip that was opened. */
  get opening(): number {
    return this.#opening;
  }

  /** Whether there is something that the server does not have. */
  get isUnsaved(): boolean {
    return this.#wanted !== null;
  }

  /** From now on changes are of this trip; of the demo while `kept` is null. What a visit before left unsaved goes on. */
  begin(kept: KeptTripReply | null, said: Said): void {
    this.#opening += 1;
    clearTimeout(this.#timer);
    this.#wanted = null;
    this.#tries = 0;
    this.#savedSaid = kept === null ? said : { rig: kept.rig, trip: kept.trip };
    this.#set({ trip: kept, saving: kept === null ? { state: 'own' } : this.#asSaved, changes: [] });
    if (kept !== null) void this.#fetchChanges(kept.id);
    this.#takeUpDraft(kept, this.#savedSaid);
  }

  #takeUpDraft(kept: KeptTripReply | null, saved: Said): void {
    const draft = readDraft(kept?.id ?? DEMO_ID);
    if (draft === null) return;
    if (sameSaid(draft.said, saved)) {
      dropDraft(kept?.id ?? DEMO_ID);
      return;
    }
    this.#wanted = draft.said;
    this.#wantedSince = Date.now();
    this.#page.onSaid(draft.said);
    if (kept !== null && draft.revision !== kept.revision)
      this.#set({ saving: { state: 'elsewhere', kept } });
    else {
      this.#set({ saving: { state: 'saving' } });
      this.#schedule(0);
    }
  }

  /** An edit of the page's. */
  change(said: Said): void {
    if (this.#savedSaid === null) return;
    const { trip, saving } = this.#state;
    if (this.#wanted === null) {
      if (sameSaid(said, this.#savedSaid)) return;
      this.#wantedSince = Date.now();
    }
    this.#wanted = said;
    const inBrowser = this.#keepDraft(said);
    // Which of the two versions holds is to be chosen first.
    if (saving.state === 'elsewhere') return;
    this.#tries = 0;
    this.#set({ saving: saving.state === 'waiting' ? { state: 'waiting', inBrowser } : { state: 'saving' } });
    const longestMs = this.#wantedSince + LONGEST_MS - Date.now();
    this.#schedule(trip === null ? 0 : Math.max(0, Math.min(QUIET_MS, longestMs)));
  }

  /** Tries at once to save what waits. */
  readonly again = (): void => {
    if (this.#wanted !== null && this.#state.saving.state === 'waiting') this.#schedule(0);
  };

  /** Undo goes to the state before the change that the trip stands at, redo to the newest that was made after it; null where there is none. */
  undoTo(): TripChangeEntry | null {
    const { trip, changes } = this.#state;
    const here = changes.find(({ seq }) => seq === trip?.standsAt);
    return changes.find(({ seq }) => seq === here?.after) ?? null;
  }
  redoTo(): TripChangeEntry | null {
    const { trip, changes } = this.#state;
    return changes.find(({ after }) => after !== null && after === trip?.standsAt) ?? null;
  }

  /** Takes back the last change, also one that is not saved yet. */
  readonly undo = (): Promise<void> => this.#standAt(() => this.undoTo());
  /** Makes the change again that was taken back last. */
  readonly redo = (): Promise<void> => this.#standAt(() => this.redoTo());

  /** Goes to the state after a change. What was not saved yet is saved first, so that it can be come back to. */
  stand(seq: number): Promise<void> {
    return this.#standAt(() => ({ seq }));
  }

  async #standAt(where: () => Pick<TripChangeEntry, 'seq'> | null): Promise<void> {
    const opening = this.#opening;
    const isSaved = await this.#allSaved();
    const { trip } = this.#state;
    if (trip === null || !isSaved || opening !== this.#opening) return;
    if (!this.#state.changes.some(({ seq }) => seq === trip.standsAt)) await this.#fetchChanges(trip.id);
    const to = where();
    if (to === null || opening !== this.#opening) return;
    this.#set({ saving: { state: 'saving' } });
    const kept = await this.#alone(() =>
      this.#write(opening, ({ id, revision }) => standTrip(id, { revision, seq: to.seq })),
    );
    if (kept !== null) this.#page.onSaid(this.#wanted ?? { rig: kept.rig, trip: kept.trip });
  }

  /** Adds a kept extract to the trip, of the demo to one's own; false where that was not done, which is told as a save is. */
  addExtract(extract: string): Promise<boolean> {
    return this.#changeMaps(({ id, revision }) => addExtract(id, { revision, extract }));
  }

  /** Takes an extract off the trip, as `addExtract` adds one. */
  takeOffExtract(name: string): Promise<boolean> {
    return this.#changeMaps(({ id, revision }) => takeOffExtract(id, { revision, name }));
  }

  async #changeMaps(send: (trip: KeptTrip) => Promise<Written>): Promise<boolean> {
    const opening = this.#opening;
    if (!(await this.#allSaved()) || opening !== this.#opening) return false;
    this.#set({ saving: { state: 'saving' } });
    const kept = await this.#alone(() => this.#write(opening, send));
    // The same rig and trip, on other map data.
    if (kept !== null) this.#page.onSaid({ ...(this.#wanted ?? { rig: kept.rig, trip: kept.trip }) });
    return kept !== null;
  }

  /** Waits for the write that is under way and saves what is not yet; whether all is saved then. */
  async #allSaved(): Promise<boolean> {
    for (let saves = 0; ; saves += 1) {
      await this.#underWay;
      if (this.#wanted === null) return true;
      // A save that came to nothing is tried again by itself later.
      if (saves > 0 && this.#state.saving.state !== 'saving') return false;
      await this.#save();
    }
  }

  /** A write, with no other meanwhile. */
  async #alone<T>(write: () => Promise<T>): Promise<T> {
    const writing = write();
    this.#underWay = writing;
    try {
      return await writing;
    } finally {
      this.#underWay = null;
      // What was typed meanwhile, of another trip too.
      if (this.#wanted !== null && this.#state.saving.state === 'saving') this.#schedule(0);
    }
  }

  /** Of two versions the page's: it is saved on top of the other, which stays among the changes. */
  async keepMine(): Promise<void> {
    const { saving } = this.#state;
    if (saving.state !== 'elsewhere') return;
    this.#takeRevision(saving.kept);
    await this.#fetchChanges(saving.kept.id);
    await this.#save();
  }

  /** Of two versions the one that is kept. The page's own is put among the changes first. */
  async takeKept(): Promise<void> {
    const { saving } = this.#state;
    if (saving.state !== 'elsewhere') return;
    const { standsAt } = saving.kept;
    await this.keepMine();
    await this.stand(standsAt);
  }

  /** Takes what was changed elsewhere meanwhile, where nothing here waits to be saved. */
  async refresh(): Promise<void> {
    const { trip, saving } = this.#state;
    const opening = this.#opening;
    if (trip === null || saving.state !== 'saved') return;
    const kept = await getTrip(trip.id).catch(() => null);
    if (kept === null || opening !== this.#opening || this.isUnsaved) return;
    if (kept.revision <= (this.#state.trip?.revision ?? 0)) return;
    const isOther = !sameSaid({ rig: kept.rig, trip: kept.trip }, this.#savedSaid ?? kept);
    this.#takeRevision(kept);
    void this.#fetchChanges(kept.id);
    if (isOther) this.#page.onSaid({ rig: kept.rig, trip: kept.trip });
  }

  get #asSaved(): Saving {
    return { state: 'saved', isLasting: this.#isLasting };
  }

  #takeRevision(kept: KeptTripReply): void {
    this.#savedSaid = { rig: kept.rig, trip: kept.trip };
    this.#set({ trip: kept });
  }

  #keepDraft(said: Said): boolean {
    const { trip } = this.#state;
    return keepDraft(trip?.id ?? DEMO_ID, { revision: trip?.revision ?? 0, said });
  }

  #schedule(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#save(), ms);
  }

  async #save(): Promise<void> {
    clearTimeout(this.#timer);
    const wanted = this.#wanted;
    const before = this.#savedSaid;
    if (wanted === null || before === null || this.#underWay !== null) return;
    const opening = this.#opening;
    const change = this.#page.wordsOf(before, wanted);
    await this.#alone(() =>
      this.#write(opening, ({ id, revision }) => putTrip(id, { revision, ...wanted, change })),
    );
  }

  /** The demo stays as it is: what is changed of it is a trip of the reader's own. */
  async #ownTrip(): Promise<KeptTripReply> {
    const opening = this.#opening;
    const copy = await duplicateTrip(DEMO_ID);
    if (opening === this.#opening) {
      this.#set({ trip: copy });
      if (this.#wanted !== null) this.#keepDraft(this.#wanted);
      dropDraft(DEMO_ID);
      this.#page.onOwn(copy.id);
    }
    return copy;
  }

  /** Writes to the trip and takes in what became of it; what is kept then, null where it was not written. */
  async #write(opening: number, send: (trip: KeptTrip) => Promise<Written>): Promise<KeptTripReply | null> {
    let answer: Written;
    try {
      answer = await send(this.#state.trip ?? (await this.#ownTrip()));
      // Where only its name or notes were changed elsewhere there are no two versions: once more, from there.
      if (answer.outcome === 'elsewhere' && opening === this.#opening && this.#isAsSaved(answer.kept)) {
        this.#takeRevision(answer.kept);
        answer = await send(answer.kept);
      }
    } catch (error) {
      if (opening === this.#opening) this.#failed(detailsOf(error));
      return null;
    }
    if (opening !== this.#opening) return null;
    const { kept } = answer;
    if (answer.outcome === 'elsewhere') {
      this.#set({ saving: { state: 'elsewhere', kept } });
      return null;
    }
    this.#isLasting = answer.isLasting;
    this.#saved(kept);
    return kept;
  }

  #isAsSaved({ rig, trip }: KeptTripReply): boolean {
    return this.#savedSaid !== null && sameSaid({ rig, trip }, this.#savedSaid);
  }

  /** Takes in what is kept after a write. */
  #saved(kept: KeptTripReply): void {
    this.#tries = 0;
    this.#noteChange(kept);
    this.#takeRevision(kept);
    const isAll = this.#wanted === null || sameSaid(this.#wanted, { rig: kept.rig, trip: kept.trip });
    if (isAll) {
      this.#wanted = null;
      dropDraft(kept.id);
    } else if (this.#wanted !== null) this.#keepDraft(this.#wanted);
    this.#set({ saving: isAll ? this.#asSaved : { state: 'saving' } });
    if (!this.#state.changes.some(({ seq }) => seq === kept.standsAt)) void this.#fetchChanges(kept.id);
  }

  #failed(problem: ProblemDetails): void {
    const isAway = problem.status === 0 || problem.status >= 500 || problem.status === 429;
    // Undo, or an extract, that did not reach the server: nothing waits, it is to be asked for again.
    if (!isAway || this.#wanted === null) {
      this.#set({ saving: { state: 'refused', problem } });
      return;
    }
    const inBrowser = readDraft(this.#state.trip?.id ?? DEMO_ID) !== null;
    this.#set({ saving: { state: 'waiting', inBrowser } });
    const waitMs = RETRY_MS[Math.min(this.#tries, RETRY_MS.length - 1)] ?? 0;
    this.#tries += 1;
    this.#schedule(waitMs);
  }

  /** The change that was just saved, where the list does not have it yet. */
  #noteChange({ standsAt, rig, trip, changedAt }: KeptTripReply): void {
    const { changes, trip: before } = this.#state;
    const isNew = changes.length > 0 && !changes.some(({ seq }) => seq === standsAt);
    if (!isNew || before === null || this.#savedSaid === null) return;
    const change = this.#page.wordsOf(this.#savedSaid, { rig, trip });
    const entry = { seq: standsAt, after: before.standsAt, at: changedAt, change, rig, trip };
    this.#set({ changes: [entry, ...changes] });
  }

  async #fetchChanges(id: string): Promise<void> {
    const opening = this.#opening;
    const list = await getChanges(id).catch(() => null);
    if (list !== null && opening === this.#opening) this.#set({ changes: list.changes });
  }

  #set(change: Partial<KeeperState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}
