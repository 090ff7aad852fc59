import { truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemLine } from '../../../server/core/input/problem.ts';
import { MAX_GPX_BYTES } from '../../../server/io/gpx/limits.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { gpx, problemOf, refusalOf, track, withFile } from './gpx-files.ts';

const point = (lat: string, lon: string) => track(`\n<trkpt lat="${lat}" lon="${lon}"/>`);

describe('a file that is no GPX is refused', () => {
  it.each([
    ['nothing at all', '', 'empty-file', 'an empty file'],
    ['blanks only', ' \n\n', 'empty-file', 'a file without any element'],
    ['plain text', 'km 12 turn left', 'not-xml', 'text that is not XML'],
    ['JSON', '{"type":"FeatureCollection"}', 'not-xml', 'JSON text'],
    ['binary data', Buffer.from([1, 0, 0, 0, 13, 10, 9, 0]), 'not-xml', 'binary data'],
    ['an HTML page', '<!DOCTYPE html><html><body>404</body></html>', 'html-page', 'a web page'],
    ['an XHTML page', '<?xml version="1.0"?>\n<html xmlns="x"><body/></html>', 'html-page', 'a web page'],
    ['other XML', '<?xml version="1.0"?><kml><Document/></kml>', 'not-gpx', 'XML with the root <kml>'],
    ['gzip', gzipSync('<gpx/>'), 'unknown-format', 'a gzip-compressed file'],
    ['bzip2', Buffer.from('BZh91AY&SY'), 'unknown-format', 'a bzip2-compressed file'],
    ['zip', Buffer.from('PK\u0003\u0004 and so on'), 'unknown-format', 'a zip archive'],
    [
      'an encoding nobody knows',
      '<?xml version="1.0" encoding="klingon"?><gpx/>',
      'xml-broken',
      'the encoding',
    ],
  ])('%s', async (_name, content, code, came) => {
    const problem = await refusalOf(content);
    expect(problem.code).toBe(code);
    expect(problem.came).toContain(came);
    expect(problem.source).toBe('trip.gpx');
    expect(problemLine(problem)).not.toContain('\n');
  });

  it('a file that is not there, or is a folder', async () => {
    expect(await problemOf(readGpx('/nowhere/trip.gpx', 'trip.gpx'))).toMatchObject({ code: 'file-missing' });
    expect(await problemOf(readGpx(tmpdir(), 'tmp'))).toMatchObject({
      code: 'file-unreadable',
      came: 'a folder',
    });
  });

  it('a file over the limit, before it is read', async () => {
    await withFile('<gpx>', async (path) => {
      await truncate(path, MAX_GPX_BYTES + 1);
      expect(await problemOf(readGpx(path, 'trip.gpx'))).toMatchObject({ code: 'too-large' });
    });
  });
});

describe('broken XML is refused with its place', () => {
  it.each([
    ['a tag closed by another', '<trk><trkseg></trk>', 3, 'well-formed'],
    ['an unquoted attribute', '<wpt lat=1 lon="2"/>', 3, 'well-formed'],
    ['an unknown entity', '<wpt lat="1" lon="2"><name>&nbsp;</name></wpt>', 3, 'well-formed'],
    ['elements without end', '<a>'.repeat(200), 3, 'nested over 100 deep'],
    ['the same inside extensions', `<extensions>${'<a>'.repeat(200)}`, 3, 'nested over 100 deep'],
  ])('%s', async (_name, body, line, came) => {
    const problem = await refusalOf(gpx(body));
    expect(problem.code).toBe('xml-broken');
    expect(problem.place).toMatch(new RegExp(`^line ${line}, column \\d+$`));
    expect(problem.came).toContain(came);
  });

  it('a file that breaks off, wherever it does, but for its very end', async () => {
    const whole = gpx(
      '<wpt lat="1" lon="2"><name>A</name></wpt><trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>',
    );
    const endsAt = whole.indexOf('</gpx>') + '</gpx>'.length;
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 45, max: endsAt - 1 }), async (length) => {
        const problem = await refusalOf(whole.slice(0, length));
        expect(['xml-broken', 'empty-file']).toContain(problem.code);
        // From the root's start on it is known for what it is.
        if (length > whole.indexOf('<trk>')) {
          expect(problem.code).toBe('xml-broken');
          expect(problem.came).toContain('a file that ends inside <');
          expect(problem.remedy).toContain('cut off');
        }
      }),
      { numRuns: 60, seed: 10 },
    );
  });

  it('what follows the root', async () => {
    expect((await refusalOf(`${gpx('<wpt lat="1" lon="2"/>')}<gpx/>`)).code).toBe('xml-broken');
  });
});

