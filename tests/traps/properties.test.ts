import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import {
  FUEL,
  isCalm,
  type MapObject,
  osmXml,
  placeAt,
  StraightRoute,
  straightMap,
  WATER,
} from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

const OLD = '2026-01-01T00:00:00Z';
const NEW = '2026-10-01T00:00:00Z';

/** Supplies here and there along the route, in the versions that two maps of different days have. */
const objectOf = fc.record({
  km: fc.integer({ min: 5, max: 1195 }),
  water: fc.boolean(),
  open: fc.boolean(),
  versions: fc.constantFrom<[number, number]>([1, 1], [1, 2], [3, 4]),
});
const objects = fc.uniqueArray(objectOf, { minLength: 1, maxLength: 6, selector: ({ km }) => km });

type Drawn = typeof objectOf extends fc.Arbitrary<infer T> ? T : never;

const drawn = ({ km, water, open }: Drawn, version: number, timestamp: string): MapObject => ({
  ...(water ? WATER : FUEL),
  id: 1000 + km,
  ...placeAt(km),
  tags: { ...(water ? WATER : FUEL).tags, ...(open ? {} : { access: 'private' }) },
  version,
  timestamp,
});

/** What the answer says of supplies and stretches, whichever files it comes from. */
const said = ({ passings, fuel, water }: Analysis) => ({
  passings: passings.map(({ id, atKm, evidence, counts }) => ({ id, atKm, evidence, counts })),
  gaps: [fuel, water].map(({ gaps }) =>
    gaps.map(({ verdict, marginL, acrossNoData }) => [verdict, marginL, acrossNoData]),
  ),
});

describe('maps of the straight route', { tags: 'slow' }, () => {
  it('an older copy added to a newer one changes nothing for objects that the newer one has', async () => {
    await fc.assert(
      fc.asyncProperty(objects, fc.boolean(), async (list, newFirst) => {
        const newer = osmXml({
          objects: straightMap({ more: list.map((one) => drawn(one, one.versions[1], NEW)) }),
          date: NEW,
        });
        const older = osmXml({
          objects: straightMap({
            more: list
              .map((one) =>
                drawn(
                  { ...one, open: true },
                  one.versions[0],
                  one.versions[0] === one.versions[1] ? NEW : OLD,
                ),
              )
              .filter((_, index) => (list[index]?.versions[0] ?? 0) !== (list[index]?.versions[1] ?? 0)),
          }),
          date: OLD,
        });
        const alone = said(await route.analysis({ 'new.osm': newer }));
        const files = newFirst
          ? { 'new.osm': newer, 'old.osm': older }
          : { 'old.osm': older, 'new.osm': newer };
        expect(said(await route.analysis(files))).toEqual(alone);
      }),
      { numRuns: 12 },
    );
  }, 120_000);

  it('an object taken out never makes the answer calmer', async () => {
    await fc.assert(
      fc.asyncProperty(objects, fc.nat(), async (list, nth) => {
        const all = list.map((one) => drawn(one, 1, OLD));
        const fewer = all.filter((_, index) => index !== nth % all.length);
        const analysisOf = (more: MapObject[]) =>
          route.analysis({ 'land.osm': osmXml({ objects: straightMap({ fuel: null, water: null, more }) }) });
        const [before, after] = [await analysisOf(all), await analysisOf(fewer)];
        for (const commodity of ['fuel', 'water'] as const)
          if (!isCalm(before, commodity)) expect(isCalm(after, commodity)).toBe(false);
      }),
      { numRuns: 12 },
    );
  }, 120_000);
});
