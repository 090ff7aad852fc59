import osmtogeojson from 'osmtogeojson';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import { GROUND_TRAPS, type GroundTrap, groundOf, suppliesOf } from './ground.ts';
import {
  FAR_SUPPLIES,
  FRESH,
  isCalm,
  type MapObject,
  osmXml,
  overpassJson,
  STRAIGHT_BOX,
  StraightRoute,
  straightMap,
} from './straight-route.ts';

const VERSION = { version: 1, timestamp: FRESH };
const ROWS = GROUND_TRAPS.map((trap, row) => ({ trap, row, km: 300 + row * 10 }));
type Row = (typeof ROWS)[number];

const inOrder = { node: 0, way: 1, relation: 2 };
/** A map of some rows, with their ground or without. */
const mapOf = (rows: readonly Row[], withGround = true): MapObject[] =>
  straightMap({
    fuel: null,
    water: null,
    more: [
      ...FAR_SUPPLIES,
      ...rows.flatMap(({ trap, row, km }) => [
        ...suppliesOf(trap, row, km, VERSION),
        ...(withGround ? groundOf(trap, row, km, VERSION) : []),
      ]),
    ],
  }).sort((a, b) => inOrder[a.type] - inOrder[b.type] || a.id - b.id);

/** The same map in each format that tells as much. */
const FORMATS: Record<string, (objects: readonly MapObject[]) => Record<string, string | Uint8Array>> = {
  xml: (objects) => ({ 'map.osm': osmXml({ objects }) }),
  'xml, ways before nodes': (objects) => ({ 'back.osm': osmXml({ objects: [...objects].reverse() }) }),
  overpass: (objects) => ({ 'map.json': overpassJson({ objects }) }),
  pbf: (objects) => ({
    'map.osm.pbf': encodePbfElements(STRAIGHT_BOX, objects as PbfElement[], { asOf: FRESH }),
  }),
  geojson: (objects) => ({
    'map.geojson': JSON.stringify({
      ...osmtogeojson({ elements: structuredClone(objects) as object[] }, { flatProperties: true }),
      bbox: STRAIGHT_BOX,
      timestamp: FRESH,
    }),
  }),
};

/** What a format has lost before it is read: osmtogeojson makes nothing of a way that only its relation speaks of. */
const LOST: Readonly<Record<string, readonly string[]>> = {
  geojson: ['across a border whose way says nothing itself'],
};

let straight: StraightRoute;
beforeAll(async () => {
  straight = await StraightRoute.open();
});
afterAll(() => straight.close());

const COMMODITIES = ['fuel', 'water'] as const;

/** What was made of a row's supply of a commodity, beside what was to be made of it. */
function foundOf(analysis: Analysis, { trap, row }: Row, commodity: 'fuel' | 'water') {
  const id = `node/${10_000 + 2 * row + (commodity === 'fuel' ? 0 : 1)}`;
  const passing = analysis.passings.find((one) => one.id === id);
  if (passing === undefined) return 'no supply at all';
  const { evidence, counts, reasons } = passing;
  const reason = reasons.find(({ code }) => code === 'no-way-across' || code === 'on-closed-ground');
  const hasWords = trap.words === undefined || reason?.text.includes(trap.words) === true;
  return { evidence, counts, reason: reason?.code ?? null, words: hasWords ? 'as expected' : reason?.text };
}
const expectedOf = ({ evidence, reason }: GroundTrap) => ({
  evidence,
  counts: reason === null,
  reason,
  words: 'as expected',
});

describe('a supply beside the straight route', () => {
  it('has at least fifty kinds of ground around it, each named once and with its source', () => {
    expect(ROWS.length).toBeGreaterThanOrEqual(50);
    expect(new Set(GROUND_TRAPS.map(({ name }) => name)).size).toBe(GROUND_TRAPS.length);
    expect(GROUND_TRAPS.filter(({ source }) => source === '')).toEqual([]);
  });

  it.each(Object.entries(FORMATS))('is told as expected by a map of %s', async (format, files) => {
    const told = ROWS.filter(({ trap }) => LOST[format]?.includes(trap.name) !== true);
    const analysis = await straight.analysis(files(mapOf(told)));
    const wrong = told.flatMap((row) =>
      COMMODITIES.flatMap((commodity) => {
        const found = foundOf(analysis, row, commodity);
        return JSON.stringify(found) === JSON.stringify(expectedOf(row.trap))
          ? []
          : [
              `${commodity} ${row.trap.name} (${row.trap.source}): a traveller is told ${JSON.stringify(found)}`,
            ];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('makes no stretch hold by a trap, and holds by one without it', { tags: 'slow' }, async () => {
    const middle = (trap: GroundTrap, row: number): Row => ({ trap, row, km: 600 });
    const denied = GROUND_TRAPS.filter(({ reason }) => reason !== null);
    const told: string[] = [];
    for (const [row, trap] of denied.entries()) {
      // Each alone in the middle of the route; a few of them, since all were judged above.
      if (row % 4 !== 0) continue;
      const analysis = await straight.analysis({
        'one.osm': osmXml({ objects: mapOf([middle(trap, row)]) }),
      });
      for (const commodity of COMMODITIES)
        if (isCalm(analysis, commodity))
          told.push(`"Every stretch of ${commodity} holds with the reserve", though it lies ${trap.name}`);
    }
    expect(told).toEqual([]);
    const open = GROUND_TRAPS.findIndex(({ name }) => name === 'a bridge near');
    const [row] = ROWS.slice(open, open + 1);
    expect(row).toBeDefined();
    if (row === undefined) return;
    const analysis = await straight.analysis({
      'one.osm': osmXml({ objects: mapOf([middle(row.trap, row.row)]) }),
    });
    expect(COMMODITIES.map((commodity) => isCalm(analysis, commodity))).toEqual([true, true]);
  });
});
