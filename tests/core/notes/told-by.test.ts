import { describe, expect, it } from 'vitest';
import type { TripFile } from '../../../server/contract/trip.ts';
import { analysisOf, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';

/** What is said of the one water of a map. */
function saidOf(tags: Record<string, string>, trip: Partial<TripFile>): (string | undefined)[] {
  const features = [pointFeature('node/1', 600, tags)];
  const [passing] = analysisOf({ features, trip: { ...inputOf().trip, ...trip } }).passings;
  return passing?.reasons.map(({ text }) => text) ?? [];
}
const SAID = { by: 'Ann', phone: '555 123', words: 'sweet' };

describe('a note says who told it', () => {
  it('of litres that are to be had, once it has a day', () => {
    const stop = { id: 'node/1', mostLitres: { water: 40 } };
    expect(saidOf(TAP, { plan: { stops: [stop] } })).toEqual([]);
    expect(saidOf(TAP, { plan: { stops: [{ ...stop, on: '2026-04-20', ...SAID }] } })).toEqual([
      'No more than 40 l is to be had, as you noted on 2026-04-20 (Ann, telephone 555 123: "sweet")',
    ]);
  });

  it('of salt', () => {
    const well = { man_made: 'water_well' };
    const note = { id: 'node/1', on: '2026-04-20', ...SAID };
    expect(saidOf(well, { waterNotes: [{ ...note, saltOk: true }] })).toContain(
      'You noted on 2026-04-20 (Ann, telephone 555 123: "sweet") that it is not salty',
    );
    expect(saidOf(well, { waterNotes: [{ ...note, saltOk: false }] })).toContain(
      'You noted on 2026-04-20 (Ann, telephone 555 123: "sweet") that it is salty: only reverse osmosis takes out salt',
    );
  });
});
