import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notesFile } from '../../../server/app/notes/notes-file.ts';
import type { FieldNotes, NotesFormat } from '../../../server/contract/answers/field-notes.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { notesOf } from '../../../server/core/notes/files/note-rows.ts';
import { mergeNotes } from '../../../server/core/notes/merge-notes.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { readNotes } from '../../../server/io/notes/read-notes.ts';
import { FULL_TRIP } from '../../helpers/full-plan.ts';
import { anyNotes } from './any-notes.ts';

const FORMATS: readonly NotesFormat[] = ['gpx', 'geojson', 'csv'];
const tripOf = ({ stops, ...lists }: FieldNotes): TripFile =>
  stops === undefined ? lists : { ...lists, plan: { stops } };
const read = (text: string) => readNotes(Buffer.from(text), 'notes.file', '2026-05-01');
const readBack = (text: string) => {
  const outcome = read(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
};

describe.each(FORMATS)('notes as %s', (format) => {
  it('come back as they were, whatever they say', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(anyNotes, (notes) => {
        expect(readBack(notesFile(tripOf(notes), format))).toEqual({ notes, others: 0 });
      }),
      { numRuns: 200 },
    );
  });

  it('come back from a trip that tells everything', () => {
    expect(readBack(notesFile(FULL_TRIP, format)).notes).toEqual(notesOf(FULL_TRIP));
  });

  it('of a trip without any are a file without any', () => {
    const empty = notesFile({}, format);
    expect(format === 'csv' ? empty.trim() : readBack(empty).notes).toEqual(format === 'csv' ? 'noteOf' : {});
  });
});

describe('notes of other programs', () => {
  const gpx = (body: string) =>
    `<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">${body}</gpx>`;

  it('are own points where a waypoint says what is to be had, and are counted where it does not', () => {
    const waypoints = [
      '<wpt lat="-35" lon="88"><time>2026-04-03T10:00:00Z</time><name>Low farm</name><sym>Diesel</sym></wpt>',
      '<wpt lat="-35.1" lon="88.1"><name>Camp tap</name><sym>Drinking Water</sym></wpt>',
      '<wpt lat="-35.2" lon="88.2"><name>Lookout</name></wpt>',
      '<wpt lat="-35.3" lon="88.3"><name>Pump</name><sym>Gas Station</sym></wpt>',
    ];
    expect(readBack(gpx(waypoints.join('')))).toEqual({
      notes: {
        ownPoints: [
          { id: 'low-farm', name: 'Low farm', at: '-35, 88', fuels: ['diesel'], on: '2026-04-03' },
          { id: 'camp-tap', name: 'Camp tap', at: '-35.1, 88.1', grade: 'drinking', on: '2026-05-01' },
        ],
      },
      others: 2,
    });
  });

  it.each([
    ['an empty file', '  ', 'empty-file', null],
    ['XML that breaks off', '<gpx><wpt', 'xml-broken', 'line 1'],
    ['a document type', '<!DOCTYPE gpx [<!ENTITY a "b">]><gpx/>', 'xml-broken', 'line 1'],
    ['JSON that is cut', '{"type":', 'notes-invalid', null],
    ['another JSON', '{"a":1}', 'notes-invalid', null],
    ['a table of something else', 'a,b\n1,2\n', 'notes-invalid', 'line 2, column noteOf'],
    [
      'a cell that is no number',
      'noteOf,fromKm,toKm\noneWay,x,5\n',
      'notes-invalid',
      'line 2, column fromKm',
    ],
    ['a value out of range', 'noteOf,fromKm,toKm\noneWay,-1,5\n', 'notes-invalid', '/oneWay/0/fromKm'],
    ['a note that contradicts itself', 'noteOf,fromKm,toKm\noneWay,6,5\n', 'notes-invalid', '/oneWay/0'],
    ['a field that there is not', 'noteOf,fromKm,toKm,x\noneWay,4,5,y\n', 'notes-invalid', '/oneWay/0/x'],
  ])('are refused where they are %s, with the place', (_what, text, code, place) => {
    const outcome = read(text);
    expect(outcome.ok ? null : outcome.problem).toMatchObject({ code, place, source: 'notes.file' });
  });

  it('bytes that are no text are refused', () => {
    expect(readNotes(Uint8Array.of(0xff, 0xfe, 0xfa), 'x', '2026-05-01')).toMatchObject({ ok: false });
  });
});

describe('notes that come into a trip', () => {
  it('stand beside those that it has, each once, and change nothing when they come again', () => {
    fc.assert(
      fc.property(anyNotes, anyNotes, (mine, theirs) => {
        const once = mergeNotes(tripOf(mine), theirs);
        const again = mergeNotes(once.trip, theirs);
        expect(again).toEqual({ trip: once.trip, added: 0, replaced: 0 });
        const before = notesOf(tripOf(mine));
        for (const list of ['confirmations', 'corrections', 'closed', 'laid'] as const)
          expect(once.trip[list] ?? []).toEqual(expect.arrayContaining([...(before[list] ?? [])]));
      }),
    );
  });

  it('take the place of an own point with the same id', () => {
    const point = { id: 'farm', at: '1, 2', grade: 'drinking' as const, on: '2026-05-01' };
    const merged = mergeNotes({ ownPoints: [point] }, { ownPoints: [{ ...point, at: '1, 3' }] });
    expect(merged).toEqual({ trip: { ownPoints: [{ ...point, at: '1, 3' }] }, added: 0, replaced: 1 });
  });
});

describe('a GeoJSON file of notes', () => {
  it('has what a map writes beside a place: its name, else what it is of, nothing where there is neither', () => {
    const trip: TripFile = {
      ownPoints: [{ id: 'farm', name: 'Low farm', at: '1, 2', grade: 'drinking', on: '2026-05-01' }],
      confirmations: [{ id: 'node/1', on: '2026-05-01', works: true }],
      closed: [{ fromKm: 4, toKm: 5, on: '2026-05-01' }],
    };
    const { features } = JSON.parse(notesFile(trip, 'geojson'));
    const titles = features.map(
      ({ properties }: { properties: object }) =>
        Object.entries(properties).find(([key]) => key === 'title')?.[1],
    );
    expect(titles.toSorted()).toEqual(['Low farm', 'node/1', undefined]);
  });
});

describe('a GPX file of notes', () => {
  it('is read by any program: waypoints at their places', async () => {
    const { mkdtemp, writeFile, rm } = await import('node:fs/promises');
    const folder = await mkdtemp('/tmp/notes-');
    await writeFile(`${folder}/notes.gpx`, notesFile(FULL_TRIP, 'gpx'));
    const { waypoints } = await readGpx(`${folder}/notes.gpx`, 'notes.gpx');
    await rm(folder, { recursive: true });
    expect(waypoints.map(({ lon, lat, name }) => [lon, lat, name])).toEqual([
      [88.1, -35.2, 'node/2'],
      [88.1, -35.2, 'node/2'],
      [expect.closeTo(88 + 10.4 / 60, 9), expect.closeTo(-35 - 12.1 / 60, 9), 'Low farm'],
      [88.2, -35.3, 'node/3'],
    ]);
  });
});
