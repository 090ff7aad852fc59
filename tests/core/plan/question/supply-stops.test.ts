import { describe, expect, it } from 'vitest';
import { supplyStops } from '../../../../server/core/plan/question/supply-stops.ts';
import { analysisOf, DIESEL, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { reckoned } from '../../../helpers/reckoned.ts';

describe('the stops of all passings', () => {
  it('are numbered along the route in the answer, for what counts and what does not', () => {
    const features = [
      pointFeature('node/1', 100, DIESEL),
      pointFeature('node/2', 101.5, { man_made: 'water_well' }),
      pointFeature('node/3', 103.2, TAP),
      pointFeature('node/4', 105.9, DIESEL),
    ];
    const { passings } = analysisOf({ features });
    const stops = Object.fromEntries(passings.map(({ id, stop }) => [id, stop]));
    expect(stops).toEqual({ 'node/1': 0, 'node/2': 0, 'node/3': 1, 'node/4': 1 });
  });
});

describe('supply stops', () => {
  it('take passings within 3 km of the first as one, whatever they offer, and leave out what does not count', () => {
    const { passings } = reckoned(
      inputOf({
        features: [
          pointFeature('node/1', 100, DIESEL),
          pointFeature('node/2', 101.5, TAP),
          pointFeature('node/3', 102.9, DIESEL),
          pointFeature('node/4', 103.2, TAP),
          pointFeature('node/5', 400, { man_made: 'water_well' }),
        ],
      }),
    ).analysis;
    const stops = supplyStops(passings);
    expect(stops.map(({ passings: inside }) => inside.map(({ id }) => id))).toEqual([
      ['node/1', 'node/2', 'node/3'],
      ['node/4'],
    ]);
    expect(stops[0]!.offers).toEqual({ fuel: true, water: true });
    expect(stops[0]!.fromM).toBeCloseTo(100_000, 3);
    expect(stops[0]!.toM).toBeCloseTo(102_900, 3);
    expect(stops[1]!.offers).toEqual({ fuel: false, water: true });
  });
});
