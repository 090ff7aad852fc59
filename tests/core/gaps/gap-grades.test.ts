import { describe, expect, test } from 'vitest';
import type { Crew } from '../../../server/contract/crew.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { EvenCourseFacts } from '../../../server/core/gaps/course/even-course.ts';
import { gapsOf } from '../../../server/core/gaps/gaps-of.ts';
import { courseOf, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';
import { rigOf } from '../crew/crews.ts';

const fixed = (litres: number) => ({ low: litres, typical: litres, high: litres });
/** 8 l of drinking grade and 4 l of washing grade a day. */
const TWELVE: Crew = {
  people: [
    { drinking: fixed(4), cooking: fixed(2), washingUp: fixed(1), washing: fixed(3), shower: fixed(2) },
  ],
};
const tanksOf = (floorL: number, roofL: number): RigFile['water']['tanks'] => [
  { name: 'floor', litres: floorL },
  { name: 'roof', litres: roofL, grade: 'washing' },
];

/** Gaps at 245 km a day, all full at the start. */
function gapsWith(
  tanks: RigFile['water']['tanks'],
  edgesKm: number[],
  facts: Partial<Omit<EvenCourseFacts, 'onward'>> = {},
) {
  const lengthM = edgesKm.at(-1)! * 1000;
  const course = courseOf({ commodity: 'water', rigFile: rigOf(TWELVE, { tanks }), lengthM, ...facts });
  const passings = edgesKm.slice(0, -1).map((km) => passingEdge(km * 1000));
  return gapsOf(course, [startEdge, ...passings, endEdge(lengthM)], course.rig.water.drawableL);
}

describe('drinking grade where no extract covers', () => {
  // 1,340 km are 5.47 days: 43.8 l of the 40 that may be drunk, gone after 5 days, at km 1,225.
  const gapUncovered = (fromKm: number) =>
    gapsWith(tanksOf(40, 100), [1340], {
      uncovered: [{ fromM: fromKm * 1000, toM: (fromKm + 50) * 1000 }],
    })[0]!;

  test('that runs out before the stretch is short', () => {
    const gap = gapUncovered(1250);
    expect(gap.marginL).toBeGreaterThan(0);
    expect(gap.grades!.drinking.verdict).toBe('short');
    expect(gap.verdict).toBe('short');
  });

  test('that runs out after it is unknown', () => {
    const gap = gapUncovered(1000);
    expect(gap.grades!.drinking.verdict).toBe('unknown');
    expect(gap.verdict).toBe('unknown');
  });
});

test('washing grade that runs out before a stretch without cover is short, after it unknown', () => {
  const tanks: RigFile['water']['tanks'] = [
    { name: 'floor', litres: 100, grade: 'drinking' },
    { name: 'roof', litres: 16, grade: 'washing' },
  ];
  // 4 l a day of the 16 for washing: gone after 4 days, at km 980; all 1,340 km take 21.9.
  const verdictAt = (fromKm: number) =>
    gapsWith(tanks, [1340], { uncovered: [{ fromM: fromKm * 1000, toM: (fromKm + 50) * 1000 }] })[0]!.grades!
      .washing.verdict;
  expect(verdictAt(1000)).toBe('short');
  expect(verdictAt(800)).toBe('unknown');
});

test('there is no return when what is fit to drink does not last out and back', () => {
  // 700 km out and home are 5.71 days: 68.6 l of all water, 45.7 l of drinking grade.
  const canReturn = (floorL: number, roofL: number) =>
    gapsWith(tanksOf(floorL, roofL), [700, 1000])[0]!.ifToFails!.canReturn;
  expect(canReturn(40, 60)).toBe(false);
  expect(canReturn(50, 60)).toBe(true);
});

test('if the supply ahead fails, the margin told is that of what runs out first', () => {
  // 1,000 km are 4.08 days: 32.7 l of drinking grade and 16 l of reserve of 40 l; of all water 49 of 100.
  expect(gapsWith(tanksOf(40, 60), [700, 1000])[0]!.ifToFails).toMatchObject({
    verdict: 'into-reserve',
    marginL: expect.closeTo(40 - 8 * (1000 / 245) - 16, 9),
  });
});

test('the reserve’s share of the need is of drinking grade, too', () => {
  const rigFile = rigOf(TWELVE, { tanks: tanksOf(60, 40), reserve: { days: 1, shareOfNeed: 0.5 } });
  const course = courseOf({ commodity: 'water', rigFile, lengthM: 490_000 });
  const [gap] = gapsOf(course, [startEdge, endEdge(490_000)], 100);
  // Half of 24 l and one day of 8 l.
  expect(gap!.reserveL).toBe(20);
  expect(gap!.grades).toMatchObject({ drinking: { reserveL: 20 }, washing: { reserveL: 0 } });
});

test('washing that outlasts what is kept for it draws what serves both, and no grade lacks anything then', () => {
  // Two days: 8 l of washing grade, 6 of them kept for it; 16 l of drinking grade and the other 2 of 40 that serve both.
  const [gap] = gapsWith(tanksOf(40, 6), [490]);
  const litres = (figure: number) => expect.closeTo(figure, 9);
  expect(gap!.grades!.washing).toMatchObject({ needL: litres(8), arriveL: litres(0), marginL: litres(0) });
  expect(gap!.grades!.drinking).toMatchObject({ needL: litres(16), arriveL: litres(22) });
});
