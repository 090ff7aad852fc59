import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../server/core/input/sources.ts';
import { seasonState } from '../../../server/core/supply/tags/seasons.ts';
import { textOf } from '../../../server/words/words-of.ts';
import { codesOf, pointOf } from './judged.ts';

const STATION = { amenity: 'fuel', 'fuel:diesel': 'yes' };

/** tags beside a station that sells diesel, evidence, counts by default, codes of all reasons. */
const CASES: [Tags, string, boolean, string[]][] = [
  [{ access: 'yes' }, 'stated', true, []],
  [{ access: 'permissive' }, 'stated', true, []],
  [{ access: 'public' }, 'stated', true, []],
  [{ access: 'customers' }, 'stated', true, ['customers-only']],
  [{ access: 'customer' }, 'stated', true, ['customers-only']],
  [{ access: 'unknown' }, 'stated', true, ['access-unknown']],
  [{ access: 'permit' }, 'stated', false, ['permit-needed']],
  [{ access: 'private' }, 'stated', false, ['not-public']],
  [{ access: 'yes;private' }, 'stated', false, ['not-public']],
  [{ access: 'military' }, 'doubtful', false, ['access-unclear', 'evidence-below']],
  [{ access: 'constructor' }, 'doubtful', false, ['access-unclear', 'evidence-below']],
  [{ disused: 'yes' }, 'doubtful', false, ['out-of-use', 'evidence-below']],
  [{ disused: 'no' }, 'stated', true, []],
  [{ abandoned: 'yes' }, 'doubtful', false, ['out-of-use', 'evidence-below']],
  [{ construction: 'yes' }, 'doubtful', false, ['out-of-use', 'evidence-below']],
  [{ 'was:amenity': 'fuel' }, 'doubtful', false, ['out-of-use', 'evidence-below']],
  [{ 'was:shop': 'bakery' }, 'stated', true, []],
  [{ opening_hours: '24/7' }, 'stated', true, []],
  [{ opening_hours: 'Mo-Fr 08:00-18:00; PH off' }, 'stated', true, ['opening-hours']],
  [{ opening_hours: 'off' }, 'doubtful', false, ['closed', 'evidence-below']],
  [{ opening_hours: 'closed "being rebuilt"' }, 'doubtful', false, ['closed', 'evidence-below']],
  [{ opening_hours: 'off; Mo-Fr 08:00-12:00' }, 'stated', true, ['opening-hours']],
  [{ seasonal: 'no' }, 'stated', true, []],
  [{ seasonal: 'yes' }, 'doubtful', false, ['season-unknown', 'evidence-below']],
  [{ self_service: 'yes', phone: '1', website: 'w' }, 'stated', true, []],
];

describe('whether anybody can make use of it', () => {
  it.each(CASES)('%j: %s', (tags, evidence, counts, codes) => {
    const point = pointOf('fuel', { ...STATION, ...tags });
    expect([point.evidence, point.counts, codesOf(point)]).toEqual([evidence, counts, codes]);
    expect(point.tags).toEqual({ ...STATION, ...tags });
  });

  it('counts at no level what is out of use, closed, not public or out of season', () => {
    const counting = { fuel: 'doubtful', water: 'doubtful' } as const;
    const on = '2026-07-01';
    for (const tags of [
      { disused: 'yes' },
      { 'removed:amenity': 'fuel' },
      { opening_hours: 'off' },
      { access: 'no' },
      { access: 'permit' },
      { seasonal: 'summer' },
      { operational_status: 'broken' },
    ]) {
      expect(pointOf('fuel', { ...STATION, ...tags }, { counting, on }).counts, JSON.stringify(tags)).toBe(
        false,
      );
    }
  });

  it('a season of the water is none of the fuel', () => {
    const tags = { ...STATION, drinking_water: 'seasonal' };
    expect(pointOf('fuel', tags).counts).toBe(true);
    expect(pointOf('water', tags).counts).toBe(false);
  });

  it("keeps a mapper's note on one line", () => {
    const point = pointOf('fuel', { ...STATION, fixme: ' moved\nnorth? ' });
    expect(point.reasons.map((reason) => textOf(reason))[0]).toMatch(/: moved north\?$/);
  });

  it('a live kind with another kind of the same commodity marked as former is out of use', () => {
    const point = pointOf('water', {
      man_made: 'water_tap',
      drinking_water: 'yes',
      'disused:amenity': 'drinking_water',
    });
    expect([textOf(point.kind), point.counts, codesOf(point)]).toEqual([
      'water tap',
      false,
      ['out-of-use', 'evidence-below'],
    ]);
  });
});

describe('seasons', () => {
  const NORTH: Record<string, number[]> = {
    spring: [3, 4, 5],
    summer: [6, 7, 8],
    autumn: [9, 10, 11],
    winter: [12, 1, 2],
  };
  const dayIn = (month: number) => `2026-${String(month).padStart(2, '0')}-10`;

  it('lie six months apart north and south of the equator', () => {
    for (const [season, months] of Object.entries(NORTH)) {
      for (let month = 1; month <= 12; month += 1) {
        const inNorth = months.includes(month);
        expect(seasonState(season, dayIn(month), 47)).toBe(inNorth ? 'in' : 'out');
        const opposite = ((month - 1 + 6) % 12) + 1;
        expect(seasonState(season, dayIn(opposite), -35)).toBe(inNorth ? 'in' : 'out');
      }
    }
  });

  it('take several words, and are unknown without a date or where a word does not tell the months', () => {
    expect(seasonState('spring;summer', dayIn(4), 47)).toBe('in');
    expect(seasonState('spring; summer', dayIn(7), 47)).toBe('in');
    expect(seasonState('spring;summer', dayIn(12), 47)).toBe('out');
    expect(seasonState('summer', null, 47)).toBe('unknown');
    for (const words of ['yes', 'wet_season', 'dry_season', 'May-Sep', 'constructor', '']) {
      expect(seasonState(words, dayIn(7), 47), words).toBe('unknown');
    }
    expect(seasonState('summer;wet_season', dayIn(7), 47)).toBe('in');
    expect(seasonState('summer;wet_season', dayIn(12), 47)).toBe('unknown');
    expect(seasonState('no', null, 47)).toBe('always');
    expect(seasonState(undefined, null, 47)).toBe('always');
  });

  it('let seasonal drinking water count in a season that is told', () => {
    const tags = { natural: 'spring', drinking_water: 'seasonal', seasonal: 'winter' };
    expect(pointOf('water', tags, { on: '2026-07-01' })).toMatchObject({ counts: true, evidence: 'stated' });
    expect(pointOf('water', tags, { on: '2026-01-01' })).toMatchObject({
      counts: false,
      evidence: 'doubtful',
    });
  });
});
