import { expect, it } from 'vitest';
import { pointOf } from '../judged.ts';

it('tags that contradict each other are both told', () => {
  const { reasons } = pointOf('water', { amenity: 'drinking_water', drinking_water: 'no' });
  expect(reasons.find(({ code }) => code === 'tags-contradict')?.facts).toEqual({
    findings: [{ tags: ['amenity=drinking_water', 'drinking_water=no'] }],
  });
});
