import { expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import { stretchFigures } from '../../../../server/core/plan/what-if/stretch-row.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { plainStretch } from './small-basis.ts';

const even = (litres: number) => ({ low: litres, typical: litres, high: litres });

it('drinking water is at its end where all that is left is kept for washing', () => {
  // Of 5 l a day 4 are of drinking grade (3 drunk, 1 for teeth and hands) and 1 washes; 30 l serve both, 10 are kept for
  // washing. 8 days of 245 km need 32 l of drinking grade: 2 are missing, while 2 are left that were kept for washing.
  const rigFile: RigFile = {
    ...EXAMPLE_RIG,
    water: {
      tanks: [
        { name: 'any', litres: 30 },
        { name: 'shower', litres: 10, grade: 'washing' },
      ],
      cans: { litres: 10, owned: 0 },
      reserve: { litres: 0 },
    },
    crew: {
      people: [{ drinking: even(3), cooking: even(0), washingUp: even(0), washing: even(2), shower: 0 }],
    },
  };
  const run = runOf(plainStretch({ commodity: 'water', lengthKm: 1960, rigFile, tankL: 40 }));
  const { arriveL, endsAtM, verdict } = stretchFigures(run);
  expect(arriveL).toBeCloseTo(-2, 9);
  expect(verdict).toBe('short');
  // 38 of 40 l are gone.
  expect((endsAtM ?? 0) / 1000).toBeCloseTo((38 / 40) * 1960, 6);
});
