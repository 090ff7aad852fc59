import { boxOf } from '../../app/near-route.ts';
import type { Watch } from '../../app/ports.ts';
import type { Bbox } from '../../contract/common.ts';
import type { Outcome } from '../../core/input/problem.ts';
import { ringsOfBox } from '../../core/route/cover/box-cover.ts';
import { lentOnly } from '../../io/osm/extract/detached.ts';
import { keyOf, keyOfRef } from '../../io/osm/extract/element-key.ts';
import type { RawExtract } from '../../io/osm/extract/raw-extract.ts';
import { groundFeatures } from '../../io/osm/keep/ground-features.ts';
import { boxOfElement, type Lookup, lendingOf } from '../../io/osm/keep/keep-near.ts';
import { ringsOfHull } from '../../io/osm/unite/cover.ts';
import { extentOf, readExtracts } from '../../io/trip-file-set.ts';
import type { BoxedRow, StoredExtract } from '../port/port.ts';

/** What is found in an extract's file; id, name, hash and the like are known without it. */
export type ExtractFacts = Omit<StoredExtract, 'id' | 'name' | 'fileName' | 'hash' | 'bytes' | 'addedAt'>;

/** An extract as it is taken in. */
export interface Ingested {
  facts: ExtractFacts;
  points: BoxedRow[];
  ground: BoxedRow[];
}

const WORLD: Bbox = [-180, -90, 180, 90];

/** Reads an extract whole: all its supplies and, as far as a map of it bears them, its roads, places and coasts. */
export async function ingest(path: string, source: string, watch: Watch): Promise<Outcome<Ingested>> {
  const read = await readExtracts([{ path, source }], { ground: WORLD, near: null }, watch);
  if (!read.ok) return read;
  const points: BoxedRow[] = [];
  const ground: BoxedRow[] = [];
  for (const extract of read.value) {
    points.push(...pointsOf(extract));
    ground.push(...groundOf(extract));
    const facts = factsOf(extract, points.length, ground.length);
    return { ok: true, value: { facts, points, ground } };
  }
  throw new Error('an extract that was read is not there');
}

function factsOf(extract: RawExtract, supplies: number, ground: number): ExtractFacts {
  const { format, papers, bounds, moreBounds = [], hull, shows, counts } = extract;
  const outline =
    bounds === null ? ringsOfHull(hull ?? []) : [bounds, ...moreBounds].flatMap((box) => ringsOfBox(box));
  return {
    format,
    ...papers,
    bbox: extentOf(extract).bbox,
    outline: outline.filter((ring) => ring.length > 0),
    shows,
    counts: { ...counts, supplies, ground },
  };
}

/** A supply as it is kept: an element with what gives it its place, or a feature that came ready made. */
function pointsOf({ elements, wanted, features }: RawExtract): BoxedRow[] {
  const byKey = new Map(elements.map((element) => [keyOf(element), element]));
  const lookup: Lookup = (type, id) => byKey.get(keyOfRef(type, id));
  const all = elements.filter((element) => wanted.has(keyOf(element)));
  const rows = all.map((element): BoxedRow => {
    const lending = lendingOf([element], [], lookup).map((lent) =>
      // A supply that lends another its place does not speak for it.
      wanted.has(keyOf(lent)) ? lentOnly(lent) : lent,
    );
    // What has no place known lies anywhere.
    const box = boxOfElement(element, lookup) ?? WORLD;
    return { box, json: JSON.stringify(lending.length === 0 ? { element } : { element, lending }) };
  });
  const readyMade = features.map((feature): BoxedRow => {
    return { box: boxOf(feature.geometry) ?? WORLD, json: JSON.stringify({ feature }) };
  });
  return [...rows, ...readyMade];
}

function groundOf({ ground }: RawExtract): BoxedRow[] {
  return groundFeatures(ground).flatMap((feature): BoxedRow[] => {
    const box = boxOf(feature.geometry);
    return box === null ? [] : [{ box, json: JSON.stringify(feature) }];
  });
}
