import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TreatmentFile } from '../../../server/contract/treatment.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import type { SupplyReasonCode } from '../../../server/core/phrases/supply.ts';
import type { SupplyPoint } from '../../../server/core/supply/points/supply-point.ts';
import { effectOf } from '../../../server/core/supply/tags/reasons.ts';
import { treatsOf } from '../../../server/core/treatment/source/treats-of.ts';
import { anyTags } from '../supply/any-tags.ts';
import { pointsOf } from '../supply/judged.ts';
import { LAMP, lineOf, ULTRAFILTER } from './lines.ts';

const judged = (tags: Tags, stages: TreatmentFile['stages'] | null, treatEverything = false): SupplyPoint[] =>
  pointsOf(tags, {
    counting: { fuel: 'doubtful', water: 'doubtful' },
    treats: treatsOf({
      line: stages === null ? null : lineOf(stages, { treatEverything }),
      notes: [],
      on: '2026-05-04',
      altitudeM: 0,
      tankL: 70,
      ropeAndBucket: false,
      drunkLPerDay: 18,
    }),
  });
const countsOf = (points: readonly SupplyPoint[]) => points.map((point) => point.counts);

const GOOD = [ULTRAFILTER, LAMP];

describe('waters of any tags', () => {
  it('count with a line wherever they count without', () => {
    fc.assert(
      fc.property(anyTags, (tags) => {
        const without = countsOf(judged(tags, null));
        const fit = countsOf(judged(tags, GOOD));
        for (const [index, counts] of without.entries()) if (counts) expect(fit[index]).toBe(true);
      }),
    );
  });

  it('count with a line that takes out nothing as they do without any', () => {
    fc.assert(
      fc.property(anyTags, (tags) => {
        expect(countsOf(judged(tags, [{ kind: 'sediment' }]))).toEqual(countsOf(judged(tags, null)));
      }),
    );
  });

  it('count exactly where no reason blocks, and only as drinking or treated', () => {
    fc.assert(
      fc.property(anyTags, fc.boolean(), (tags, everything) => {
        for (const point of judged(tags, GOOD, everything)) {
          const codes = point.reasons.map(({ code }) => code as SupplyReasonCode);
          expect(point.counts).toBe(codes.every((code) => effectOf(code) !== 'blocks'));
          if (!point.counts || point.commodity === 'fuel') continue;
          const treated = point.waterClass === 'treatable' && codes.includes('made-fit');
          expect(treated || (point.waterClass === 'drinking' && !everything)).toBe(true);
        }
      }),
    );
  });

  it('of wells never count untested unless people are said to drink it', () => {
    fc.assert(
      fc.property(anyTags, (tags) => {
        const well: Tags = { ...tags, man_made: 'water_well', amenity: 'toilets' };
        const drunk = [well.drinking_water, well.drinkable, well['drinking_water:legal']].some(
          (value) => value === 'yes',
        );
        const water = judged(well, GOOD).find((point) => point.commodity === 'water');
        if (water?.kind.phrase === 'water-well' && water.counts) {
          expect(drunk || well.drinking_water === 'seasonal').toBe(true);
        }
      }),
    );
  });
});
