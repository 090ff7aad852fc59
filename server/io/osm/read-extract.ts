import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import type { RawExtract, ReadOptions } from './extract/raw-extract.ts';
import { readPbf } from './pbf/read/read-pbf.ts';
import { readJson } from './read-json.ts';
import { type ByteSource, byteSource } from './source/byte-source.ts';
import type { Content } from './source/sniff.ts';
import { SUPPLY_FORMATS } from './source/supply-formats.ts';
import { readWaypoints } from './waypoints/read-waypoints.ts';
import { readOsmXml } from './xml/read-osm-xml.ts';

type Reader = (path: string, bytes: ByteSource, options: ReadOptions) => Promise<RawExtract>;

/** A file that must not be packed: its reader goes to and fro in the file itself. */
const unpacked =
  (read: (path: string, options: ReadOptions) => Promise<RawExtract>, what: string): Reader =>
  async (path, bytes, options) => {
    if (bytes.packing.length === 0) return read(path, options);
    const packing = bytes.packing.join(' in ');
    throw new InputProblem({
      code: 'unknown-format',
      source: options.source,
      came: `${what} packed once more with ${packing}`,
      expected: `${what} as it is`,
      remedy: `Unpack it (${bytes.packing[0] === 'gzip' ? 'gunzip' : 'bunzip2'}) and give the file inside`,
    });
  };

const refusing =
  (
    code: 'unknown-format' | 'html-page' | 'empty-file' | 'xml-entity',
    came: string,
    remedy: string,
  ): Reader =>
  async (_path, bytes, options) => {
    const isNothing = bytes.content === 'empty' && bytes.fileBytes > 0;
    throw new InputProblem({
      code,
      source: options.source,
      came: isNothing ? 'there is nothing in it' : came,
      expected: SUPPLY_FORMATS,
      remedy,
    });
  };

const READERS: Record<Content, Reader> = {
  pbf: unpacked((path, options) => readPbf({ path }, options), 'a pbf file'),
  gpx: unpacked(readWaypoints, 'a GPX file'),
  'osm-xml': (_path, bytes, options) => readOsmXml(bytes, options),
  json: (_path, bytes, options) => readJson(bytes, options),
  empty: refusing('empty-file', 'the file is empty', 'Download or export it again'),
  html: refusing(
    'html-page',
    'the download gave a web page instead of data',
    'Open the page to see what the server said, then download again',
  ),
  'osm-change': refusing(
    'unknown-format',
    'a change file (osmChange), which tells what was edited and not what there is',
    'Give an extract of the area',
  ),
  zip: refusing('unknown-format', 'a zip archive', 'Unpack it and give the file inside'),
  'other-archive': refusing('unknown-format', 'a packed file of a kind not read here', 'Unpack it first'),
  gzip: refusing('unknown-format', 'a gzip file', 'Unpack it first'),
  bzip2: refusing('unknown-format', 'a bzip2 file', 'Unpack it first'),
  'xml-doctype': refusing(
    'xml-entity',
    'XML with a document type, which may declare entities',
    'Remove the <!DOCTYPE …> part, or export the data again',
  ),
  'xml-other': refusing('unknown-format', 'XML of another kind', 'Export it as one of these'),
  unknown: refusing('unknown-format', 'neither map data nor waypoints', 'Check which file this is'),
};

/**
 * Reads an extract of any kind; the content decides which, never the file's name.
 * An input that cannot be used is an outcome with its problem. Throws only when aborted, or for a fault of our own.
 */
export async function readExtract(path: string, options: ReadOptions): Promise<Outcome<RawExtract>> {
  try {
    const bytes = await byteSource(path, options.source, options.signal);
    return { ok: true, value: await READERS[bytes.content](path, bytes, options) };
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    throw error;
  }
}
