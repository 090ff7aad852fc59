import type { RawExtract, ReadOptions } from './extract/raw-extract.ts';
import { readGeoJson } from './geojson/read-geojson.ts';
import { readJsonDocument } from './json/json-document.ts';
import { isObject } from './json/json-object.ts';
import { readOverpassJson } from './json/read-overpass-json.ts';
import type { ByteSource } from './source/byte-source.ts';
import { refusal } from './source/problems.ts';

/** Reads Overpass JSON or GeoJSON, whichever it is. Throws InputProblem. */
export async function readJson(bytes: ByteSource, options: ReadOptions): Promise<RawExtract> {
  const document = await readJsonDocument(bytes, options);
  if (isObject(document) && Array.isArray(document.elements)) {
    return readOverpassJson(document, document.elements, options);
  }
  if (isObject(document) && (document.type === 'FeatureCollection' || document.type === 'Feature')) {
    return readGeoJson(document, options);
  }
  throw refusal(
    'json-shape',
    options.source,
    null,
    'JSON of another kind',
    'Overpass JSON with "elements", or GeoJSON with "features"',
    'Export it as one of these',
  );
}
