import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeptTripReply, TripChangeEntry } from '../../../server/contract/kept.ts';
import { readDraft } from '../../../web/kept/draft.ts';
import { Keeper, LONGEST_MS, QUIET_MS, RETRY_MS } from '../../../web/kept/keeper.ts';
import type { Said } from '../../../web/state/said.ts';
import { sampleReply } from '../sample-reply.ts';

const { rig } = sampleReply().said;
const saying = (corridorKm: number): Said => ({ rig, trip: { corridorKm } });

/** A server that keeps trips as the real one does, in little. */
class Server {
  isDown = false;
  readonly trips = new Map<string, { kept: KeptTripReply; changes: TripChangeEntry[] }>();
  puts = 0;

  add(id: string, said: Said): KeptTripReply {
    const entry = { seq: 0, after: null, at: '2026-01-01T00:00:00Z', change: 'Begun', ...said };
    const kept = { id, name: id, revision: 1, standsAt: 0, deletedAt: null, changedAt: entry.at, ...said };
    this.trips.set(id, { kept: kept as unknown as KeptTripReply, changes: [entry] });
    return this.kept(id);
  }

  kept(id: string): KeptTripReply {
    const found = this.trips.get(id);
    if (found === undefined) throw new Error(`no trip ${id}`);
    return found.kept;
  }

  write(id: string, change: Partial<KeptTripReply>): KeptTripReply {
    const entry = this.trips.get(id)!;
    entry.kept = { ...entry.kept, ...change, revision: entry.kept.revision + 1 };
    return entry.kept;
  }

  change(id: string, said: Said, change: string): KeptTripReply {
    const { kept, changes } = this.trips.get(id)!;
    const seq = changes.length;
    changes.unshift({ seq, after: kept.standsAt, at: '2026-01-01T00:00:00Z', change, ...said });
    return this.write(id, { ...said, standsAt: seq });
  }

  readonly fetch = async (path: string, init: RequestInit = {}): Promise<Response> => {
    if (this.isDown) throw new TypeError('no route');
    const [, id = '', what = ''] = /^\/api\/trips\/([^/]+)(?:\/(\w+))?$/.exec(path) ?? [];
    const body = typeof init.body === 'string' ? JSON.parse(init.body) : {};
    if (what === 'duplicate') return reply(201, this.add('own', { rig, trip: this.kept(id).trip }));
    const entry = this.trips.get(id);
    if (entry === undefined) return reply(404, { code: 'not-found', title: 'Not kept' });
    if (what === 'changes') return reply(200, { standsAt: entry.kept.standsAt, changes: [...entry.changes] });
    if (init.method === undefined) return reply(200, entry.kept);
    if (body.revision !== entry.kept.revision)
      return reply(409, { code: 'changed-elsewhere', title: 'Changed elsewhere', kept: entry.kept });
    if (what === 'stand') {
      const { rig, trip } = entry.changes.find(({ seq }) => seq === body.seq)!;
      return reply(200, this.write(id, { rig, trip, standsAt: body.seq }));
    }
    if (what === 'extracts') return reply(200, this.write(id, {}));
    this.puts += 1;
    return reply(200, this.change(id, { rig: body.rig, trip: body.trip }, body.change));
  };
}

/** Whether the server's disk takes no more. */
let isDiskLost = false;
const reply = (status: number, body: unknown) =>
  new Response(JSON.stringify(body), {
    status,
    headers: { 'drystage-keeps': isDiskLost ? 'memory' : 'folder' },
  });

let server: Server;
let keeper: Keeper;
let shown: Said[];
let owned: string[];
let storage: Map<string, string>;

const passes = (ms: number) => vi.advanceTimersByTimeAsync(ms);
const stateOf = () => keeper.read().saving.state;
/** Another page, or the same after a reload: nothing is left but the browser's storage. */
function newPage(): Keeper {
  const page = new Keeper();
  page.page = {
    onSaid: (said) => shown.push(said),
    wordsOf: (_, { trip }) => `Corridor ${trip.corridorKm}`,
    onOwn: (id) => owned.push(id),
  };
  return page;
}

