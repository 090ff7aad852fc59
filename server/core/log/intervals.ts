import type { FuelInterval, LogLeftOut } from '../../contract/log.ts';
import type { Surface } from '../../contract/surface.ts';
import type { Fill } from './fills.ts';
import { logFault } from './log-fault.ts';

export type BareInterval = Omit<FuelInterval, 'outlier'>;

/** A rig file takes no rate above this (contract). */
const MOST_LITRES_PER_100KM = 200;

/** Fill-ups at one reading of the odometer: together they are one halt, full when one of them filled the tank. */
interface Halt {
  km: number;
  fills: Fill[];
  full: boolean;
}

/**
 * Intervals from full tank to full tank: what was filled after the first of the two, part fills included, was used
 * between them. What gives no rate is listed. `onSurface` takes only intervals that say so throughout; null takes all.
 * Throws InputProblem for a rate that no vehicle has.
 */
export function intervalsOf(
  fills: readonly Fill[],
  onSurface: Surface | null,
): { intervals: BareInterval[]; leftOut: LogLeftOut[] } {
  const intervals: BareInterval[] = [];
  const leftOut: LogLeftOut[] = [];
  const leave = (code: LogLeftOut['code'], of: readonly Fill[], text: string) =>
    leftOut.push({ ...linesOf(of), code, text });

  let start: Halt | null = null;
  let since: Fill[] = [];
  for (const halt of haltsOf(fills)) {
    since.push(...halt.fills);
    if (!halt.full) continue;
    const before = start;
    const used = since;
    start = halt;
    since = [];
    if (before === null) {
      if (used.length > halt.fills.length) {
        leave('before-first-full', used.slice(0, -halt.fills.length), 'filled before the first full tank');
      }
      continue;
    }
    const gap = used.find((fill) => fill.missed || fill.litres === null);
    const whole = [before.fills.at(-1)!, ...used];
    if (gap !== undefined) {
      const why = gap.missed
        ? `a fill-up before line ${gap.line} is missing`
        : `line ${gap.line} has no litres`;
      leave('fill-missing', whole, `from full to full, but ${why}`);
      continue;
    }
    const interval = intervalOf(before, halt, used);
    if (onSurface === null || interval.surface === onSurface) intervals.push(interval);
    else leave('other-surface', whole, `not on ${onSurface} throughout`);
  }
  if (since.length > 0 && start !== null) leave('after-last-full', since, 'filled after the last full tank');
  return { intervals, leftOut };
}

function haltsOf(fills: readonly Fill[]): Halt[] {
  const halts: Halt[] = [];
  for (const fill of fills) {
    const last = halts.at(-1);
    if (last !== undefined && last.km === fill.odometerKm) {
      last.fills.push(fill);
      last.full ||= fill.full;
    } else halts.push({ km: fill.odometerKm, fills: [fill], full: fill.full });
  }
  return halts;
}

function intervalOf(from: Halt, to: Halt, used: readonly Fill[]): BareInterval {
  const km = to.km - from.km;
  const fills = used.map(({ line, litres }) => ({ line, litres: litres ?? 0 }));
  const litres = fills.reduce((sum, fill) => sum + fill.litres, 0);
  const litresPer100Km = (litres / km) * 100;
  const fromLine = from.fills.at(-1)!.line;
  const toLine = to.fills.at(-1)!.line;
  if (litresPer100Km > MOST_LITRES_PER_100KM) {
    throw logFault(
      fromLine < toLine ? `lines ${fromLine} to ${toLine}` : `lines ${toLine} to ${fromLine}`,
      `${litres.toFixed(1)} l over ${km.toFixed(1)} km, ${Math.round(litresPer100Km)} l/100 km`,
      `at most ${MOST_LITRES_PER_100KM} l/100 km`,
      'Correct the odometer or the litres there',
    );
  }
  return {
    fromLine,
    toLine,
    fromKm: from.km,
    toKm: to.km,
    km,
    litres,
    litresPer100Km,
    fills,
    surface: sameSurface(used),
    massKg: meanMass(from.km, used),
    notes: used.map((fill) => fill.note).filter((note) => note !== ''),
  };
}

/** What all the fill-ups say of the way to them; null when one is silent or they differ. */
function sameSurface(used: readonly Fill[]): Surface | null {
  const [first] = used;
  return first !== undefined && used.every((fill) => fill.surface === first.surface) ? first.surface : null;
}

/** Mean by distance of the mass on the way to each halt; the first line of a halt speaks for its way. */
function meanMass(fromKm: number, used: readonly Fill[]): number | null {
  let sum = 0;
  let atKm = fromKm;
  for (const { massKg, odometerKm } of used) {
    if (massKg === null && odometerKm > atKm) return null;
    sum += (massKg ?? 0) * (odometerKm - atKm);
    atKm = odometerKm;
  }
  return atKm > fromKm ? sum / (atKm - fromKm) : null;
}

/** Lowest and highest line, whichever way round the log runs. */
function linesOf(fills: readonly Fill[]): { fromLine: number; toLine: number } {
  const lines = fills.map((fill) => fill.line);
  return { fromLine: Math.min(...lines), toLine: Math.max(...lines) };
}
