import { expect, it } from 'vitest';
import { pointOf } from '../judged.ts';

it('a tag that says what the kind itself says is no second finding of it', () => {
  const findings = (tags: Record<string, string>) =>
    pointOf('fuel', tags)
      .reasons.filter(({ code }) => code === 'for-boats')
      .map(({ facts }) => facts);
  const bare = findings({ waterway: 'fuel' });
  expect(bare).toHaveLength(1);
  expect(findings({ waterway: 'fuel', harbour: 'yes' })).toEqual(bare);
  // Of a kind that says nothing of it the tag does.
  expect(findings({ amenity: 'fuel', harbour: 'yes' })).toEqual([{ findings: [{ tags: ['harbour=yes'] }] }]);
});