beforeEach(async () => {
  vi.useFakeTimers();
  server = new Server();
  shown = [];
  owned = [];
  storage = new Map();
  vi.stubGlobal('fetch', server.fetch);
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => storage.get(key) ?? null,
    setItem: (key: string, value: string) => storage.set(key, value),
    removeItem: (key: string) => storage.delete(key),
  });
  keeper = newPage();
  keeper.begin(server.add('a', saying(5)), saying(5));
  await passes(0);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a change of a trip', () => {
  it('is saved within a second, with its words, and counts as unsaved until it is acknowledged', async () => {
    keeper.change(saying(6));
    expect(stateOf()).toBe('saving');
    expect(keeper.isUnsaved).toBe(true);
    expect(readDraft('a')?.said).toEqual(saying(6));
    await passes(1000);
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    expect(stateOf()).toBe('saved');
    expect(keeper.isUnsaved).toBe(false);
    expect(readDraft('a')).toBeNull();
    expect(keeper.read().changes[0]).toMatchObject({ change: 'Corridor 6', seq: 1, after: 0 });
  });

  it('waits no longer than a second also while typing goes on, and is one with what is typed at once', async () => {
    for (let km = 6; km < 26; km += 1) {
      keeper.change(saying(km));
      await passes(100);
    }
    expect(server.puts).toBeGreaterThanOrEqual(2);
    expect(server.puts).toBeLessThanOrEqual(2000 / Math.min(QUIET_MS, LONGEST_MS));
    await passes(1000);
    expect(server.kept('a').trip).toEqual({ corridorKm: 25 });
  });

  it('is none where all is as it was', async () => {
    keeper.change(saying(5));
    await passes(1000);
    expect(server.puts).toBe(0);
    expect(stateOf()).toBe('saved');
  });
});

describe('a server that is down', () => {
  it('loses nothing: what was changed is saved once it answers, without the page being touched', async () => {
    server.isDown = true;
    keeper.change(saying(7));
    await passes(1000);
    expect(keeper.read().saving).toEqual({ state: 'waiting', inBrowser: true });
    await passes(RETRY_MS.reduce((sum, ms) => sum + ms, 0));
    server.isDown = false;
    await passes(RETRY_MS.at(-1)!);
    expect(server.kept('a').trip).toEqual({ corridorKm: 7 });
    expect(stateOf()).toBe('saved');
  });

  it('loses nothing over a reload either', async () => {
    server.isDown = true;
    keeper.change(saying(7));
    await passes(1000);
    server.isDown = false;
    const kept = server.kept('a');
    const after = newPage();
    keeper = after;
    after.begin(kept, saying(5));
    expect(shown).toEqual([saying(7)]);
    await passes(1000);
    expect(server.kept('a').trip).toEqual({ corridorKm: 7 });
  });

  it('says so where the browser keeps nothing', async () => {
    vi.stubGlobal('localStorage', undefined);
    server.isDown = true;
    keeper.change(saying(7));
    await passes(1000);
    expect(keeper.read().saving).toEqual({ state: 'waiting', inBrowser: false });
  });
});

describe('two windows on one trip', () => {
  it('offer both versions, and the one not taken stays among the changes', async () => {
    server.change('a', saying(9), 'Corridor 9');
    keeper.change(saying(6));
    await passes(1000);
    expect(keeper.read().saving).toMatchObject({ state: 'elsewhere', kept: { trip: { corridorKm: 9 } } });
    expect(server.kept('a').trip).toEqual({ corridorKm: 9 });
    await keeper.keepMine();
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    expect(keeper.undoTo()).toMatchObject({ trip: { corridorKm: 9 } });
  });

  it('let one take the other version without losing its own', async () => {
    server.change('a', saying(9), 'Corridor 9');
    keeper.change(saying(6));
    await passes(1000);
    await keeper.takeKept();
    expect(server.kept('a').trip).toEqual({ corridorKm: 9 });
    expect(shown.at(-1)).toEqual(saying(9));
    expect(keeper.redoTo()).toMatchObject({ trip: { corridorKm: 6 } });
  });

  it('are offered after a reload too, where what was not saved goes out from an older state', async () => {
    server.isDown = true;
    keeper.change(saying(6));
    await passes(1000);
    server.isDown = false;
    const kept = server.change('a', saying(9), 'Corridor 9');
    keeper = newPage();
    keeper.begin(kept, saying(9));
    expect(stateOf()).toBe('elsewhere');
    await passes(60_000);
    expect(server.kept('a').trip).toEqual({ corridorKm: 9 });
  });

  it('are of one mind where only the name was changed', async () => {
    server.write('a', { name: 'Across in May' });
    keeper.change(saying(6));
    await passes(1000);
    expect(stateOf()).toBe('saved');
    expect(keeper.read().trip?.name).toBe('Across in May');
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
  });

  it('show what was changed in the other once one comes back to them', async () => {
    server.change('a', saying(9), 'Corridor 9');
    await keeper.refresh();
    expect(shown).toEqual([saying(9)]);
    keeper.change(saying(10));
    await passes(1000);
    expect(stateOf()).toBe('saved');
  });
});

