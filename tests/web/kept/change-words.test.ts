import { describe, expect, it } from 'vitest';
import type { TripFile } from '../../../server/contract/trip.ts';
import { changeWords } from '../../../web/kept/change-words.ts';
import type { Said } from '../../../web/state/said.ts';
import { sampleReply } from '../sample-reply.ts';

const { said } = sampleReply();
const before: Said = { ...said, trip: { corridorKm: 5 } };
const nameOf = (id: string) => (id === 'node/7' ? 'Haulage depot' : id);
const words = (trip: TripFile) => changeWords(before, { ...before, trip }, nameOf);

describe('the words of a change', () => {
  it('name the field and what it is now', () => {
    expect(words({ corridorKm: 8 })).toBe('Corridor either side: 8');
    expect(words({ ...before.trip, departure: '2027-05-03' })).toBe('Departure: 2027-05-03');
    expect(words({})).toBe('Corridor either side: no longer told');
  });

  it('tell of a supply by its name what was found out', () => {
    const finding = { id: 'node/7', on: '2026-05-03', works: false } as const;
    const fails = words({ ...before.trip, confirmations: [finding] });
    expect(fails).toBe('Haulage depot does not work');
    const works = words({ ...before.trip, confirmations: [{ ...finding, works: true }] });
    expect(works).toBe('Haulage depot works');
    const found = { ...before, trip: { ...before.trip, confirmations: [finding] } };
    expect(changeWords(found, before, nameOf)).toBe('Haulage depot: what was found out is taken back');
  });

  it('count what came into a list and what went', () => {
    const stay = { atKm: 10, days: 1 };
    expect(words({ ...before.trip, stays: [stay, stay] })).toBe('stays: 2 added');
    const with2 = { ...before, trip: { ...before.trip, stays: [stay, { ...stay, atKm: 20 }] } };
    const with1 = { ...before, trip: { ...before.trip, stays: [stay] } };
    expect(changeWords(with2, with1, nameOf)).toBe('stays: 1 taken out');
  });

  it('stay short where much was changed, and never empty', () => {
    const long = words({
      ...{ name: 'n'.repeat(120), allowancePercent: 7, detourFactor: 2 },
      ...{ sparseStepKm: 9, campDays: 1 },
    });
    expect(long).toContain('more');
    expect(long.length).toBeLessThanOrEqual(300);
    expect(changeWords(before, before, nameOf)).toBe('Written otherwise');
  });
});
