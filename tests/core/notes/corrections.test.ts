import { describe, expect, it } from 'vitest';
import type { Correction } from '../../../server/contract/notes.ts';
import { analysisOf, DIESEL, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';

/** The one point of a map with a correction of it. */
function corrected(tags: Record<string, string>, ...corrections: Partial<Correction>[]) {
  const features = [pointFeature('node/1', 600, tags)];
  const all = corrections.map((one) => ({ id: 'node/1', on: '2026-04-20', ...one }));
  const { passings } = analysisOf({ features, trip: { ...inputOf().trip, corrections: all } });
  return passings.map(({ commodity, evidence, counts, waterClass, reasons, arrival }) => ({
    commodity,
    evidence,
    counts,
    waterClass,
    codes: reasons.map(({ code }) => code),
    text: reasons.find(({ code }) => code === 'corrected')?.text,
    arrival,
  }));
}

describe('a correction', () => {
  it('of the fuels stands in place of all that the tags say of them', () => {
    expect(
      corrected({ amenity: 'fuel', 'fuel:octane_95': 'yes' }, { fuels: ['diesel'], by: 'Ann' }),
    ).toMatchObject([
      {
        evidence: 'stated',
        counts: true,
        codes: ['corrected'],
        text: 'Corrected by you: sells diesel, on 2026-04-20 (Ann)',
      },
    ]);
    expect(corrected(DIESEL, { fuels: ['petrol'] })).toMatchObject([
      { counts: false, codes: expect.arrayContaining(['fuel-not-sold', 'corrected']) },
    ]);
    expect(corrected({ amenity: 'fuel', 'disused:fuel:diesel': 'yes' }, { fuels: ['diesel'] })).toMatchObject(
      [{ counts: true }],
    );
  });

  it('of the grade of water stands in place of what the tags say it is fit for', () => {
    expect(corrected({ man_made: 'water_well' }, { grade: 'drinking' })).toMatchObject([
      { counts: true, waterClass: 'drinking', codes: ['corrected'] },
    ]);
    expect(corrected({ ...TAP, drinking_water: 'no' }, { grade: 'drinking' })).toMatchObject([
      { counts: true },
    ]);
    expect(
      corrected({ natural: 'spring', drinking_water: 'yes', salt: 'yes' }, { grade: 'drinking' }),
    ).toMatchObject([{ counts: true }]);
    expect(corrected({ natural: 'spring', drinking_water: 'yes' }, { grade: 'treatable' })).toMatchObject([
      { counts: false, waterClass: 'treatable' },
    ]);
    expect(corrected(TAP, { grade: 'washing' })).toMatchObject([{ counts: false, waterClass: 'washing' }]);
  });

  it('of the hours stands in place of the mapped ones', () => {
    const shut = { ...DIESEL, opening_hours: 'off' };
    expect(corrected(shut)).toMatchObject([{ counts: false }]);
    expect(corrected(shut, { openingHours: '24/7' })).toMatchObject([
      { counts: true, text: 'Corrected by you: hours 24/7, on 2026-04-20' },
    ]);
  });

  it('is a look at the object: its tags are as new as that day', () => {
    const stale = { ...DIESEL, check_date: '2015-01-01' };
    expect(corrected(stale)).toMatchObject([{ evidence: 'implied' }]);
    expect(corrected(stale, { phone: '555 123' })).toMatchObject([{ evidence: 'stated' }]);
  });

  it('is the newest where there are several of one thing', () => {
    const [older, newer] = [
      { on: '2026-03-01', fuels: ['diesel' as const] },
      { on: '2026-04-01', fuels: ['petrol' as const] },
    ];
    for (const order of [
      [older, newer],
      [newer, older],
    ])
      expect(corrected({ amenity: 'fuel' }, ...order)).toMatchObject([{ counts: false }]);
  });
});
