import { describe, expect, it } from 'vitest';
import { supplyStops } from '../../../../server/core/plan/question/supply-stops.ts';
import { analysisOf, DIESEL, pointFeature, TAP } from '../../../helpers/analyse-input.ts';

describe('supply stops', () => {
  it('take passings within 3 km of the first as one, whatever they offer, and leave out what does not count', () => {
    const { passings } = analysisOf({
      features: [
        pointFeature('node/1', 100, DIESEL),
        pointFeature('node/2', 101.5, TAP),
        pointFeature('node/3', 102.9, DIESEL),
        pointFeature('node/4', 103.2, TAP),
        pointFeature('node/5', 400, { man_made: 'water_well' }),
      ],
    });
    const stops = supplyStops(passings);
    expect(stops.map(({ passings: inside }) => inside.map(({ id }) => id))).toEqual([
      ['node/1', 'node/2', 'node/3'],
      ['node/4'],
    ]);
    expect(stops[0]!.offers).toEqual({ fuel: true, water: true });
    expect(stops[0]!.fromM / 1000).toBeCloseTo(100, 6);
    expect(stops[0]!.toM / 1000).toBeCloseTo(102.9, 6);
    expect(stops[1]!.offers).toEqual({ fuel: false, water: true });
  });
});
