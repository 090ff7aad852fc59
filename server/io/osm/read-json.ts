import { InputProblem } from '../../core/input/problem.ts';
import type { RawExtract, ReadOptions } from './extract/raw-extract.ts';
import { readGeoJson } from './geojson/read-geojson.ts';
import { readJsonDocument } from './json/json-document.ts';
import { isObject } from './json/json-object.ts';
import { readOverpassJson } from './json/read-overpass-json.ts';
import type { ByteSource } from './source/byte-source.ts';

/** Reads Overpass JSON or GeoJSON, whichever it is. Throws InputProblem. */
export async function readJson(bytes: ByteSource, options: ReadOptions): Promise<RawExtract> {
  const document = await readJsonDocument(bytes, options);
  if (isObject(document) && Array.isArray(document.elements)) {
    return readOverpassJson(document, document.elements, options);
  }
  if (isObject(document) && (document.type === 'FeatureCollection' || document.type === 'Feature')) {
    return readGeoJson(document, options);
  }
  throw new InputProblem({
    code: 'json-shape',
    source: options.source,
    came: 'JSON of another kind',
    expected: 'Overpass JSON with "elements", or GeoJSON with "features"',
    remedy: 'Export it as one of these',
  });
}
