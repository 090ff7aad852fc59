import geodesic from 'geographiclib-geodesic';
import { expect, it } from 'vitest';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { routeOfDocument } from './lines.ts';

const wgs84 = geodesic.Geodesic.WGS84;

describeReal('lengths of the real routes', () => {
  it.each([
    ['routes/swiss-grand-tour.gpx', 2_200, 9],
    ['routes/grand-canyon.gpx', 3_892, 1],
  ])('%s: %d points in %d tracks, within 1e-6 of GeographicLib', async (file, vertices, parts) => {
    const document = await readGpx(realPath(file), file);
    const route = routeOfDocument(document);
    let lengthM = 0;
    let last: { lon: number; lat: number } | undefined;
    for (const { lon, lat } of document.parts.flatMap((part) => part.segments)) {
      for (let i = 0; i < lon.length; i += 1) {
        const here = { lon: lon[i]!, lat: lat[i]! };
        if (last !== undefined) lengthM += wgs84.Inverse(last.lat, last.lon, here.lat, here.lon).s12!;
        last = here;
      }
    }
    expect(route.vertices).toBe(vertices);
    expect(route.parts).toBe(parts);
    expect(Math.abs(route.lengthM / lengthM - 1)).toBeLessThan(1e-6);
  });

  it('of the Swiss route: four jumps, all under 1 km, and no step over 5 km', async () => {
    const route = routeOfDocument(await readGpx(realPath('routes/swiss-grand-tour.gpx'), 'swiss'));
    expect(route.cautions.map((caution) => caution.code)).toEqual(['bridge', 'bridge', 'bridge', 'bridge']);
    expect(route.sketchy).toEqual([]);
    expect(route.longestStepM).toBeGreaterThan(4_700);
    expect(route.longestStepM).toBeLessThan(5_000);
  });
});
