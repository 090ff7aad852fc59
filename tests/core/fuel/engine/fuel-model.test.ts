import { describe, expect, it } from 'vitest';
import { settledDetail, settleFuelModel } from '../../../../server/core/fuel/engine/fuel-model.ts';
import { type FuelDetail, rigWith } from '../facts.ts';

const settled = (detail: FuelDetail) => {
  const { fuel } = rigWith(detail);
  const model = settleFuelModel(fuel, () => {});
  return { model, detail: settledDetail(fuel, model) };
};

describe('what a rig tells of its fuel use', () => {
  it('has the surfaces whose factor is its own', () => {
    expect(settled({}).model.ownFactors).toEqual([]);
    expect(settled({ surfaceFactors: { sand: 2, gravel: 1.2 } }).model.ownFactors.toSorted()).toEqual([
      'gravel',
      'sand',
    ]);
  });

  it('comes back with nothing that it did not tell', () => {
    expect(settled({}).detail).toStrictEqual({});
    expect(settled({ loadPercentPer100Kg: 3 }).detail).toStrictEqual({ loadPercentPer100Kg: 3 });
  });
});
