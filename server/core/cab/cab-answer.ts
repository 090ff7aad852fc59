import type { Verdict } from '../../contract/common.ts';
import { worseOf } from '../gaps/verdict.ts';
import type { CabSide, SideState } from './side-state.ts';

/**
 * What both commodities together leave to do. `on`: both get to their next supply with the reserve. `back`: one does not,
 * and both get back with it. `reserve-on`, `reserve-back`: only that way is left, and it costs reserve; `reserve`: either
 * way does. `unknown`: it is not known whether one can go on. `none`: neither way is known to hold. `unread`: how much is aboard is not told.
 */
export type CabAnswer =
  | 'on'
  | 'back'
  | 'reserve-on'
  | 'reserve-back'
  | 'reserve'
  | 'unknown'
  | 'none'
  | 'unread';

/** One that cannot be driven back is short. */
const backVerdict = ({ back }: SideState): Verdict => back?.verdict ?? 'short';

export function cabAnswer(fuel: CabSide, water: CabSide): CabAnswer {
  if (isNone(fuel, 'unread') || isNone(water, 'unread')) return 'unread';
  if ('none' in fuel || 'none' in water) return 'unknown';
  const on = worseOf(fuel.on.verdict, water.on.verdict);
  const back = worseOf(backVerdict(fuel), backVerdict(water));
  return ANSWERS[on][back];
}

const isNone = (side: CabSide, none: 'unread'): boolean => 'none' in side && side.none === none;

/** By the way on, then by the way back. Whoever can get back with the reserve never spends it on going on. */
const ANSWERS: Record<Verdict, Record<Verdict, CabAnswer>> = {
  enough: { enough: 'on', 'into-reserve': 'on', unknown: 'on', short: 'on' },
  'into-reserve': { enough: 'back', 'into-reserve': 'reserve', unknown: 'reserve-on', short: 'reserve-on' },
  unknown: { enough: 'unknown', 'into-reserve': 'unknown', unknown: 'unknown', short: 'unknown' },
  short: { enough: 'back', 'into-reserve': 'reserve-back', unknown: 'none', short: 'none' },
};
