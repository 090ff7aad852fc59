import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import {
  countsOf,
  holds,
  keySupplies,
  placeNear,
  type SupplyRow,
  stopsOf,
} from '../../../web/panels/stops.ts';
import { sampleReply } from '../sample-reply.ts';

const [like] = sampleReply().analysis.passings;
const single = (change: Partial<Passing>, index = 0): SupplyRow => {
  const passing = { ...like!, ...change };
  return { key: `${index} ${passing.id}`, passing, members: [] };
};
const stopOf = (...changes: Partial<Passing>[]): SupplyRow =>
  stopsOf(changes.map((change, index) => single({ id: `node/${index}`, stop: 1, ...change }, index)))[0]!;

const station = { commodity: 'fuel', kind: 'fuel station' } as const;
const tap = { commodity: 'water', kind: 'drinking water' } as const;

const anyRows = fc
  .array(
    fc.record({
      stop: fc.nat(8),
      counts: fc.boolean(),
      commodity: fc.constantFrom('fuel' as const, 'water' as const),
      id: fc.constantFrom('node/1', 'node/2', 'node/3'),
    }),
  )
  .map((all) => all.map((change, index) => single(change, index)));

describe('supplies by stops', () => {
  it('lose none, keep their order, and put together only what is of one stop', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        const stops = stopsOf(rows);
        const singles = stops.flatMap((row) => (row.members.length === 0 ? [row] : row.members));
        expect(new Set(singles)).toEqual(new Set(rows));
        expect(singles).toHaveLength(rows.length);
        for (const { members } of stops) {
          expect(members.length).not.toBe(1);
          expect(new Set(members.map(({ passing }) => passing.stop)).size).toBeLessThan(2);
          const places = members.map((member) => rows.indexOf(member));
          expect(places).toEqual(places.toSorted((a, b) => a - b));
        }
        for (const row of rows) expect(stops.filter((stop) => holds(stop, row.key))).toHaveLength(1);
      }),
    );
  });

  it('name the only one of a commodity that is relied on, whatever else is there', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        for (const stop of stopsOf(rows).filter(({ members }) => members.length > 0)) {
          const named = keySupplies(stop, () => false);
          for (const commodity of ['fuel', 'water'] as const) {
            const relied = stop.members.filter(
              ({ passing }) => passing.counts && passing.commodity === commodity,
            );
            const ids = new Set(relied.map(({ passing }) => passing.id));
            const isNamed = named.some(({ passing }) => passing.commodity === commodity);
            expect(isNamed).toBe(ids.size === 1);
          }
        }
      }),
    );
  });

  it('name what the answer stands on, of many as well', () => {
    const stop = stopOf({ ...station, name: 'A' }, { ...station, name: 'B' }, { ...station, name: 'C' });
    expect(keySupplies(stop, () => false)).toEqual([]);
    expect(
      keySupplies(stop, ({ passing }) => passing.name === 'B').map(({ passing }) => passing.name),
    ).toEqual(['B']);
  });
});

describe('what a stop is called', () => {
  it.each([
    [[station, station, tap], '2 stations, 1 tap'],
    [[station, tap, tap], '1 station, 2 taps'],
    [
      [
        { ...station, kind: 'fuel for boats' },
        { ...tap, kind: 'spring' },
      ],
      '1 other fuel, 1 other water',
    ],
    [
      [
        { ...tap, id: 'node/7' },
        { ...tap, id: 'node/7' },
      ],
      '1 tap',
    ],
  ])('%j is %s', (changes, words) => {
    expect(countsOf(stopOf(...changes))).toBe(words);
  });

  it('comes from a place that is near, over the 180th meridian as well', () => {
    const stop = stopOf({ lon: 179.99, lat: -16, ...station }, { lon: 179.99, lat: -16, ...tap });
    const places = [
      { name: 'Far', lon: 178, lat: -16 },
      { name: 'Near', lon: -179.99, lat: -16.01 },
    ];
    expect(placeNear(stop, places)).toBe('Near');
    expect(placeNear(stop, places.slice(0, 1))).toBeNull();
    expect(placeNear(stop, [])).toBeNull();
  });
});
