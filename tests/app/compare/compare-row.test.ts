import { describe, expect, it } from 'vitest';
import { compareRow } from '../../../server/app/compare/compare-row.ts';
import type { Gap } from '../../../server/contract/analysis.ts';
import { analysisOf } from '../../helpers/analyse-input.ts';
import { gapOf, reportOf } from '../gap-builder.ts';

const analysis = analysisOf();
const fuelOf = (...gaps: Gap[]) => compareRow('rig', { ...analysis, fuel: reportOf(gaps) }).fuel;

describe('the worst gap of a rig', () => {
  it('is that of the worst verdict: short, then unknown, then into the reserve', () => {
    const enough = gapOf(0, 100, { marginL: 1 });
    const reserve = gapOf(100, 200, { verdict: 'into-reserve', marginL: -5, extraL: 5, extraCans: 1 });
    const unknown = gapOf(200, 300, { verdict: 'unknown', marginL: -50, extraL: 50, extraCans: 3 });
    const short = gapOf(300, 400, { verdict: 'short', marginL: -30, extraL: 30, extraCans: 2 });
    expect(fuelOf(enough, reserve).worst.index).toBe(1);
    expect(fuelOf(enough, reserve, unknown).worst.index).toBe(2);
    const all = fuelOf(enough, reserve, unknown, short);
    expect(all.worst).toMatchObject({ index: 3, verdict: 'short', marginL: -30, lengthKm: 100 });
    // What is lacked most may be lacked elsewhere.
    expect(all).toMatchObject({ extraL: 50, extraCans: 3, cansOwned: 2, cansMissing: 1 });
    expect(all.verdicts).toEqual({ enough: 1, 'into-reserve': 1, short: 1, unknown: 1 });
  });

  it('is among those of one verdict the one of least margin, the first of ties', () => {
    const gaps = [gapOf(0, 9, { marginL: 8 }), gapOf(9, 20, { marginL: 3 }), gapOf(20, 30, { marginL: 3 })];
    expect(fuelOf(...gaps).worst.index).toBe(1);
    expect(fuelOf(...gaps)).toMatchObject({ extraL: 0, extraCans: 0, cansMissing: 0 });
  });

  it('comes with all gaps in short, for a picture', () => {
    expect(fuelOf(gapOf(0, 9), gapOf(9, 20, { acrossNoData: true })).gaps).toEqual([
      { fromKm: 0, toKm: 9, verdict: 'enough', acrossNoData: false, marginL: 70 },
      { fromKm: 9, toKm: 20, verdict: 'enough', acrossNoData: true, marginL: 70 },
    ]);
  });

  it('has no masses where the rig tells none', () => {
    expect(compareRow('rig', analysis).mass).toBeNull();
  });
});
