import type { FuelInterval, FuelLog } from '../../contract/log.ts';
import { few } from './few.ts';
import type { Fill } from './fills.ts';
import { quantile } from './percentile.ts';

type Caution = FuelLog['cautions'][number];

/** With fewer intervals than this the 90th percentile hangs on the two highest of them (position (n - 1) 0.9). */
const FEW = 11;
/** An interval of less than this share of the median's length is called short (ours). */
const SHORT_SHARE = 0.25;
/** Intervals or lines that one caution names; the result marks them all. */
const NAMED = 10;

/** What to know before planning with what was learned. */
export function fuelCautions(
  learned: Omit<FuelLog, 'cautions'>,
  fills: readonly Fill[],
  turned: boolean,
): Caution[] {
  const { intervals, litresPer100Km, observed } = learned;
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text });
  const worst = intervals.reduce((most, one) => (one.litresPer100Km > most.litresPer100Km ? one : most));
  if (worst.litresPer100Km > litresPer100Km.high) {
    say(
      'above-high',
      `About one interval in ten used more than the high figure; the most was ${rate(worst)} (${lines(worst)}). Plan with more where the way is worse than what was logged.`,
    );
  }
  if (intervals.length < FEW) {
    say(
      'few-intervals',
      `${intervals.length} intervals are few: the high figure hangs on the two highest of them.`,
    );
  }
  const outliers = intervals.filter((interval) => interval.outlier);
  if (outliers.length > 0) {
    say(
      'outliers',
      `Far from the rest, counted all the same: ${few(
        outliers.map((one) => `${rate(one)} (${lines(one)})`),
        NAMED,
      )}. Too low may mean a fill-up that was not written down, too high a tank that was not full: mark such a line, or correct it.`,
    );
  }
  const medianKm = quantile(
    intervals.map((interval) => interval.km),
    0.5,
  );
  const short = intervals.filter((interval) => interval.km < SHORT_SHARE * medianKm);
  if (short.length > 0) {
    say(
      'short-intervals',
      `Short ones, in which a pump that stops a litre early or late matters most: ${few(
        short.map((one) => `${one.km.toFixed(1)} km (${lines(one)})`),
        NAMED,
      )}.`,
    );
  }
  if (learned.bySurface.length > 1) {
    say(
      'mixed-surfaces',
      'The intervals are of more than one surface, or some do not tell theirs: the range of all together is of the mixture as logged. Learn from one surface alone (--surface) where there are enough.',
    );
  } else if (observed.surface === null) {
    say(
      'surface-not-told',
      'The log does not tell the surface (a column "surface"): say in the rig under /fuel/observed what it was, else use is not raised rightly for sand.',
    );
  }
  if (observed.massKg === null) {
    say(
      'mass-not-told',
      'The log does not tell the mass of the loaded vehicle (a column "mass_kg"): say it in the rig under /fuel/observed if you know it.',
    );
  }
  say(
    'all-in',
    'Litres of a log hold idling, heater and climbs as well. What the rig tells of them beside a learned rate (/fuel/perHour, /fuel/hours) is counted once more: that errs on the safe side.',
  );
  const split = fills.filter((fill, index) => fill.odometerKm === fills[index - 1]?.odometerKm);
  if (split.length > 0) {
    say(
      'split-fill',
      `At the same odometer as the line before it, so taken as one halt with it: ${few(
        split.map((fill) => `line ${fill.line}`),
        NAMED,
      )}.`,
    );
  }
  if (turned)
    say('newest-first', 'The odometer falls from line to line: the log was read with the newest first.');
  return cautions;
}

const rate = (interval: FuelInterval) => `${interval.litresPer100Km.toFixed(1)} l/100 km`;
const lines = ({ fromLine, toLine }: FuelInterval) => `lines ${fromLine} to ${toLine}`;
