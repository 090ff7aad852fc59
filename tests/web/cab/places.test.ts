import { describe, expect, it } from 'vitest';
import type { CabMark } from '../../../server/core/cab/cab-file.ts';
import { cabState } from '../../../server/core/cab/cab-state.ts';
import { nextLines } from '../../../web/cab/places.ts';
import { byHandWith } from '../../core/cab/by-hand.ts';

const mark = (kind: CabMark['kind'], km: number, name: string): CabMark => ({
  kind,
  commodities: [],
  atM: km * 1000,
  name,
  todo: [],
  contact: null,
});

const UNREAD = { fuel: null, water: null };

function namesFrom(km: number, marks: readonly CabMark[]): string[] {
  const here = { atM: km * 1000, left: false };
  const state = cabState(byHandWith(10), { ...here, litres: UNREAD, failed: { fuel: [], water: [] } });
  return nextLines({ fuelKind: 'diesel', marks }, state, here).map(({ name }) => name);
}

describe('what comes next', () => {
  it('has the stops, whatever cautions there are at the start', () => {
    const cautions = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((name) => mark('caution', 0, name));
    const stops = [mark('stop', 40, 'Ketta'), mark('night', 60, 'Camp'), mark('end', 100, 'Aldhaven')];
    expect(namesFrom(0, [mark('start', 0, 'Home'), ...cautions, ...stops])).toEqual([
      'Ketta',
      'Camp',
      'Aldhaven',
    ]);
  });

  it('has the next two cautions on the way, in their place, and none behind the last line', () => {
    const cautions = [30, 35, 37].map((km) => mark('caution', km, `caution ${km}`));
    const stops = [10, 20, 40, 50, 60, 70, 80].map((km) => mark('stop', km, `stop ${km}`));
    const marks = [...stops, ...cautions].sort((a, b) => a.atM - b.atM);
    expect(namesFrom(15, marks)).toEqual([
      'stop 20',
      'caution 30',
      'caution 35',
      'stop 40',
      'stop 50',
      'stop 60',
      'stop 70',
      'stop 80',
    ]);
    expect(namesFrom(0, [...stops, mark('caution', 75, 'far')])).not.toContain('far');
  });
});
