import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Bbox } from '../../../server/contract/common.ts';
import type { BoxedRow, StoredExtract } from '../../../server/store/port/port.ts';
import { DRIVERS, describeDrivers } from '../drivers.ts';

const extract = (id: string): StoredExtract => ({
  id,
  name: `name of ${id}`,
  fileName: 'a.osm.pbf',
  hash: 'ff',
  bytes: 12,
  addedAt: '2026-05-01T08:00:00.000Z',
  format: 'pbf',
  asOf: null,
  attribution: null,
  licence: null,
  bbox: [-1, -2, 3, 4],
  outline: [],
  shows: { fuel: true, water: false, general: false },
  counts: { nodes: 1, ways: 2, relations: 3, supplies: 4, ground: 5 },
});
const row = (name: string, ...box: Bbox): BoxedRow => ({ box, json: JSON.stringify(name) });
const names = (rows: readonly string[]) => rows.map((json) => JSON.parse(json));

describeDrivers('extracts kept in', DRIVERS, (open) => {
  it('are hidden until they are whole, and while they go', () => {
    const { extracts } = open();
    extracts.begin('a');
    extracts.addPoints('a', [row('p', 1, 1, 1, 1)]);
    expect([extracts.all(), extracts.hidden()]).toEqual([[], ['a']]);
    extracts.show(extract('a'));
    expect([extracts.all(), extracts.hidden()]).toEqual([[extract('a')], []]);
    extracts.hide('a');
    expect([extracts.all(), extracts.hidden()]).toEqual([[], ['a']]);
  });

  it('go by and by, and leave nothing of theirs and all of others', () => {
    const { extracts } = open();
    for (const id of ['a', 'b']) {
      extracts.begin(id);
      extracts.addPoints(id, [
        row(`${id}1`, 1, 1, 1, 1),
        row(`${id}2`, 1, 1, 1, 1),
        row(`${id}3`, 1, 1, 1, 1),
      ]);
      extracts.addGround(id, [row(`${id}g`, 1, 1, 1, 1)]);
      extracts.show(extract(id));
    }
    extracts.hide('a');
    let turns = 0;
    while (extracts.dropSome('a', 2)) turns += 1;
    expect(turns).toBeLessThanOrEqual(2);
    expect(extracts.hidden()).toEqual([]);
    const all: Bbox = [-180, -90, 180, 90];
    expect(names(extracts.pointsIn('b', [all]))).toEqual(['b1', 'b2', 'b3']);
    expect(names(extracts.groundIn('b', all, 9))).toEqual(['bg']);
    extracts.begin('a');
    expect(extracts.pointsIn('a', [all])).toEqual([]);
  });

  it('give the points whose box touches one of some boxes, each once, as a look at all of them does', () => {
    const { extracts } = open();
    extracts.begin('a');
    // Quarters are the same in 32 bits, which is what the key is kept in.
    const degree = fc.integer({ min: -40, max: 40 }).map((quarter) => quarter / 4);
    const box = fc
      .tuple(degree, degree, degree, degree)
      .map(([a, b, c, d]): Bbox => [Math.min(a, b), Math.min(c, d), Math.max(a, b), Math.max(c, d)]);
    const rows = fc.sample(box, { numRuns: 200, seed: 7 }).map((one, at) => row(String(at), ...one));
    extracts.addPoints('a', rows);
    fc.assert(
      fc.property(fc.array(box, { maxLength: 4 }), (boxes) => {
        const expected = rows.filter(({ box: [w, s, e, n] }) =>
          boxes.some(([west, south, east, north]) => w <= east && e >= west && s <= north && n >= south),
        );
        expect(names(extracts.pointsIn('a', boxes))).toEqual(names(expected.map(({ json }) => json)));
      }),
      { numRuns: 60 },
    );
  });

  it('give as much ground as is asked for', () => {
    const { extracts } = open();
    extracts.begin('a');
    extracts.addGround('a', [row('x', 0, 0, 1, 1), row('y', 0, 0, 2, 2), row('z', 5, 5, 6, 6)]);
    expect(names(extracts.groundIn('a', [0, 0, 1, 1], 9)).sort()).toEqual(['x', 'y']);
    expect(extracts.groundIn('a', [0, 0, 1, 1], 1)).toHaveLength(1);
  });
});
