import type { MapPapers } from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { ParsedElement } from '../extract/raw-element.ts';
import type { RawExtract, ReadOptions } from '../extract/raw-extract.ts';
import { DeclaredBounds } from '../extract/whole-file/declared-bounds.ts';
import { osmPapers } from '../extract/whole-file/papers.ts';
import { incompleteCaution, tellsOfFailure } from '../extract/whole-file/remark.ts';
import { filterElements } from '../keep/filter-elements.ts';
import { isObject, type JsonObject } from './json-object.ts';
import { numberOf, overpassElement } from './overpass-element.ts';

/** Overpass tells its base's time and the terms under `osm3s`; others write OSM JSON with the API's own fields. */
function papersOf({ osm3s, timestamp, copyright, attribution, license }: JsonObject): MapPapers {
  const base = isObject(osm3s) ? osm3s : {};
  return osmPapers({
    asOf: base.timestamp_osm_base ?? timestamp,
    attribution: base.copyright ?? copyright ?? attribution,
    licence: license,
  });
}

/** A file made of replies tells what was asked for (server/io/overpass): it speaks of that also where there is none. */
function askedFor({ asked }: JsonObject): Partial<RawExtract['shows']> {
  const list: readonly unknown[] = Array.isArray(asked) ? asked : [];
  return { ...(list.includes('fuel') && { fuel: true }), ...(list.includes('water') && { water: true }) };
}

/**
 * Reads an Overpass reply (`out body`, `out center`, `out geom`).
 * Throws InputProblem `json-shape` with the element's place for one that is no OSM element.
 */
export async function readOverpassJson(
  document: JsonObject,
  rawElements: readonly unknown[],
  options: ReadOptions,
): Promise<RawExtract> {
  const { source } = options;
  const parsed: ParsedElement[] = [];
  for (const [i, raw] of rawElements.entries()) {
    const element = overpassElement(raw, `/elements/${i}`, source);
    if (element !== null) parsed.push(element);
  }
  const bounds = new DeclaredBounds();
  for (const box of [document.bounds].flat()) {
    if (!isObject(box)) continue;
    const { minlon, minlat, maxlon, maxlat } = box;
    bounds.add([numberOf(minlon), numberOf(minlat), numberOf(maxlon), numberOf(maxlat)]);
  }
  const filtered = await filterElements(
    async (visit) => {
      options.signal?.throwIfAborted();
      for (const element of parsed) visit(element);
    },
    { ground: options.ground, near: options.near, wantsHull: () => !bounds.any },
  );
  const incomplete: Caution[] =
    typeof document.remark === 'string' && tellsOfFailure(document.remark)
      ? [incompleteCaution(source, document.remark.trim())]
      : [];
  const isWhole = incomplete.length === 0;
  return {
    source,
    format: 'overpass-json',
    papers: papersOf(document),
    ...filtered,
    features: [],
    shows: { ...filtered.shows, ...askedFor(document) },
    bounds: isWhole ? bounds.first : null,
    ...(isWhole && bounds.others.length > 0 && { moreBounds: bounds.others }),
    hull: isWhole && !bounds.any ? filtered.hull : null,
    cautions: [...incomplete, ...bounds.cautions(source), ...filtered.cautions],
  };
}
