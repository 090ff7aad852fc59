import type { Commodity } from '../../../../contract/common.ts';
import type { Course } from '../../../gaps/course/course.ts';
import type { Detour } from '../../../gaps/course/levels.ts';
import type { Basis } from '../../drive/basis.ts';
import type { Stretch } from '../../drive/stretch.ts';
import { detoursOf, haltInVain, haltsBetween, isAtHalt } from '../../side/halts.ts';
import { otherOf } from '../../side/other-of.ts';
import type { SupplyEdge } from '../../side/supply-edge.ts';

/** A stretch over stops that fail: each is gone to in vain. */
export interface FailedStretch {
  readonly stretch: Stretch;
  /** In route order. */
  readonly stops: FailedStops;
}

export type FailedStops = readonly [SupplyEdge, ...SupplyEdge[]];

/** The stretches that come of it when every stop for which `fails` holds gives nothing, the others left out. */
export function failedStretches(
  basis: Basis,
  commodity: Commodity,
  fails: (edge: SupplyEdge) => boolean,
): FailedStretch[] {
  const found: FailedStretch[] = [];
  let begun: Begun | null = null;
  for (const stretch of basis.sides[commodity].stretches) {
    const { to } = stretch;
    const open: Begun = begun ?? { first: stretch, stops: [] };
    if (to.kind === 'passing' && fails(to)) {
      begun = { ...open, stops: [...open.stops, to] };
      continue;
    }
    begun = null;
    const [stop, ...more] = open.stops;
    if (stop === undefined) continue;
    found.push({ stretch: overStops(basis, open.first, to, [stop, ...more]), stops: [stop, ...more] });
  }
  return found;
}

/** A stretch that goes over stops which fail, not at its end yet. */
interface Begun {
  readonly first: Stretch;
  readonly stops: readonly SupplyEdge[];
}

/** From where a stretch begins to where another ends, over stops that fail. */
function overStops(basis: Basis, first: Stretch, to: SupplyEdge, stops: FailedStops): Stretch {
  const { course, from } = first;
  return { ...first, to, detours: detoursOver(basis, course, { from, to, stops }) };
}

/** A way over stops that fail. */
interface WayOver {
  readonly from: SupplyEdge;
  readonly to: SupplyEdge;
  readonly stops: FailedStops;
}

/** Halts on such a way: those of the other commodity, and every stop on it that fails, gone to in vain. */
export function detoursOver({ halts }: Basis, course: Course, { from, to, stops }: WayOver): Detour[] {
  const made = haltsBetween(halts[otherOf(course.commodity)], from, to);
  const inVain = stops
    .filter((stop) => stop.atM > from.atM && stop.atM <= to.atM)
    .filter((stop) => !made.some((halt) => isAtHalt(stop, halt)))
    .map((stop) => haltInVain(course, stop, to))
    .filter(({ costM }) => costM > 0);
  return detoursOf([...made, ...inVain].sort((a, b) => a.atM - b.atM));
}