describe('declarations of entities are refused before any is expanded', () => {
  it.each([
    [
      'an entity bomb',
      '<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]><gpx version="1.1"><wpt lat="1" lon="2"><name>&b;</name></wpt></gpx>',
    ],
    [
      'an external entity',
      '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]><gpx><wpt lat="1" lon="2"><name>&x;</name></wpt></gpx>',
    ],
    ['a bare document type', '<!DOCTYPE gpx><gpx><wpt lat="1" lon="2"/></gpx>'],
  ])('%s', async (_name, content) => {
    expect(await refusalOf(content)).toMatchObject({
      code: 'xml-entity',
      came: 'a document type declaration',
    });
  });
});

describe('points without a place on earth are refused with their line', () => {
  it.each([
    ['90.0001', '10', 'lat="90.0001"', 'lat as a number from -90 to 90', 'swapped'],
    ['-91', '10', 'lat="-91"', 'lat as a number from -90 to 90', 'swapped'],
    ['10', '180.5', 'lon="180.5"', 'lon as a number from -180 to 180', 'Correct'],
    ['10', '-181', 'lon="-181"', 'lon as a number from -180 to 180', 'Correct'],
    ['NaN', '10', 'lat="NaN"', 'lat as a number from -90 to 90', 'Export'],
    ['Infinity', '10', 'lat="Infinity"', 'lat as a number from -90 to 90', 'Export'],
    ['', '10', 'lat=""', 'lat as a number from -90 to 90', 'Export'],
    ['0x10', '10', 'lat="0x10"', 'lat as a number from -90 to 90', 'Export'],
    ['46,5', '10', 'lat="46,5"', 'lat as a number from -90 to 90', 'comma'],
    ['46.5 N', '10', 'lat="46.5 N"', 'lat as a number from -90 to 90', 'Export'],
  ])('lat %j, lon %j', async (lat, lon, came, expected, remedy) => {
    const problem = await refusalOf(point(lat, lon));
    expect(problem).toMatchObject({ code: 'coordinate-out-of-range', came, expected });
    expect(problem.place).toMatch(/^line 4, column \d+$/);
    expect(problem.remedy).toContain(remedy);
  });

  it('a point without lat or lon, in a route and as a waypoint as well', async () => {
    for (const body of [
      '<wpt lon="1"/>',
      '<rte><rtept lat="1"/></rte>',
      '<trk><trkseg><trkpt/></trkseg></trk>',
    ]) {
      const problem = await refusalOf(gpx(body));
      expect(problem).toMatchObject({ code: 'coordinate-out-of-range' });
      expect(problem.came).toMatch(/^a point without (lat|lon)$/);
    }
  });

  it('the ends of the ranges are still on earth', async () => {
    for (const [lat, lon] of [
      ['90', '180'],
      ['-90', '-180'],
    ] as const) {
      await withFile(point(lat, lon), async (path) => {
        const { parts } = await readGpx(path, 'trip.gpx');
        expect(parts[0]!.segments[0]!.lon).toHaveLength(1);
      });
    }
  });
});

describe('a GPX file without any point is refused', () => {
  it.each([gpx(''), gpx('<trk><trkseg/></trk><rte/>'), gpx('<metadata><name>x</name></metadata>')])(
    '%#',
    async (text) => {
      expect(await refusalOf(text)).toMatchObject({ code: 'gpx-no-points', place: null });
    },
  );
});
