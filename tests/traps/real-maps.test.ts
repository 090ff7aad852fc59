import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import { runCli } from '../cli/run-cli.ts';
import { describeSlowReal, realPath } from '../helpers/real.ts';
import { demoPath } from '../http/form.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'real-maps-'));
});
afterAll(() => rm(folder, { recursive: true }));

type Place = readonly [lon: number, lat: number];
const RIG = demoPath('rig-simple.yaml');

const analyses = new Map<string, Promise<Analysis>>();

/** The analysis of a straight line between two places with one real extract; where it was asked for before, the same. */
function analysisOf(
  extract: string,
  from: Place,
  to: Place,
  further: readonly string[] = [],
): Promise<Analysis> {
  const key = JSON.stringify([extract, from, to, further]);
  const analysis = analyses.get(key) ?? analyse([extract, ...further], from, to);
  analyses.set(key, analysis);
  return analysis;
}

async function analyse(
  extracts: readonly string[],
  [fromLon, fromLat]: Place,
  [toLon, toLat]: Place,
): Promise<Analysis> {
  const path = join(folder, 'route.gpx');
  const points = Array.from({ length: 21 }, (_, i) => {
    const share = i / 20;
    return `<trkpt lon="${fromLon + share * (toLon - fromLon)}" lat="${fromLat + share * (toLat - fromLat)}"/>`;
  });
  await writeFile(path, `<gpx version="1.1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`);
  const supplies = extracts.flatMap((one) => ['--supply', realPath(one)]);
  const { out, err } = await runCli('gaps', path, ...supplies, '--rig', RIG, '--json');
  expect(err).toBe('');
  return JSON.parse(out) as Analysis;
}

const VADUZ: Place = [9.5215, 47.1387];
const SCHAAN: Place = [9.5087, 47.1651];

describeSlowReal('maps as people have them', () => {
  it.each(['extracts/liechtenstein-2013.osm.pbf', 'extracts/liechtenstein-2013.osm.bz2'])(
    '%s covers its own land and not the Swiss bank of the Rhine, though its box does',
    async (extract) => {
      const own = await analysisOf(extract, VADUZ, SCHAAN);
      for (const { cover } of [own.fuel, own.water]) {
        expect(cover.length).toBe(1);
        expect((cover[0]?.toKm ?? 0) - (cover[0]?.fromKm ?? 0)).toBeGreaterThan(own.route.lengthKm * 0.95);
      }
      const swiss = await analysisOf(extract, [9.474, 47.225], [9.49, 47.27]);
      expect([swiss.fuel.cover, swiss.water.cover], 'Switzerland was said to be on the map').toEqual([
        [],
        [],
      ]);
      const austrian = await analysisOf(extract, [9.605, 47.235], [9.635, 47.265]);
      expect([austrian.fuel.cover, austrian.water.cover], 'Austria was said to be on the map').toEqual([
        [],
        [],
      ]);
    },
  );

  it.each([
    'extracts/liechtenstein-2013.osm.pbf',
    'extracts/liechtenstein-2013.osm.bz2',
    'extracts/liechtenstein-2015.osm.pbf',
  ])('%s has the Rhine and the border between Vaduz and the stations of the Swiss bank', async (extract) => {
    const swiss = 'extracts/switzerland-fuel-2026.overpass.json';
    const { passings } = await analysisOf(extract, VADUZ, SCHAAN, [swiss]);
    const fuel = passings.filter(({ commodity }) => commodity === 'fuel');
    const across = fuel.filter(({ lon, lat }) => lon < 9.502 && lat < 47.18);
    expect(across.length).toBeGreaterThanOrEqual(8);
    const told = across.map(({ id, evidence, counts, reasons }) => ({
      id,
      evidence,
      counts,
      border: reasons.some(
        ({ code, text }) => code === 'no-way-across' && text.includes('a national border'),
      ),
    }));
    expect(told).toEqual(across.map(({ id }) => ({ id, evidence: 'doubtful', counts: false, border: true })));
    // In Vaduz itself, on this bank and beside a road, nothing lies between.
    const own = fuel.filter(({ lon, lat }) => lon > 9.505 && lat < 47.17);
    expect(own.length).toBeGreaterThanOrEqual(4);
    expect(
      own.flatMap(({ id, reasons }) => reasons.flatMap(({ code }) => (code === 'no-way-across' ? [id] : []))),
    ).toEqual([]);
  });

  it.each([
    ['extracts/liechtenstein-2013.osm.pbf', '2013-08-03T19:00:02Z'],
    ['extracts/liechtenstein-2015.osm.pbf', '2015-07-27T21:14:01Z'],
    ['extracts/monaco-2023.osm.pbf', '2023-11-21T21:21:31Z'],
    ['extracts/norway-south-drinking-water-2024.geojson', '2024-11-04T19:44:15Z'],
    ['extracts/switzerland-fuel-2026.overpass.json', '2026-08-01T12:38:35Z'],
  ])('%s says how old it is', async (extract, date) => {
    const { extracts } = await analysisOf(extract, VADUZ, SCHAAN);
    expect(extracts[0]).toMatchObject({ asOf: date, asOfBy: 'file' });
    expect(`${extracts[0]?.attribution} ${extracts[0]?.licence}`).toContain('ODbL');
  });

  it.each(['extracts/liechtenstein-2013.osm.bz2', 'extracts/switzerland-fuel-2026.waypoints.gpx'])(
    '%s does not, and the answer says so',
    async (extract) => {
      const { extracts } = await analysisOf(extract, VADUZ, SCHAAN);
      expect(extracts[0]).toMatchObject({ asOf: null, asOfBy: null });
    },
  );
});
