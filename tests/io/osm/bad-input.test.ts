import { mkdirSync, readFileSync, truncateSync } from 'node:fs';
import { dirname } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { problemLine } from '../../../server/core/input/problem.ts';
import { JSON_BYTES_MAX } from '../../../server/io/osm/source/limits.ts';
import { fuelNode, osmXml, problemAt, scratchFolder } from './scratch.ts';

const put = scratchFolder();

/** "hello" + line feed by bzip2 1.0.8, and nothing by the same. */
const BZIP2_HELLO = Buffer.from('QlpoOTFBWSZTWcHAgOIAAAFBAAAQAkSgADDNAMNGKZcXckU4UJDBwIDi', 'base64');
const BZIP2_EMPTY = Buffer.from('425a683917724538509000000000', 'hex');

/** What is given, the code it is refused with, and what the line must say of place and remedy. */
const CASES: readonly [name: string, content: string | Uint8Array, code: string, says: RegExp][] = [
  ['an empty file', '', 'empty-file', /the file is empty.*Download/],
  ['a file of spaces', ' \n \n', 'empty-file', /nothing in it/],
  ['gzip of nothing', gzipSync(''), 'empty-file', /nothing in it/],
  ['bzip2 of nothing', BZIP2_EMPTY, 'empty-file', /nothing in it/],
  ['plain text', 'no such area, sorry', 'unknown-format', /neither map data nor waypoints/],
  ['binary rubbish', new Uint8Array([1, 2, 3, 4, 5, 250, 251]), 'unknown-format', /OpenStreetMap data/],
  ['text in bzip2', BZIP2_HELLO, 'unknown-format', /neither map data/],
  ['a web page', '<!DOCTYPE html><html><body>504</body></html>', 'html-page', /web page instead of data/],
  ['a web page without a type', '\n<html lang="en"><body>busy</body></html>', 'html-page', /web page/],
  [
    'a web page in XML',
    '<?xml version="1.0"?>\n<!DOCTYPE html PUBLIC "-//W3C//DTD XHTML 1.0 Strict//EN" "x.dtd">\n<html/>',
    'html-page',
    /web page/,
  ],
  ['a zip archive', new Uint8Array([0x50, 0x4b, 3, 4, 20, 0]), 'unknown-format', /zip archive.*Unpack/],
  ['zstd', new Uint8Array([0x28, 0xb5, 0x2f, 0xfd, 0]), 'unknown-format', /Unpack it first/],
  ['a change file', '<osmChange version="0.6"><create/></osmChange>', 'unknown-format', /change file/],
  ['other XML', '<kml><Document/></kml>', 'unknown-format', /XML of another kind/],
  ['cut XML', osmXml(fuelNode(1, 2, 3)).slice(0, 120), 'xml-broken', /line 3, column \d+/],
  ['malformed XML', osmXml('<node id="1" lat=2/>'), 'xml-broken', /line 3, column \d+/],
  ['XML that is not UTF-8', Buffer.from(osmXml('<note>caf\xe9</note>'), 'latin1'), 'xml-broken', /not UTF-8/],
  [
    'an entity bomb',
    `<?xml version="1.0"?><!DOCTYPE osm [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><osm version="0.6">&b;</osm>`,
    'xml-entity',
    /document type.*Remove/,
  ],
  [
    'an entity bomb behind a long comment',
    `<?xml version="1.0"?><!--${'x'.repeat(70_000)}--><!DOCTYPE osm [<!ENTITY a "a">]><osm version="0.6"/>`,
    'unknown-format',
    /XML of another kind/,
  ],
  ['an unknown entity', osmXml('<note>&b;</note>'), 'xml-broken', /line 3/],
  ['another version', '<osm version="0.5"/>', 'osm-broken', /version 0\.5; expected version 0\.6/],
  ['an id that is none', osmXml('<node id="one" lat="1" lon="1"/>'), 'osm-broken', /line 3.*"one"/],
  [
    'a reference that is none',
    osmXml('<way id="1"><nd ref=""/></way>'),
    'osm-broken',
    /line 3.*reference ""/,
  ],
  ['a member of no type', osmXml('<relation id="1"><member ref="1"/></relation>'), 'osm-broken', /line 3/],
  ['half a tag', osmXml('<node id="1"><tag k="amenity"/></node>'), 'osm-broken', /<tag> without k or v/],
  ['an edit section', osmXml('<delete><node id="1"/></delete>'), 'osm-broken', /<delete> section/],
  ['cut gzip', gzipSync(osmXml(fuelNode(1, 2, 3))).subarray(0, 60), 'gzip-broken', /byte 60.*too early/],
  ['cut bzip2', BZIP2_HELLO.subarray(0, 30), 'bzip2-broken', /Download it again/],
  ['broken JSON', '{"elements": [\n{"type": }]}', 'json-broken', /line 2, column 10.*not JSON/],
  ['cut JSON', '{"elements": [{"type": "node", "id": 1', 'json-broken', /ends too early/],
  ['JSON of another kind', '{"routes": []}', 'json-shape', /"elements".*"features"/],
  ['a JSON list', '[1, 2]', 'json-shape', /another kind/],
  ['an element without type', '{"elements": [{"id": 1}]}', 'json-shape', /\/elements\/0/],
  [
    'an element without id',
    '{"elements": [{"type": "node"}]}',
    'json-shape',
    /\/elements\/0.*without a number/,
  ],
  ['features that are none', '{"type": "FeatureCollection", "features": 1}', 'json-shape', /\/features/],
  [
    'coordinates in metres',
    '{"type":"Feature","properties":{"amenity":"fuel"},"geometry":{"type":"Point","coordinates":[1045000,6020000]}}',
    'coordinate-out-of-range',
    /longitude from -180.*EPSG:4326/,
  ],
  [
    'another system of coordinates',
    '{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:3857"}},"features":[]}',
    'json-shape',
    /\/crs.*EPSG:3857/,
  ],
];

