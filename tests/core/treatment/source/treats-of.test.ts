import { expect, it } from 'vitest';
import { treatsOf } from '../../../../server/core/treatment/source/treats-of.ts';
import { LAMP, lineOf } from '../lines.ts';

/** A lamp, and a note that the spring node/2 is cloudy: 50 NTU, where it takes clear water only. */
function fits(ids: readonly string[]): (boolean | undefined)[] {
  const treats = treatsOf({
    line: lineOf([LAMP]),
    notes: [{ id: 'node/2', on: '2026-05-01', saltOk: true, turbidityNtu: 50 }],
    on: '2026-05-04',
    altitudeM: 0,
    tankL: 70,
    ropeAndBucket: false,
    drunkLPerDay: 5,
  });
  return ids.map((id) => treats?.({ ids: [id], ruleKey: 'natural=spring', tags: {} }).line?.fit);
}

it('a note on one water is no matter of another of its kind, whichever is judged first', () => {
  expect(fits(['node/1', 'node/2', 'node/3'])).toEqual([true, false, true]);
  expect(fits(['node/2', 'node/1', 'node/2'])).toEqual([false, true, false]);
});
