import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type KeptResults, MOST_CHANGES } from '../../../server/contract/kept.ts';
import { type Saved, Store } from '../../../server/store/library/store.ts';
import { describeDrivers, storeOf, TRIP_DRIVERS } from '../drivers.ts';
import { newTrip, RIG } from '../new-trip.ts';

const savedTrip = (saved: Saved | null) => {
  if (saved?.outcome !== 'saved') throw new Error(`not saved: ${JSON.stringify(saved)}`);
  return saved.trip;
};

const RESULTS: KeptResults = {
  at: '2026-05-01T08:00:00.000Z',
  lengthKm: 1450,
  fuel: { verdict: 'short', shares: [1, 0.5], verdicts: ['enough', 'short'] },
  water: { verdict: 'unknown', shares: [1, 0], verdicts: ['unknown', 'unknown'] },
};

const change = (store: Store, id: string, corridorKm: number) => {
  const { revision } = store.trip(id) ?? { revision: 0 };
  const said = { rig: RIG, trip: { corridorKm }, change: `Corridor ${corridorKm} km` };
  return savedTrip(store.changeTrip(id, revision, said));
};

describeDrivers('trips kept in', TRIP_DRIVERS, (open) => {
  it('come back as they were put, with route and maps', () => {
    const store = storeOf(open());
    const added = store.addTrip(newTrip({ notes: 'Fill at the "Ollin" pump; zwölf €' }));
    expect(store.trip(added.id)).toEqual(added);
    expect(added).toMatchObject({ name: 'Across', revision: 1, standsAt: 0, isDemo: false, deletedAt: null });
    expect(added.route).toEqual({ fileName: 'across.gpx', hash: 'ab12', bytes: 3 });
    expect([...(store.driver.trips.route(added.id) ?? [])]).toEqual([1, 2, 3]);
    expect([...(store.driver.trips.maps(added.id) ?? [])]).toEqual([9, 8]);
    expect(store.changes(added.id)).toEqual([
      {
        seq: 0,
        after: null,
        at: added.createdAt,
        change: 'Read from across.gpx',
        rig: RIG,
        trip: { corridorKm: 5 },
      },
    ]);
  });

  it('are not there before', () => {
    const store = storeOf(open());
    expect(store.trip('x')).toBeNull();
    expect(store.driver.trips.route('x')).toBeNull();
    expect(store.driver.trips.maps('x')).toBeNull();
    expect(store.trips()).toEqual([]);
    expect(store.changeTrip('x', 1, { rig: RIG, trip: {}, change: 'c' })).toEqual({ outcome: 'not-kept' });
    expect(store.copyTrip('x')).toBeNull();
    expect(store.deleteTrip('x', true)).toBeNull();
  });

  it('are listed by when they were changed last', () => {
    const store = storeOf(open());
    const first = store.addTrip(newTrip({ name: 'first' }));
    store.addTrip(newTrip({ name: 'second' }));
    expect(store.trips().map(({ name }) => name)).toEqual(['second', 'first']);
    change(store, first.id, 6);
    expect(store.trips().map(({ name }) => name)).toEqual(['first', 'second']);
  });

  it('take a change that goes out from what is kept, and refuse one that does not, telling what is kept', () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip());
    const after = change(store, id, 6);
    expect(after).toMatchObject({ revision: 2, trip: { corridorKm: 6 }, standsAt: 1 });
    const stale = store.changeTrip(id, 1, { rig: RIG, trip: { corridorKm: 7 }, change: 'late' });
    expect(stale).toEqual({ outcome: 'changed-elsewhere', kept: after });
    expect(store.trip(id)).toEqual(after);
    expect(store.changes(id)).toHaveLength(2);
    expect(store.nameTrip(id, 3, { name: 'early' }).outcome).toBe('changed-elsewhere');
  });

  it('go back and forth along their changes, and branch where one is made after going back', () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip());
    change(store, id, 6);
    change(store, id, 7);
    const back = savedTrip(store.standTrip(id, 3, 1));
    expect(back).toMatchObject({ revision: 4, trip: { corridorKm: 6 }, standsAt: 1 });
    change(store, id, 8);
    expect(store.changes(id).map(({ seq, after }) => [seq, after])).toEqual([
      [3, 1],
      [2, 1],
      [1, 0],
      [0, null],
    ]);
    expect(store.standTrip(id, 5, 9)).toBeNull();
    expect(store.standTrip(id, 1, 0)?.outcome).toBe('changed-elsewhere');
    expect(store.standTrip('x', 1, 0)).toEqual({ outcome: 'not-kept' });
    expect(savedTrip(store.standTrip(id, 5, 2)).trip).toEqual({ corridorKm: 7 });
  });

  it(`keep the newest ${MOST_CHANGES} changes`, () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip());
    store.driver.transaction(() => {
      for (let turn = 0; turn < MOST_CHANGES + 3; turn += 1) change(store, id, 1 + (turn % 40));
    });
    const changes = store.changes(id);
    expect(changes).toHaveLength(MOST_CHANGES);
    expect([changes.at(0)?.seq, changes.at(-1)?.seq]).toEqual([MOST_CHANGES + 3, 4]);
  });

  it('are renamed and noted without a change of rig and trip', () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip());
    expect(savedTrip(store.nameTrip(id, 1, { name: 'North' }))).toMatchObject({ name: 'North', notes: '' });
    expect(savedTrip(store.nameTrip(id, 2, { notes: 'dry' }))).toMatchObject({ name: 'North', notes: 'dry' });
    expect(store.changes(id)).toHaveLength(1);
  });

  it('are deleted and come back whole', () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip());
    expect(store.deleteTrip(id, true)?.deletedAt).not.toBeNull();
    expect(store.trips()).toEqual([]);
    expect(store.trips(true).map((trip) => trip.id)).toEqual([id]);
    expect(store.deleteTrip(id, false)).toMatchObject({
      deletedAt: null,
      revision: 3,
      trip: { corridorKm: 5 },
    });
    expect(store.deleteTrip(id, false)?.revision).toBe(3);
    expect(store.trips().map((trip) => trip.id)).toEqual([id]);
  });

  it('are copied with all but their history, under a name of their own', () => {
    const store = storeOf(open());
    const { id } = store.addTrip(newTrip({ notes: 'n' }));
    change(store, id, 6);
    const copy = store.copyTrip(id);
    expect(copy).toMatchObject({ name: 'Across (2)', notes: 'n', revision: 1, trip: { corridorKm: 6 } });
    expect(store.copyTrip(id)?.name).toBe('Across (3)');
    expect(store.copyTrip(id, 'Other')?.name).toBe('Other');
    expect(store.changes(copy?.id ?? '').map(({ change: words }) => words)).toEqual(['Copy of "Across"']);
    expect([...(store.driver.trips.maps(copy?.id ?? '') ?? [])]).toEqual([9, 8]);
    change(store, copy?.id ?? '', 9);
    expect(store.trip(id)?.trip).toEqual({ corridorKm: 6 });
  });

  it('keep what an analysis of just this state came to, until rig, trip or maps are changed', () => {
    const store = storeOf(open());
    const { id, mapsRevision } = store.addTrip(newTrip());
    const analysed = { rig: RIG, trip: { corridorKm: 5 }, mapsRevision };
    store.noteResults(id, { ...analysed, trip: { corridorKm: 6 } }, RESULTS);
    store.noteResults(id, { ...analysed, mapsRevision: 7 }, RESULTS);
    expect(store.trip(id)?.results).toBeNull();
    store.noteResults(id, analysed, RESULTS);
    expect(store.trip(id)).toMatchObject({ results: RESULTS, revision: 1 });
    expect(savedTrip(store.nameTrip(id, 1, { name: 'b' })).results).toEqual(RESULTS);
    expect(change(store, id, 6).results).toBeNull();
    store.noteResults(id, { ...analysed, trip: { corridorKm: 6 } }, RESULTS);
    const maps = { bytes: Uint8Array.of(7), extracts: [{ id: 'e', name: 'more' }] };
    expect(savedTrip(store.mapTrip(id, 3, maps))).toMatchObject({
      results: null,
      mapsRevision: 2,
      extracts: maps.extracts,
    });
    expect([...(store.driver.trips.maps(id) ?? [])]).toEqual([7]);
  });

  it('go back to a first state, under a revision that no page knows', () => {
    const store = storeOf(open());
    const first = newTrip({ id: 'demo', maps: null });
    const { createdAt } = store.addTrip(first);
    change(store, 'demo', 9);
    const reset = store.resetTrip('demo', first);
    expect(reset).toMatchObject({
      isDemo: true,
      createdAt,
      revision: 3,
      standsAt: 0,
      trip: { corridorKm: 5 },
    });
    expect(store.changes('demo').map(({ seq }) => seq)).toEqual([0]);
    expect(store.driver.trips.maps('demo')).toBeNull();
  });

  it('are as before where a part of a write fails', () => {
    const driver = open();
    const store = storeOf(driver);
    const { id } = store.addTrip(newTrip());
    const before = store.trip(id);
    const failing = () =>
      driver.transaction(() => {
        change(store, id, 6);
        driver.trips.putMaps(id, null);
        store.putRig('r', RIG);
        throw new Error('in the middle');
      });
    expect(failing).toThrow('in the middle');
    expect(store.trip(id)).toEqual(before);
    expect(store.changes(id)).toHaveLength(1);
    expect(driver.trips.maps(id)).not.toBeNull();
    expect(store.rigs()).toEqual([]);
  });
});

