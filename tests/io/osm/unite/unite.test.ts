import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { MappedFeature } from '../../../../server/core/input/sources.ts';
import type { Caution } from '../../../../server/core/phrases/cautions.ts';
import type { Phrase } from '../../../../server/core/phrases/phrases.ts';
import { keyOf } from '../../../../server/io/osm/extract/element-key.ts';
import { NOTHING_FAR } from '../../../../server/io/osm/extract/far-objects.ts';
import { compareAge } from '../../../../server/io/osm/extract/newest.ts';
import type { RawElement } from '../../../../server/io/osm/extract/raw-element.ts';
import type { RawExtract } from '../../../../server/io/osm/extract/raw-extract.ts';
import { osmPapers } from '../../../../server/io/osm/extract/whole-file/papers.ts';
import { unite } from '../../../../server/io/osm/unite/unite.ts';

const NO_POSITION: Phrase = { phrase: 'skipped-no-position', facts: {} };

const FUEL = { amenity: 'fuel' };
const extract = (source: string, elements: RawElement[], more: Partial<RawExtract> = {}): RawExtract => ({
  source,
  format: 'osm-xml',
  papers: osmPapers({}),
  elements,
  wanted: new Set(elements.filter(({ tags }) => tags?.amenity !== undefined).map(keyOf)),
  far: NOTHING_FAR,
  roads: null,
  surroundings: [],
  drawnRoads: null,
  unwanted: NOTHING_FAR,
  deleted: NOTHING_FAR,
  features: [],
  bounds: null,
  hull: null,
  shows: { fuel: true, water: false, general: false },
  counts: { nodes: 0, ways: 0, relations: 0 },
  ground: [],
  skipped: [],
  cautions: [],
  ...more,
});
const station = (version: number | undefined, name: string, more: Partial<RawElement> = {}): RawElement => ({
  type: 'node',
  id: 1,
  lon: 1,
  lat: 2,
  tags: { ...FUEL, name },
  ...(version !== undefined && { version }),
  ...more,
});
const namesOf = (...extracts: RawExtract[]) => unite(extracts, [], []).features.map(({ tags }) => tags.name);

describe('of an object in several extracts', () => {
  it('the newer version is taken, whichever file comes first', () => {
    const old = extract('old.osm', [station(3, 'Old')]);
    const fresh = extract('fresh.osm', [station(4, 'Fresh')]);
    expect([namesOf(old, fresh), namesOf(fresh, old)]).toEqual([['Fresh'], ['Fresh']]);
  });

  it('without versions the time of edit decides, then known age before unknown, then the later file', () => {
    const at = (timestamp: string | undefined, name: string) =>
      extract(name, [station(undefined, name, timestamp === undefined ? {} : { timestamp })]);
    const early = at('2023-05-01T00:00:00Z', 'Early');
    const late = at('2024-05-01T00:00:00Z', 'Late');
    const [first, second] = [at(undefined, 'First'), at(undefined, 'Second')];
    expect(namesOf(late, early)).toEqual(['Late']);
    expect(namesOf(early, first)).toEqual(['Early']);
    expect(namesOf(first, second)).toEqual(['Second']);
  });

  it('a newer version that is no supply takes the older one away, and this is told', () => {
    const closed = extract('fresh.osm', [
      { type: 'node', id: 1, lon: 1, lat: 2, version: 5, tags: { shop: 'books' } },
    ]);
    for (const extracts of [
      [extract('old.osm', [station(4, 'Old')]), closed],
      [closed, extract('old.osm', [station(4, 'Old')])],
    ]) {
      const { features, skipped } = unite(extracts, [], []);
      expect(features).toEqual([]);
      expect(toContract(skipped)).toEqual([
        { id: 'node/1', reason: 'fresh.osm has a newer version of it, which is no supply any more' },
      ]);
    }
  });

  it('a bare node of unknown age says nothing against a supply', () => {
    const bare = extract('other.osm', [{ type: 'node', id: 1, lon: 1, lat: 2 }]);
    expect(namesOf(extract('a.osm', [station(undefined, 'Here')]), bare)).toEqual(['Here']);
  });

  it('geometry that the later file lacks is taken from the earlier one of the same version', () => {
    const nodes: RawElement[] = [
      { type: 'node', id: 11, lon: 0, lat: 0 },
      { type: 'node', id: 12, lon: 1e-3, lat: 0 },
    ];
    const way: RawElement = { type: 'way', id: 5, version: 2, nodes: [11, 12], tags: FUEL };
    const bare: RawElement = { type: 'way', id: 5, version: 2, tags: FUEL };
    const { features } = unite([extract('whole.osm', [...nodes, way]), extract('tags.json', [bare])], [], []);
    expect(features.map(({ geometry }) => geometry.type)).toEqual(['LineString']);
  });

  it('what one file could not place another may have whole: then it is not skipped', () => {
    const cut = extract('cut.osm', [{ type: 'way', id: 5, nodes: [11], tags: FUEL }]);
    const whole = extract('whole.osm', [{ type: 'node', id: 11, lon: 0, lat: 0 }]);
    expect(unite([cut], [], []).skipped.map(({ id }) => id)).toEqual(['way/5']);
    const both = unite([cut, whole], [], []);
    expect([both.features.map(({ id }) => id), both.skipped]).toEqual([['way/5'], []]);
    const placeless = extract('c.osm', [], { skipped: [{ id: 'node/1', reason: NO_POSITION }] });
    expect(unite([placeless, extract('d.osm', [station(1, 'D')])], [], []).skipped).toEqual([]);
  });

  it('ready-made features take part by their time of edit', () => {
    const feature = (editedAt: string | null): MappedFeature => ({
      id: 'node/1',
      geometry: { type: 'Point', coordinates: [1, 2] },
      tags: { ...FUEL, name: 'Ready' },
      editedAt,
    });
    const timed = extract('a.osm', [station(undefined, 'Element', { timestamp: '2023-05-01T00:00:00Z' })]);
    const names = (editedAt: string | null) =>
      unite([timed], [feature(editedAt)], []).features.map(({ tags }) => tags.name);
    expect([names('2024-01-01T00:00:00Z'), names('2022-01-01T00:00:00Z'), names(null)]).toEqual([
      ['Ready'],
      ['Element'],
      ['Element'],
    ]);
  });

  it('own points that are the same in two files are taken once', () => {
    const own: MappedFeature = {
      id: 'own/well',
      geometry: { type: 'Point', coordinates: [1, 2] },
      tags: { man_made: 'water_well' },
      editedAt: null,
    };
    const elsewhere = { ...own, geometry: { type: 'Point' as const, coordinates: [3, 4] } };
    const file = extract('notes.gpx', [], { features: [own] });
    expect(unite([file], [own, elsewhere], []).features.map(({ id }) => id)).toEqual([
      'own/well',
      'own/well-2',
    ]);
  });
});

