import type { FuelInterval } from '../../contract/answers/log.ts';
import type { Surface } from '../../contract/surface.ts';
import type { Lines, LogOmission } from '../phrases/log.ts';
import { FaultyLog } from './faulty-log.ts';
import type { Fill } from './fills.ts';

export type BareInterval = Omit<FuelInterval, 'outlier'>;

/** A rig file takes no rate above this (contract). */
const MOST_LITRES_PER_100KM = 200;

/** Fill-ups at one reading of the odometer: together they are one halt, full when one of them filled the tank. */
interface Halt {
  km: number;
  fills: Fill[];
  last: Fill;
  full: boolean;
}

/** From one full tank to the next: the fill-ups after the first of them. */
interface Stretch {
  from: Halt;
  to: Halt;
  fills: readonly Fill[];
}

/**
 * Intervals from full tank to full tank: what was filled after the first of the two, part fills included, was used
 * between them. What gives no rate is listed. `onSurface` takes only intervals that say so throughout; null takes all.
 * Throws FaultyLog for a rate that no vehicle has.
 */
export function intervalsOf(
  fills: readonly Fill[],
  onSurface: Surface | null,
): { intervals: BareInterval[]; leftOut: LogOmission[] } {
  const intervals: BareInterval[] = [];
  const leftOut: LogOmission[] = [];
  let from: Halt | null = null;
  let since: Fill[] = [];
  for (const halt of haltsOf(fills)) {
    since.push(...halt.fills);
    if (!halt.full) continue;
    if (from !== null) {
      const outcome = outcomeOf({ from, to: halt, fills: since }, onSurface);
      if ('code' in outcome) leftOut.push(outcome);
      else intervals.push(outcome);
    } else if (since.length > halt.fills.length) {
      const before = since.slice(0, -halt.fills.length);
      leftOut.push({ ...linesOf(before), code: 'before-first-full', facts: {} });
    }
    from = halt;
    since = [];
  }
  if (since.length > 0 && from !== null) {
    leftOut.push({ ...linesOf(since), code: 'after-last-full', facts: {} });
  }
  return { intervals, leftOut };
}

function haltsOf(fills: readonly Fill[]): Halt[] {
  const halts: Halt[] = [];
  for (const fill of fills) {
    const halt = halts.at(-1);
    if (halt !== undefined && halt.km === fill.odometerKm && !fill.restart) {
      halt.fills.push(fill);
      halt.last = fill;
      halt.full ||= fill.full;
    } else halts.push({ km: fill.odometerKm, fills: [fill], last: fill, full: fill.full });
  }
  return halts;
}

/** The interval of a stretch, or why it gives none. */
function outcomeOf(stretch: Stretch, onSurface: Surface | null): BareInterval | LogOmission {
  const lines = linesOf([stretch.from.last, ...stretch.fills]);
  const gap = stretch.fills.find((fill) => fill.missed || fill.litres === null);
  if (gap !== undefined) {
    const facts = { line: gap.line, lacks: gap.missed ? 'fill-up' : 'litres' } as const;
    return { ...lines, code: 'fill-missing', facts };
  }
  const interval = intervalOf(stretch);
  return onSurface === null || interval.surface === onSurface
    ? interval
    : { ...lines, code: 'other-surface', facts: { surface: onSurface } };
}

function intervalOf({ from, to, fills }: Stretch): BareInterval {
  const km = to.km - from.km;
  const filled = fills.map(({ line, litres }) => ({ line, litres: litres ?? 0 }));
  const litres = filled.reduce((sum, fill) => sum + fill.litres, 0);
  const litresPer100Km = (litres / km) * 100;
  if (litresPer100Km > MOST_LITRES_PER_100KM) {
    throw new FaultyLog({
      place: linesOf([from.last, to.last]),
      fault: 'rate-impossible',
      facts: { litres, km, litresPer100Km, most: MOST_LITRES_PER_100KM },
    });
  }
  return {
    fromLine: from.last.line,
    toLine: to.last.line,
    fromKm: from.km,
    toKm: to.km,
    km,
    litres,
    litresPer100Km,
    fills: filled,
    surface: sameSurface(fills),
    massKg: meanMass(from.km, fills),
    notes: fills.map((fill) => fill.note).filter((note) => note !== ''),
  };
}

/** What all the fill-ups say of the way to them; null when one is silent or they differ. */
function sameSurface(fills: readonly Fill[]): Surface | null {
  const [first] = fills;
  return first !== undefined && fills.every((fill) => fill.surface === first.surface) ? first.surface : null;
}

/** Mean by distance of the mass on the way to each halt; the first line of a halt speaks for its way. */
function meanMass(fromKm: number, fills: readonly Fill[]): number | null {
  let sum = 0;
  let atKm = fromKm;
  for (const { massKg, odometerKm } of fills) {
    if (massKg === null && odometerKm > atKm) return null;
    sum += (massKg ?? 0) * (odometerKm - atKm);
    atKm = odometerKm;
  }
  return atKm > fromKm ? sum / (atKm - fromKm) : null;
}

/** Lowest and highest line, whichever way round the log runs. */
function linesOf(fills: readonly Fill[]): Lines {
  const lines = fills.map((fill) => fill.line);
  return { fromLine: Math.min(...lines), toLine: Math.max(...lines) };
}
