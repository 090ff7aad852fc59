import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cabState } from '../../../server/core/cab/cab-state.ts';
import type { SideState } from '../../../server/core/cab/side-state.ts';
import { answerLines } from '../../../web/cab/answer-lines.ts';
import { byHandWith } from '../../core/cab/by-hand.ts';

const FILE = {
  fuelKind: 'diesel' as const,
  helpHours: 24,
  basis: { kind: 'plan' as const, waterLPerDay: 12 },
};
const NONE = { fuel: [], water: [] };

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function at(km: number, litres: { fuel: number | null; water: number | null }, backL: number | null = 10) {
  const atM = km * 1000;
  const state = cabState(byHandWith(backL), { atM, litres, left: false, failed: NONE });
  const { on, back, ...lines } = answerLines(FILE, state, atM);
  return {
    state,
    ...lines,
    onHead: on?.head ?? null,
    on: on?.lines.map(plain) ?? [],
    backHead: plain(back?.head ?? ''),
    back: back?.lines.map(plain) ?? [],
  };
}

describe('an answer in words', () => {
  it('says where to, how far, what is over and until where one may turn back', () => {
    const { head, on, onHead, back, backHead, help, rests } = at(40, { fuel: 20.9, water: 30 });
    expect({ head, onHead, help }).toEqual({ head: 'Go on', onHead: 'Go on: yes', help: [] });
    expect(on).toEqual([
      'Diesel to Aldhaven, 60 km: 4 L over the reserve, worth some 49 km.',
      'Water to Aldhaven, 60 km: 14 L over the reserve, worth some 1.1 days.',
    ]);
    // 20.9 l at km 40: out and back takes 2 l for ten km, 14 l to begin with.
    expect(backHead).toBe('Go back: yes, for 34 km more');
    expect(back[0]).toBe('Diesel to Ketta, 40 km: 6 L over the reserve.');
    expect(back).toContain('Before km 74 you can still turn back to Ketta.');
    expect(rests.map(plain)).toContain('Aldhaven, km 100, giving diesel');
  });

  it('says what is missing, by how much, and what to do', () => {
    const { head, todo, onHead, on, backHead } = at(40, { fuel: 15.2, water: 30 });
    expect({ head, onHead }).toEqual({ head: 'Turn back', onHead: 'Go on: only at the cost of the reserve' });
    expect(plain(todo[0] ?? '')).toBe('Diesel is 1 L short of the way on with the reserve.');
    expect(on[0]).toBe('Diesel to Aldhaven, 60 km: 1 L short of the reserve, 9 L left there.');
    expect(backHead).toBe('Go back: yes, for 6 km more');
  });

  it('calls for help where neither way holds, and never for calm', () => {
    const { head, onHead, on, backHead, help } = at(40, { fuel: 3, water: 30 });
    expect({ head, onHead }).toEqual({ head: 'Neither way is sure', onHead: 'Go on: no' });
    expect(on[0]).toBe('Diesel to Aldhaven, 60 km: 13 L short with the reserve, runs dry at km 70.');
    expect(backHead).toBe('Go back: no');
    expect(help.map(plain)).toEqual([
      'All the water aboard lasts some 2.5 days at the high use.',
      'Help takes some 24 h to come, as the trip says.',
      expect.stringContaining('Never ration drinking water'),
    ]);
  });

  it('is none before the gauges were read, and says what cannot be driven back', () => {
    const unread = at(40, { fuel: null, water: 30 });
    expect({ head: unread.head, onHead: unread.onHead }).toEqual({
      head: 'Read the gauges',
      onHead: 'Go on: not known',
    });
    expect(unread.on[0]).toBe('Diesel: not read yet.');
    expect(at(40, { fuel: 20, water: 20 }, null).backHead).toBe('Go back: no, the way cannot be driven back');
  });

  it('never tells of more than there is over the reserve, nor of less that is missing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 99, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (km, litres) => {
          const { state, on } = at(km, { fuel: litres, water: 100 });
          const { marginL } = (state.fuel as SideState).on;
          const told = Number(/: (\d+) L/.exec(on[0] ?? '')?.[1]);
          if (marginL >= -1e-9) {
            expect(told).toBeLessThanOrEqual(marginL + 1e-5);
            expect(told).toBeGreaterThan(marginL - 1);
          } else {
            expect(told).toBeGreaterThanOrEqual(-marginL - 1e-5);
            expect(told).toBeLessThan(-marginL + 1);
          }
        },
      ),
    );
  });
});
