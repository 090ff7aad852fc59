import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { FuelKind } from '../../../server/contract/rig.ts';
import type { MappedFeature, Tags } from '../../../server/core/input/sources.ts';
import { classify } from '../../../server/core/supply/judge/rules.ts';
import { toSupplyFeatures } from '../../../server/core/supply/points/features.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { codesOf, PLAIN } from './judged.ts';

interface Element {
  type: string;
  id: number;
  lat?: number;
  lon?: number;
  center?: { lat: number; lon: number };
  tags: Tags;
}

describeReal('Swiss fuel stations of 2026', () => {
  const { elements } = JSON.parse(
    readFileSync(realPath('extracts/switzerland-fuel-2026.overpass.json'), 'utf8'),
  ) as { elements: Element[] };
  const mapped = elements.map((element): MappedFeature => {
    const { lon, lat } = element.center ?? { lon: element.lon!, lat: element.lat! };
    return {
      id: `${element.type}/${element.id}`,
      geometry: { type: 'Point', coordinates: [lon, lat] },
      tags: element.tags,
      editedAt: null,
    };
  });
  const { features, skipped } = toSupplyFeatures(mapped);
  const pointsFor = (fuelKind: FuelKind) =>
    classify(features, { ...PLAIN, fuelKind }).filter((point) => point.commodity === 'fuel');
  const countOf = (keep: (tags: Tags) => boolean) => elements.filter(({ tags }) => keep(tags)).length;

  it('all become points, none skipped or merged', () => {
    expect(elements).toHaveLength(3768);
    expect(skipped).toEqual([]);
    expect(features).toHaveLength(3768);
  });

  it('diesel is stated, implied or doubtful as a plain filter of the tags counts it', () => {
    const points = pointsFor('diesel');
    const yes = (tags: Tags, ...keys: string[]) => keys.some((key) => tags[key] === 'yes');
    const plain = (tags: Tags) => yes(tags, 'fuel:diesel', 'fuel:gasoil');
    const kin = (tags: Tags) =>
      tags['fuel:diesel'] === undefined &&
      yes(tags, 'fuel:HGV_diesel', 'fuel:GTL_diesel', 'fuel:HVO', 'fuel:HVO100');
    const silent = (tags: Tags) =>
      !Object.keys(tags).some(
        (key) => key.startsWith('fuel:') && !key.startsWith('fuel:adblue') && tags[key] !== 'no',
      ) && tags['fuel:diesel'] === undefined;
    // Stations for boats, one of the army, and one for which motorcars are refused: not for cars.
    const notForCars = (tags: Tags) =>
      tags['seamark:type'] !== undefined ||
      tags.waterway === 'fuel' ||
      tags.military === 'yes' ||
      tags.motorcar === 'no';
    const troubled = (tags: Tags) =>
      notForCars(tags) ||
      /^(off|closed)/.test(tags.opening_hours ?? '') ||
      tags.hgv === 'only' ||
      (tags.seasonal !== undefined && tags.seasonal !== 'no') ||
      Object.keys(tags).some((key) =>
        /^(disused|abandoned|was|removed|closed|construction)(:amenity)?$/.test(key),
      ) ||
      tags.operational_status !== undefined;
    const stated = countOf((tags) => (plain(tags) || kin(tags)) && !troubled(tags));
    const implied = countOf((tags) => silent(tags) && !troubled(tags));
    const found = (evidence: string) => points.filter((point) => point.evidence === evidence).length;
    expect([found('stated'), found('implied'), found('doubtful'), found('confirmed')]).toEqual([
      stated,
      implied,
      3768 - stated - implied,
      0,
    ]);
    // As counted once from the file: most stations tell nothing of their fuels. Nine are not for cars, one sells "gasoil".
    expect([stated, implied]).toEqual([1667, 2013]);
  });

  it('those with diesel refused, or not open to the public, do not count', () => {
    const points = pointsFor('diesel');
    const withCode = (code: string) => points.filter((point) => codesOf(point).includes(code));
    expect(withCode('fuel-not-sold').length).toBe(
      countOf(
        (tags) =>
          tags['fuel:diesel'] === 'no' &&
          tags['fuel:HGV_diesel'] !== 'yes' &&
          tags['fuel:GTL_diesel'] !== 'yes' &&
          tags['fuel:biodiesel'] !== 'yes',
      ),
    );
    const closedOff = countOf((tags) => tags.access === 'private' || tags.access === 'no');
    expect(closedOff).toBe(40);
    expect(withCode('not-public')).toHaveLength(closedOff);
    expect(withCode('not-public').some((point) => point.counts)).toBe(false);
  });

  it('LPG and CNG count only where they are listed', () => {
    for (const [fuelKind, key] of [
      ['lpg', 'fuel:lpg'],
      ['cng', 'fuel:cng'],
    ] as const) {
      const counts = pointsFor(fuelKind).filter((point) => point.counts).length;
      expect(counts).toBe(
        countOf((tags) => tags[key] === 'yes' && !/^(private|no)$/.test(tags.access ?? '')),
      );
      expect(counts).toBeGreaterThan(10);
    }
  });
});
