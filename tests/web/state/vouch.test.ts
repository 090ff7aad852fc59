import { describe, expect, it } from 'vitest';
import { vouchableAt, withoutSure, withSure } from '../../../web/state/vouch.ts';
import { sampleReply } from '../sample-reply.ts';

const refusal = {
  code: 'rig-invalid',
  title: 'Rig not usable',
  status: 422,
  detail: '3 L/100 km; expected usually 6 to 40 L/100 km',
  source: 'rig',
  place: '/fuel/litresPer100Km',
  remedy: null,
  vouchable: true,
};

describe('an unusual figure', () => {
  const { said } = sampleReply();

  it('is one of the rig or of the trip, and no other refusal is one', () => {
    expect(vouchableAt(refusal)).toEqual({ file: 'rig', path: '/fuel/litresPer100Km' });
    expect(vouchableAt({ ...refusal, code: 'trip-invalid', place: '/campAfterHours' })).toEqual({
      file: 'trip',
      path: '/campAfterHours',
    });
    expect(vouchableAt({ ...refusal, vouchable: false })).toBeNull();
  });

  it('is listed once as meant so, and struck from the list with nothing left behind', () => {
    const once = withSure(said, 'rig', '/a');
    const twice = withSure(withSure(once, 'rig', '/a'), 'rig', '/b');
    expect(twice.rig.sure).toEqual(['/a', '/b']);
    expect(twice.trip).toBe(said.trip);
    expect(withoutSure(twice, 'rig', '/a').rig.sure).toEqual(['/b']);
    expect(withoutSure(once, 'rig', '/a')).toEqual(said);
  });
});
