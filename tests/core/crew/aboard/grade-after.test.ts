import { describe, expect, test } from 'vitest';
import type { WaterClass } from '../../../../server/contract/common.ts';
import { atTap, gradeAfter, type Mix, waterFilled } from '../../../../server/core/crew/aboard/grade-after.ts';

const fill = (water: WaterClass): Mix => ({ kind: 'fill', water });
const disinfect = (what: 'container' | 'pipes' | 'both'): Mix => ({ kind: 'disinfect', what });

describe('mixing water', () => {
  test.each<[string, Mix[], WaterClass, WaterClass]>([
    ['nothing', [], 'drinking', 'drinking'],
    ['drinking water only', [fill('drinking')], 'drinking', 'drinking'],
    ['a little of a lower class', [fill('drinking'), fill('treatable')], 'treatable', 'treatable'],
    ['better water after worse', [fill('washing'), fill('drinking')], 'washing', 'washing'],
    ['the lowest of several', [fill('treatable'), fill('none'), fill('washing')], 'none', 'none'],
    [
      'the container disinfected, not the pipes',
      [fill('washing'), disinfect('container')],
      'drinking',
      'washing',
    ],
    [
      'the pipes alone: the container fills them again',
      [fill('washing'), disinfect('pipes')],
      'washing',
      'washing',
    ],
    ['both disinfected', [fill('washing'), disinfect('both')], 'drinking', 'drinking'],
    [
      'container, then pipes',
      [fill('none'), disinfect('container'), disinfect('pipes')],
      'drinking',
      'drinking',
    ],
  ])('%s', (_, mixes, container, pipes) => {
    const after = gradeAfter(mixes);
    expect(after).toEqual({ container, pipes });
    const worse = ['none', 'washing', 'treatable', 'drinking'].find(
      (one) => one === container || one === pipes,
    );
    expect(atTap(after)).toBe(worse);
  });

  test('a start that is not clean stays so', () => {
    const start = { container: 'washing', pipes: 'washing' } as const;
    expect(gradeAfter([fill('drinking')], start)).toEqual(start);
  });
});

test('treatment on filling makes treatable water fit before it is in the tank; at the tap it does not', () => {
  expect(waterFilled('treatable', 'filling')).toBe('drinking');
  expect(waterFilled('treatable', 'tap')).toBe('treatable');
  expect(waterFilled('treatable', null)).toBe('treatable');
  expect(waterFilled('washing', 'filling')).toBe('washing');
});
