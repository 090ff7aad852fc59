import { describe, expect, it } from 'vitest';
import { at } from '../../../../server/core/lists/at.ts';
import { type RunPoint, runOf } from '../../../../server/core/plan/drive/run.ts';
import { struckFigures } from '../../../../server/core/plan/what-if/struck-figures.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { plainStretch } from './small-basis.ts';

describe('a vehicle that is struck', () => {
  // 127 l, 17 in reserve, 400 km at 0.17 l: 59 arrive. 100 l are lost.
  const run = runOf(plainStretch({ lengthKm: 400, rigFile: EXAMPLE_RIG, tankL: 127 }));
  const mishap = { lostL: () => 100 };
  const struckAt = (point: RunPoint) =>
    struckFigures(
      {
        run,
        point,
        onL: run.arriveL - 100,
        backL: point.backL === null ? null : point.litres - 100 - point.backL,
      },
      mishap,
    );

  it('goes back where that leaves more than going on', () => {
    // At the start 27 l are left, and there it is; on the way 41 would be missing.
    const figures = struckAt(at(run.points, 0));
    expect(figures).toMatchObject({ next: 'back', lostL: 100, endsAtM: null });
    expect(figures.arriveL).toBeCloseTo(27, 9);
    expect(figures.marginL).toBeCloseTo(10, 9);
  });

  it('goes on where going back leaves less, or cannot be driven', () => {
    const end = at(run.points, run.points.length - 1);
    for (const point of [end, { ...end, backL: null }]) {
      const figures = struckAt(point);
      expect(figures).toMatchObject({ next: 'on', verdict: 'short' });
      expect(figures.arriveL).toBeCloseTo(-41, 9);
    }
  });
});
