import { expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import { stretchFigures, verdictOnwards } from '../../../../server/core/plan/what-if/stretch-row.ts';
import { EXAMPLE_RIG, endEdge, passingEdge } from '../../../helpers/course.ts';
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

it('a stretch that runs dry is short, whatever no extract covers before its beginning or behind its end', () => {
  const run = runOf(plainStretch({ lengthKm: 300, rigFile: EXAMPLE_RIG, tankL: 10 }));
  const verdict = (...uncovered: { fromM: number; toM: number }[]) => {
    const { stretch } = run;
    const course = { ...stretch.course, uncovered };
    const part = {
      ...run,
      stretch: { ...stretch, course, from: passingEdge(100_000), to: endEdge(200_000) },
    };
    return verdictOnwards(part, { arriveL: -7, marginL: -17, endsAtM: 160_000 });
  };
  expect(verdict()).toBe('short');
  expect(verdict({ fromM: 0, toM: 50_000 })).toBe('short');
  expect(verdict({ fromM: 50_000, toM: 100_000 }, { fromM: 200_000, toM: 300_000 })).toBe('short');
  // It runs dry at 160 km: before one of these nobody knows, after it the stretch is short of it all the same.
  expect(verdict({ fromM: 50_000, toM: 100_001 })).toBe('unknown');
  expect(verdict({ fromM: 0, toM: 50_000 }, { fromM: 170_000, toM: 180_000 })).toBe('short');
});
