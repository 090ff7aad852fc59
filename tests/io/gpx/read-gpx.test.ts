import { describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { gpx, readText, track, withFile } from './gpx-files.ts';

const codes = (cautions: readonly { code: string }[]) => cautions.map((caution) => caution.code);

const RICH = gpx(`
  <metadata><name>Over the plain</name><author><name>Nobody</name></author></metadata>
  <wpt lat="-35.5" lon="88.25"><ele>0</ele><time>2026-05-01T06:00:00Z</time><name>Camp &amp; fire</name>
    <cmt>flat</cmt><desc><![CDATA[<b>sand</b>]]></desc><sym>Campground</sym><type>camp</type></wpt>
  <wpt lat="-36" lon="89"><time>1970-01-01T00:00:00Z</time><name>  </name></wpt>
  <rte><name>Plan</name><rtept lat="-35" lon="88"><name>A</name></rtept><rtept lat="-35.1" lon="88.1"/></rte>
  <trk><name>Day 1</name>
    <trkseg><trkpt lat="-35" lon="88"><ele>12.5</ele><time>1970-01-01T00:00:00Z</time></trkpt>
      <trkpt lat="-35" lon="88"><ele>0</ele></trkpt></trkseg>
    <trkseg><trkpt lat="-35.2" lon="88.2"><ele></ele></trkpt><trkpt lat="-35.3" lon="88.3"/></trkseg></trk>
  <trk><trkseg><trkpt lat="-35.4" lon="88.4"/></trkseg></trk>`);

describe('a GPX file', () => {
  it('is read with its tracks, segments, routes and names, in file order', async () => {
    const document = await readText(RICH);
    expect(document.name).toBe('Over the plain');
    expect(
      document.parts.map(({ kind, name, segments }) => [kind, name, segments.map((s) => s.lon.length)]),
    ).toEqual([
      ['route', 'Plan', [2]],
      ['track', 'Day 1', [2, 2]],
      ['track', null, [1]],
    ]);
    expect([...document.parts[1]!.segments[1]!.lon]).toEqual([88.2, 88.3]);
    expect([...document.parts[1]!.segments[1]!.lat]).toEqual([-35.2, -35.3]);
    expect(document.cautions).toEqual([]);
  });

  it('has an elevation of zero where the file says zero, none where it says nothing', async () => {
    const document = await readText(RICH);
    const track = document.parts[1]!;
    expect([...track.segments[0]!.ele]).toEqual([12.5, 0]);
    expect([...track.segments[1]!.ele]).toEqual([Number.NaN, Number.NaN]);
    expect(document.waypoints.map((waypoint) => waypoint.ele)).toEqual([0, null]);
  });

  it('has waypoints with all their fields, blank names and filler times as none', async () => {
    const { waypoints } = await readText(RICH);
    expect(waypoints).toEqual([
      {
        lon: 88.25,
        lat: -35.5,
        ele: 0,
        name: 'Camp & fire',
        symbol: 'Campground',
        type: 'camp',
        comment: 'flat',
        description: '<b>sand</b>',
        time: '2026-05-01T06:00:00Z',
      },
      {
        lon: 89,
        lat: -36,
        ele: null,
        name: null,
        symbol: null,
        type: null,
        comment: null,
        description: null,
        time: null,
      },
    ]);
  });

  it('may be GPX 1.0, with its name under the root: told as old', async () => {
    const document = await readText(
      gpx(
        '<name>Old</name><trk><trkseg><trkpt lat="1" lon="2"><speed>3</speed></trkpt></trkseg></trk>',
        'version="1.0" xmlns="http://www.topografix.com/GPX/1/0"',
      ),
    );
    expect(document.name).toBe('Old');
    expect(codes(document.cautions)).toEqual(['gpx-old']);
  });

  it('may have no namespace, or a prefix before every name', async () => {
    expect((await readText(gpx('<wpt lat="1" lon="2"/>', 'version="1.1"'))).waypoints).toHaveLength(1);
    const prefixed =
      '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1" version="1.1"><g:trk><g:name>P</g:name><g:trkseg><g:trkpt lat="1" lon="2"/></g:trkseg></g:trk></g:gpx>';
    const { parts } = await readText(prefixed);
    expect(parts[0]).toMatchObject({ name: 'P' });
    expect([...parts[0]!.segments[0]!.lon]).toEqual([2]);
  });

  it('is read without what extensions and other namespaces hold', async () => {
    const document = await readText(
      gpx(`<wpt lat="1" lon="2"><x:name>other</x:name><name>own</name><extensions><name>inner</name>
        <trkpt lat="99" lon="999"/></extensions></wpt>
        <trk><extensions><x:line><x:colour>1</x:colour></x:line></extensions><trkseg><trkpt lat="1" lon="2">
        <extensions><ele>5</ele></extensions></trkpt></trkseg></trk>`),
    );
    expect(document.waypoints[0]!.name).toBe('own');
    expect([...document.parts[0]!.segments[0]!.ele]).toEqual([Number.NaN]);
    expect(document.cautions).toEqual([]);
  });

  it.each([
    ['UTF-8 with a byte-order mark', (text: string) => Buffer.from(`\ufeff${text}`, 'utf8')],
    ['UTF-16, little end first', (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['UTF-16, big end first', (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16()],
    ['UTF-16 without a mark', (text: string) => Buffer.from(text, 'utf16le')],
    ['Latin 1', (text: string) => Buffer.from(text.replace('UTF-8', 'ISO-8859-1'), 'latin1')],
  ])('may be written in %s', async (_name, encode) => {
    const { waypoints, cautions } = await readText(
      encode(gpx('<wpt lat="1" lon="2"><name>Dérivé</name></wpt>')),
    );
    expect(waypoints[0]!.name).toBe('Dérivé');
    expect(cautions).toEqual([]);
  });

  it('keeps characters whole that lie across two pieces of the stream', async () => {
    const names = Array.from({ length: 30_000 }, (_, i) => `é${'x'.repeat(i % 7)}☀`);
    const { waypoints, cautions } = await readText(
      gpx(names.map((name) => `<wpt lat="1" lon="2"><name>${name}</name></wpt>`).join('')),
    );
    expect(waypoints.map((waypoint) => waypoint.name)).toEqual(names);
    expect(cautions).toEqual([]);
  });

  it('keeps repeated points and takes numbers in any decimal form', async () => {
    const { parts } = await readText(
      track('<trkpt lat="+1." lon=".5"/>', '<trkpt lat=" 1e0 " lon="5E-1"/>', '<trkpt lat="1" lon="0.50"/>'),
    );
    expect([...parts[0]!.segments[0]!.lat]).toEqual([1, 1, 1]);
    expect([...parts[0]!.segments[0]!.lon]).toEqual([0.5, 0.5, 0.5]);
  });
});

describe('what is passed over is told', () => {
  it.each([
    ['gpx-empty-part', '<trk/><rte/><trk><trkseg/></trk><wpt lat="1" lon="2"/>', '3 track(s)'],
    ['gpx-stray-points', '<trkpt lat="1" lon="2"/><wpt lat="1" lon="2"/>', '1 point(s)'],
    ['gpx-no-segment', '<trk><trkpt lat="1" lon="2"/><trkpt lat="1" lon="3"/></trk>', '2 track point(s)'],
    [
      'gpx-elevation-unread',
      '<trk><trkseg><trkpt lat="1" lon="2"><ele>high</ele></trkpt></trkseg></trk>',
      '1 elevation(s)',
    ],
    ['gpx-longitude-180', '<wpt lat="1" lon="180"/>', '1 point(s)'],
    [
      'gpx-shape-points',
      '<rte><rtept lat="1" lon="2"><extensions><x:RoutePointExtension><x:rpt lat="1" lon="3"/><x:rpt lat="1" lon="4"/></x:RoutePointExtension></extensions></rtept></rte>',
      '2 extension point(s)',
    ],
  ])('%s', async (code, body, words) => {
    const { cautions } = await readText(gpx(body));
    expect(codes(cautions)).toEqual([code]);
    const [caution] = toContract(cautions);
    expect(caution!.text).toContain(words);
    expect(caution!.text).toContain('line 3');
  });

  it('gpx-version, gpx-damaged-text', async () => {
    expect(codes((await readText('<gpx><wpt lat="1" lon="2"/></gpx>')).cautions)).toEqual(['gpx-version']);
    const damaged = Buffer.from(gpx('<wpt lat="1" lon="2"><name>D?</name></wpt>'));
    damaged[damaged.indexOf('?</name>')] = 0xe9;
    expect(codes((await readText(damaged)).cautions)).toEqual(['gpx-damaged-text']);
  });

  it('what stray elements hold goes nowhere else', async () => {
    const document = await readText(
      gpx(`<odd><trk><name>Odd</name><trkseg><trkpt lat="5" lon="6"/></trkseg></trk></odd>
        <trk><name>Own</name><trkseg><trkpt lat="1" lon="2"/><wpt lat="3" lon="4"><ele>7</ele><name>In</name></wpt></trkseg></trk>`),
    );
    expect(document.name).toBeNull();
    expect(document.waypoints).toEqual([]);
    expect(document.parts.map((part) => part.name)).toEqual(['Own']);
    expect([...document.parts[0]!.segments[0]!.ele]).toEqual([Number.NaN]);
    expect(toContract(document.cautions)[0]!.text).toContain('2 point(s)');
  });

  it('points directly in a track are read all the same', async () => {
    const { parts } = await readText(
      gpx(
        '<trk><trkpt lat="1" lon="2"/><trkseg><trkpt lat="1" lon="3"/></trkseg><trkpt lat="1" lon="4"/></trk>',
      ),
    );
    expect(parts[0]!.segments.map((segment) => [...segment.lon])).toEqual([[2], [3], [4]]);
  });
});

describe('reading', () => {
  it('stops when it is told to', async () => {
    const stop = new AbortController();
    stop.abort(new Error('no longer wanted'));
    await withFile(RICH, async (path) => {
      await expect(readGpx(path, 'trip.gpx', stop.signal)).rejects.toThrow('no longer wanted');
    });
  });

  it('stops in the middle of a long file', async () => {
    const stop = new AbortController();
    const long = track(...Array.from({ length: 100_000 }, (_, i) => `<trkpt lat="1" lon="${i / 1000}"/>`));
    await withFile(long, async (path) => {
      const reading = readGpx(path, 'trip.gpx', stop.signal);
      setImmediate(() => stop.abort(new Error('no longer wanted')));
      await expect(reading).rejects.toThrow('no longer wanted');
    });
  });
});