describe('an extract that cannot be used', () => {
  it.each(CASES)('%s is refused in one line', async (name, content, code, says) => {
    const problem = await problemAt(put(`${name.replace(/\W+/g, '-')}.osm`, content), 'region.osm');
    const line = problemLine(problem);
    expect(problem.code).toBe(code);
    expect(line).toMatch(/^region\.osm/);
    expect(line).toMatch(says);
    expect(line).not.toContain('\n');
  });

  it('a file that is not there', async () => {
    const problem = await problemAt('/nowhere/at/all.osm', 'all.osm');
    expect(problem.code).toBe('file-missing');
  });

  it('a folder', async () => {
    const path = `${dirname(put('beside', ''))}/folder`;
    mkdirSync(path);
    expect((await problemAt(path)).code).toBe('file-unreadable');
  });

  it('JSON above the size that can be parsed in one piece', { tags: 'slow' }, async () => {
    const path = put('huge.json', '{"elements": [');
    // A hole in the file: nothing of it is on the disk.
    truncateSync(path, JSON_BYTES_MAX + 1);
    const problem = await problemAt(path, 'huge.json');
    expect([problem.code, problem.remedy]).toEqual(['too-large', expect.stringMatching(/\.osm\.pbf/)]);
  });

  it('a pbf file packed once more names the remedy', async () => {
    const header = Buffer.concat([
      Buffer.from([0, 0, 0, 13]),
      Buffer.from('\x0a\x09OSMHeader\x18\x00', 'latin1'),
    ]);
    const problem = await problemAt(put('twice.osm.pbf.gz', gzipSync(header)));
    expect([problem.code, problem.remedy]).toEqual([
      'unknown-format',
      'Unpack it (gunzip) and give the file inside',
    ]);
  });

  it('a file packed three times over', async () => {
    const thrice = gzipSync(gzipSync(gzipSync(osmXml(''))));
    expect((await problemAt(put('thrice.gz', thrice))).code).toBe('expands-too-far');
  });

  it('the codes of the cases are all listed in the core', () => {
    const listed = readFileSync(new URL('../../../server/core/input/problem.ts', import.meta.url), 'utf8');
    for (const [, , code] of CASES) expect(listed).toContain(`'${code}'`);
  });
});
