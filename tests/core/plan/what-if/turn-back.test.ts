import { describe, expect, it } from 'vitest';
import { evenProfile } from '../../../../server/core/gaps/course/profile.ts';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import type { Stretch } from '../../../../server/core/plan/drive/stretch.ts';
import { turnBackOf } from '../../../../server/core/plan/drive/turn-back/turn-back.ts';
import { worstPlace } from '../../../../server/core/plan/what-if/mishap.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { plainStretch } from './small-basis.ts';

/** A stretch on which a kilometre out and one home cost different amounts, no reserve. */
function outAndHome(lengthKm: number, tankL: number, outPerKm: number, homePerKm: number): Stretch {
  const rigFile = {
    ...EXAMPLE_RIG,
    fuel: { ...EXAMPLE_RIG.fuel, reserve: { litres: 0 }, tanks: [{ name: 'main', litres: tankL }] },
  };
  const stretch = plainStretch({ lengthKm, rigFile, tankL });
  const { course } = stretch;
  const lengthM = lengthKm * 1000;
  return {
    ...stretch,
    course: {
      ...course,
      litres: { out: evenProfile(lengthM, outPerKm / 1000), home: evenProfile(lengthM, homePerKm / 1000) },
    },
  };
}

describe('turn-back points from real levels', () => {
  it.each([
    // Litres stand for hours: 1/O an hour for each mile out, 1/H home (check-values P11 to P14).
    ['P11', 3.3, 1 / 121, 1 / 129, 206.0412],
    ['P12, no wind', 10, 1 / 100, 1 / 100, 500],
    ['P12, wind against', 10, 1 / 50, 1 / 150, 375],
    ['P12, wind with', 10, 1 / 150, 1 / 50, 375],
    ['P13', 20 + 13 / 60, 1 / 107, 1 / 153, 1272.95],
    ['P14', 90, 0.14, 0.11, 360],
    ['P14, alike', 90, 0.15, 0.15, 300],
  ])('are those of air navigation: %s', (_row, tank, out, home, atKm) => {
    expect(turnBackOf(runOf(outAndHome(3000, tank, out, home)))! / 1000).toBeCloseTo(atKm, 2);
  });

  it('lie where going on and going back come out alike when nothing is lost: P15', () => {
    const struck = worstPlace([runOf(outAndHome(400, 100, 1 / 80, 1 / 60))], { lostL: () => 0 })!;
    expect(struck.point.atM / 1000).toBeCloseTo((400 * 60) / 140, 9);
    expect(struck.onL).toBeCloseTo(struck.backL!, 9);
  });

  it.each([
    ['a third in reserve: a third of the tank out (P19)', 1 / 3, 200, 60],
    ['no reserve: turn back at half a tank (P20)', 0, 300, 45],
  ])('%s', (_what, fraction, atKm, leftL) => {
    const rigFile = {
      ...EXAMPLE_RIG,
      fuel: {
        ...EXAMPLE_RIG.fuel,
        litresPer100Km: { low: 15, typical: 15, high: 15 },
        tanks: [{ name: 'main', litres: 90 }],
        reserve: { fraction },
      },
    };
    const run = runOf(plainStretch({ lengthKm: 1000, rigFile, tankL: 90 }));
    const atM = turnBackOf(run)!;
    expect(atM / 1000).toBeCloseTo(atKm, 9);
    expect(90 - atM * 0.00015).toBeCloseTo(leftL, 9);
  });

  it('stop where a stretch that cannot be driven back begins', () => {
    const stretch = outAndHome(500, 200, 0.1, 0.1);
    const course = { ...stretch.course, oneWay: [{ fromM: 220_000, toM: 230_000 }] };
    expect(turnBackOf(runOf({ ...stretch, course }))).toBe(220_000);
  });
});