describeDrivers('changes kept in', TRIP_DRIVERS, (open) => {
  it('stand in the order in which they were made, whichever way the clock jumps', () => {
    const driver = open();
    let ms = 0;
    const state = { keeps: 'memory', folder: null, why: null } as const;
    const store = new Store(driver, state, { now: () => new Date(ms).toISOString() });
    const clock = fc.array(fc.integer({ min: 0, max: Date.UTC(2100, 0, 1) }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(clock, (times) => {
        const { id } = store.addTrip(newTrip());
        times.forEach((time, number) => {
          ms = time;
          expect(change(store, id, 10 + number).revision).toBe(number + 2);
          store.purge();
        });
        expect(store.changes(id).map(({ seq, after, trip }) => [seq, after, trip.corridorKm])).toEqual(
          [...times.keys(), times.length]
            .reverse()
            .map((seq) => [seq, seq === 0 ? null : seq - 1, seq === 0 ? 5 : 9 + seq]),
        );
        const undone = savedTrip(store.standTrip(id, times.length + 1, times.length - 1));
        expect(undone).toMatchObject({ revision: times.length + 2, trip: { corridorKm: 8 + times.length } });
        expect(change(store, id, 99).standsAt).toBe(times.length + 1);
        expect(store.changes(id)[0]).toMatchObject({ after: times.length - 1, trip: { corridorKm: 99 } });
      }),
      { numRuns: 15 },
    );
  });
});

describeDrivers('rigs kept in', TRIP_DRIVERS, (open) => {
  it('are put by name, listed by it and taken away', () => {
    const store = storeOf(open());
    store.putRig('wagon', RIG);
    store.putRig('bike', RIG);
    const heavier = { ...RIG, name: 'heavier' };
    expect(store.putRig('wagon', heavier).rig).toEqual(heavier);
    expect(store.rigs().map(({ name, rig }) => [name, rig.name])).toEqual([
      ['bike', undefined],
      ['wagon', 'heavier'],
    ]);
    expect(store.removeRig('bike')).toBe(true);
    expect(store.removeRig('bike')).toBe(false);
    expect(store.rigs()).toHaveLength(1);
  });
});