describe('undo and redo', () => {
  it('go back and forth over what was changed, and on from there', async () => {
    for (const km of [6, 7]) {
      keeper.change(saying(km));
      await passes(1000);
    }
    expect(keeper.redoTo()).toBeNull();
    await keeper.stand(keeper.undoTo()!.seq);
    expect(shown.at(-1)).toEqual(saying(6));
    await keeper.stand(keeper.undoTo()!.seq);
    expect(shown.at(-1)).toEqual(saying(5));
    expect(keeper.undoTo()).toBeNull();
    await keeper.stand(keeper.redoTo()!.seq);
    await keeper.stand(keeper.redoTo()!.seq);
    expect(shown.at(-1)).toEqual(saying(7));
    expect(server.kept('a').trip).toEqual({ corridorKm: 7 });
  });

  it('save first what was typed just before', async () => {
    keeper.change(saying(6));
    await keeper.stand(0);
    expect(server.kept('a').trip).toEqual({ corridorKm: 5 });
    expect(keeper.redoTo()).toMatchObject({ trip: { corridorKm: 6 } });
  });
});

it('a save that does not last is told, until one does again', async () => {
  const saving = async (corridorKm: number) => {
    keeper.change(saying(corridorKm));
    await passes(1000);
    return keeper.read().saving;
  };
  expect(await saving(6)).toEqual({ state: 'saved', isLasting: true });
  isDiskLost = true;
  expect(await saving(7)).toEqual({ state: 'saved', isLasting: false });
  isDiskLost = false;
  expect(await saving(8)).toEqual({ state: 'saved', isLasting: true });
});

describe('undo that is pressed while a save is under way', () => {
  /** Holds writes back until it is let go. */
  function hold() {
    let go = () => {};
    const gate = new Promise<void>((resolve) => {
      go = resolve;
    });
    vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
      if (init?.method === 'PUT') await gate;
      return server.fetch(path, init);
    });
    return go;
  }

  it('is carried out after it, and takes back what was being saved', async () => {
    keeper.change(saying(6));
    await passes(1000);
    const go = hold();
    keeper.change(saying(7));
    await passes(400);
    expect([stateOf(), server.puts]).toEqual(['saving', 1]);
    const undone = keeper.undo();
    await passes(2000);
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    go();
    await undone;
    expect(server.puts).toBe(2);
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    expect(shown.at(-1)).toEqual(saying(6));
    await keeper.redo();
    expect(server.kept('a').trip).toEqual({ corridorKm: 7 });
  });

  it('takes back what was typed during that save as well, by itself', async () => {
    const go = hold();
    keeper.change(saying(6));
    await passes(400);
    keeper.change(saying(7));
    const undone = keeper.undo();
    go();
    await undone;
    expect(server.puts).toBe(2);
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    await keeper.undo();
    expect(server.kept('a').trip).toEqual({ corridorKm: 5 });
    await keeper.undo();
    expect(server.kept('a').trip).toEqual({ corridorKm: 5 });
  });

  it('of which nothing came is not carried out', async () => {
    server.isDown = true;
    keeper.change(saying(6));
    await keeper.undo();
    expect(stateOf()).toBe('waiting');
    expect(keeper.isUnsaved).toBe(true);
    expect(server.kept('a').trip).toEqual({ corridorKm: 5 });
  });
});

describe('an extract that is added', () => {
  it('goes out from what was typed just before, and what is typed afterwards from it', async () => {
    keeper.change(saying(6));
    expect(await keeper.addExtract('namibia')).toBe(true);
    expect(server.kept('a').trip).toEqual({ corridorKm: 6 });
    // The same rig and trip are reckoned again, on more map data.
    expect(shown).toEqual([saying(6)]);
    keeper.change(saying(7));
    await passes(1000);
    expect(stateOf()).toBe('saved');
    expect(server.kept('a').trip).toEqual({ corridorKm: 7 });
  });

  it('is not added while the server is down, which is told', async () => {
    server.isDown = true;
    expect(await keeper.addExtract('namibia')).toBe(false);
    expect(keeper.read().saving).toMatchObject({ state: 'refused', problem: { code: 'no-answer' } });
    server.isDown = false;
    expect(await keeper.addExtract('namibia')).toBe(true);
    expect(stateOf()).toBe('saved');
  });
});

describe('the demo', () => {
  it('stays as it is: its first change makes a trip of one’s own', async () => {
    server.add('demo', saying(5));
    keeper.begin(null, saying(5));
    expect(stateOf()).toBe('own');
    keeper.change(saying(6));
    await passes(1000);
    expect(server.kept('demo').trip).toEqual({ corridorKm: 5 });
    expect(server.kept('own').trip).toEqual({ corridorKm: 6 });
    expect(keeper.read().trip?.id).toBe('own');
    expect(owned).toEqual(['own']);
    expect([...storage.keys()]).toEqual([]);
  });

  it('loses nothing that was changed while the server was down', async () => {
    server.add('demo', saying(5));
    keeper.begin(null, saying(5));
    server.isDown = true;
    keeper.change(saying(6));
    await passes(1000);
    server.isDown = false;
    keeper = newPage();
    keeper.begin(null, saying(5));
    await passes(1000);
    expect(server.kept('own').trip).toEqual({ corridorKm: 6 });
  });
});
