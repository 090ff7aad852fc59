import { expect, it } from 'vitest';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { plainStretch } from '../what-if/small-basis.ts';

it('a run has one point where the way back ends, in route order with those where cans are poured', () => {
  // 10 l/100 km, a tank of 50 l and one can of 20 l: poured at km 200, behind the place where a one-way street begins.
  const rigFile = {
    ...EXAMPLE_RIG,
    fuel: {
      ...EXAMPLE_RIG.fuel,
      litresPer100Km: { low: 10, typical: 10, high: 10 },
      tanks: [{ name: 'main', litres: 50 }],
    },
  };
  const stretch = plainStretch({ lengthKm: 400, rigFile, tankL: 50, cans: 1 });
  const course = { ...stretch.course, oneWay: [{ fromM: 100_000, toM: 110_000 }] };
  const { points } = runOf({ ...stretch, course });
  expect(points.map(({ atM }) => atM / 1000)).toEqual([0, 100, 200, 200, 400]);
  expect(points.map(({ litres }) => Math.round(litres))).toEqual([70, 60, 50, 50, 30]);
  expect(points.map(({ backL }) => (backL === null ? null : Math.round(backL)))).toEqual([
    0,
    10,
    null,
    null,
    null,
  ]);
});
