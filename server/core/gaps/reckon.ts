import type { Verdict } from '../../contract/common.ts';
import type { GapGrades } from '../../contract/crew.ts';
import type { Level } from '../quantity/level.ts';
import { SLACK } from '../quantity/slack.ts';
import type { Term } from '../quantity/term.ts';
import { type Course, type Doubt, doubtOf, type Edge } from './course/course.ts';
import { firstBelowM, levelsOf } from './course/levels.ts';
import { gapGrades } from './gap-grades.ts';
import { needOf, reserveOf, type Way, wayOf } from './need.ts';
import { verdictOf, worseOf } from './verdict.ts';

/** The figures of a way from one edge to another, unrounded. */
export interface Reckoning {
  way: Way;
  departL: number;
  needL: number;
  reserveL: number;
  /** What must be left on coming back to where the way begins: the reserve of either end, the larger. */
  backReserveL: number;
  arriveL: number;
  marginL: number;
  /** The worse of that of all water and that of drinking grade, where grades are known. */
  verdict: Verdict;
  grades: GapGrades | null;
  /** Some of the way has no cover. */
  acrossNoData: boolean;
  doubt: Doubt | null;
  levels: Level[];
  reserveFromM: number | null;
  runsDryM: number | null;
  needTerms: Term[];
  reserveTerms: Term[];
}

/** A millimetre: stretches shorter than that are float noise of cutting. */
const NOISE_M = 1e-3;

/** How a way is begun. */
export interface Departure {
  /** Aboard, litres. */
  departL: number;
  /** Metres of further detours on the way, such as to a supply that turns out to fail, and back; 0 unless told. */
  viaM?: number;
  /** Of what is aboard, litres in cans kept for washing; 0 unless told. */
  washingCansL?: number;
}

/** Reckons the way from `from` to `to`. */
export function reckon(
  course: Course,
  from: Edge,
  to: Edge,
  { departL, viaM = 0, washingCansL = 0 }: Departure,
): Reckoning {
  const way = wayOf(course, from, to, viaM);
  const need = needOf(course, from, to, way);
  const reserve = reserveOf(course, need.litres, to.atM);
  const arriveL = departL - need.litres;
  const marginL = arriveL - reserve.litres;
  const levels = levelsOf({ course, from, to }, { departL, arriveL });
  const whereAtL = (litres: number) => firstBelowM(levels, litres, SLACK);
  const firstUncovered = course.uncovered.find(
    (span) => Math.min(span.toM, to.atM) - Math.max(span.fromM, from.atM) > NOISE_M,
  );
  const doubt = doubtOf(course, from, to);
  const facts = {
    firstUncoveredM: firstUncovered === undefined ? null : Math.max(firstUncovered.fromM, from.atM),
    atBestUnknown: doubt?.leavesUnknown === true,
  };
  const whole = verdictOf({ ...facts, arriveL, marginL, runsDryM: whereAtL(0) });
  const graded =
    course.commodity === 'fuel'
      ? null
      : gapGrades(
          {
            rig: course.rig,
            fromM: from.atM,
            toM: to.atM,
            departL,
            washingCansL,
            needL: need.litres,
            reserveL: reserve.litres,
            levels,
            washingStopsM: course.washingStopsM ?? [],
          },
          facts,
          whereAtL,
        );
  return {
    way,
    departL,
    needL: need.litres,
    reserveL: reserve.litres,
    backReserveL: Math.max(reserve.litres, reserveOf(course, need.litres, from.atM).litres),
    arriveL,
    marginL,
    verdict: graded === null ? whole : worseOf(whole, graded.grades.drinking.verdict),
    grades: graded?.grades ?? null,
    acrossNoData: firstUncovered !== undefined,
    doubt,
    levels,
    reserveFromM: whereAtL(graded?.reserveAtL ?? reserve.litres),
    runsDryM: whereAtL(graded?.dryAtL ?? 0),
    needTerms: need.terms,
    reserveTerms: reserve.terms,
  };
}
