import { describe, expect, it } from 'vitest';
import { tabFor } from '../../../web/state/use-look.ts';

describe('what is chosen on strip or map', () => {
  it('brings its table to the front', () => {
    expect(tabFor({ supply: 'node/1' }, 'notes')).toBe('supplies');
    expect(tabFor({ gap: { commodity: 'fuel', index: 0 } }, 'rig')).toBe('gaps');
  });

  it('leaves the days in front, which a click on the strip marks a place for', () => {
    expect(tabFor({ gap: { commodity: 'water', index: 2 } }, 'days')).toBe('days');
  });

  it('changes nothing when it is let go, or only pointed at', () => {
    expect(tabFor({ supply: null }, 'rig')).toBe('rig');
    expect(tabFor({ gap: null }, 'carry')).toBe('carry');
    expect(tabFor({}, 'compare')).toBe('compare');
  });
});