describe('what is told beside the features', () => {
  it('cover, cautions and skipped of all the files come together', () => {
    const caution: Caution = { code: 'position-missing', facts: { count: 1 } };
    const first = extract('a.osm', [station(1, 'A')], {
      bounds: [0, 0, 2, 3],
      cautions: [caution],
      skipped: [{ id: 'node/9', reason: NO_POSITION }],
    });
    const second = extract('b.osm', [], {
      bounds: [5, 5, 6, 6],
      skipped: [{ id: 'node/9', reason: { phrase: 'skipped-no-tags', facts: {} } }],
    });
    const { cover, cautions, skipped } = unite(
      [first, second],
      [],
      [{ commodity: 'water', bbox: [0, 0, 1, 1] }],
    );
    expect(cover.map(({ commodity, source }) => [commodity, source])).toEqual([
      ['fuel', 'a.osm'],
      ['fuel', 'b.osm'],
      ['water', 'your trip'],
    ]);
    expect(cautions).toEqual([caution]);
    expect(skipped).toEqual([{ id: 'node/9', reason: NO_POSITION }]);
  });

  it('nothing gives nothing', () => {
    expect(unite([], [], [])).toEqual({
      extracts: [],
      features: [],
      cover: [],
      skipped: [],
      cautions: [],
      surroundings: { objects: [], roads: [] },
    });
  });
});

const version = fc.integer({ min: 1, max: 4 });
const anyNode = fc.record({ id: fc.integer({ min: 1, max: 5 }), version }).map(
  ({ id, version: each }): RawElement => ({
    type: 'node',
    id,
    version: each,
    lon: each,
    lat: id,
    tags: { ...FUEL, name: `${id} v${each}` },
  }),
);
const anyExtracts = fc
  .array(fc.uniqueArray(anyNode, { selector: ({ id }) => id }), { maxLength: 4 })
  .map((files) => files.map((elements, i) => extract(`${i}.osm`, elements)));

describe('uniting', () => {
  it('takes of every object the highest version, in any order of the files', () => {
    fc.assert(
      fc.property(anyExtracts, fc.infiniteStream(fc.nat()), (extracts, keys) => {
        const highest = new Map<string, number>();
        for (const { elements } of extracts) {
          for (const element of elements) {
            highest.set(keyOf(element), Math.max(highest.get(keyOf(element)) ?? 0, element.version ?? 0));
          }
        }
        const sortBy = new Map(extracts.map((each) => [each, keys.next().value]));
        const shuffled = [...extracts].sort((a, b) => sortBy.get(a)! - sortBy.get(b)!);
        for (const files of [extracts, shuffled]) {
          const { features } = unite(files, [], []);
          const got = features.map((feature) => [feature.id, feature.tags.name] as const);
          const expected = [...highest].map(([id, each]) => [id, `${id.slice(5)} v${each}`] as const);
          expect(got.toSorted()).toEqual(expected.toSorted());
        }
      }),
    );
  });

  it('the same file twice is as good as once', () => {
    fc.assert(
      fc.property(anyExtracts, (extracts) => {
        const once = unite(extracts, [], []).features;
        expect(unite([...extracts, ...extracts], [], []).features).toEqual(once);
      }),
    );
  });

  it('leaves its input as it was', () => {
    fc.assert(
      fc.property(anyExtracts, (extracts) => {
        const before = structuredClone(extracts);
        unite(extracts, [], []);
        expect(extracts).toEqual(before);
      }),
    );
  });

  it('ages compare the same both ways round', () => {
    const age = fc.record(
      { version, timestamp: fc.constantFrom('2023-01-01T00:00:00Z', '2024-01-01T00:00:00Z', 'never') },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(age, age, (a, b) => {
        expect(Math.sign(compareAge(a, b)) + Math.sign(compareAge(b, a))).toBe(0);
      }),
    );
  });
});
