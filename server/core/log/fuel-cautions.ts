import type { Caution } from '../phrases/cautions.ts';
import type { Fill } from './fills.ts';
import type { FuelLesson } from './lesson.ts';
import { quantile } from './percentile.ts';

/** With fewer intervals than this the 90th percentile hangs on the two highest of them (position (n - 1) 0.9). */
const FEW = 11;
/** An interval of less than this share of the median's length is called short (ours). */
const SHORT_SHARE = 0.25;

type Lesson = Omit<FuelLesson, 'cautions'>;

/** What to know before planning with what was learned. */
export function fuelCautions(lesson: Lesson, fills: readonly Fill[], newestFirst: boolean): Caution[] {
  const cautions = [...rateCautions(lesson), ...lengthCautions(lesson), ...conditionCautions(lesson)];
  cautions.push({ code: 'all-in', facts: {} });
  const split = fills.filter(
    (fill, index) => !fill.restart && fill.odometerKm === fills[index - 1]?.odometerKm,
  );
  if (split.length > 0) {
    cautions.push({ code: 'split-fill', facts: { lines: split.map((fill) => fill.line) } });
  }
  if (newestFirst) cautions.push({ code: 'newest-first', facts: {} });
  return cautions;
}

/** Rates above the high figure, and far from the rest. */
function rateCautions({ intervals, litresPer100Km }: Lesson): Caution[] {
  const cautions: Caution[] = [];
  const worst = intervals.reduce((most, one) => (one.litresPer100Km > most.litresPer100Km ? one : most));
  if (worst.litresPer100Km > litresPer100Km.high) {
    cautions.push({ code: 'above-high', facts: { kind: 'fuel', worst } });
  }
  if (intervals.length < FEW) {
    cautions.push({ code: 'few-intervals', facts: { intervals: intervals.length } });
  }
  const rates = intervals.filter((interval) => interval.outlier);
  if (rates.length > 0) cautions.push({ code: 'outliers', facts: { kind: 'fuel', rates } });
  return cautions;
}

function lengthCautions({ intervals }: Lesson): Caution[] {
  const lengths = intervals.map((interval) => interval.km);
  const leastKm = SHORT_SHARE * quantile(lengths, 0.5);
  const short = intervals.filter((interval) => interval.km < leastKm);
  return short.length === 0 ? [] : [{ code: 'short-intervals', facts: { intervals: short } }];
}

/** What the log does not tell of surface and mass. */
function conditionCautions({ bySurface, observed }: Lesson): Caution[] {
  const cautions: Caution[] = [];
  if (bySurface.length > 1) cautions.push({ code: 'mixed-surfaces', facts: {} });
  else if (observed.surface === null) cautions.push({ code: 'surface-not-told', facts: {} });
  if (observed.massKg === null) cautions.push({ code: 'mass-not-told', facts: {} });
  return cautions;
}
