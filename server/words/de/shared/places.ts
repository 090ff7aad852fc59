import type { NamedPlace } from '../../../core/phrases/plan/plan.ts';
import type { PlaceName } from '../../../core/phrases/said/supply-kinds.ts';
import type { Say } from '../../parts/catalogue.ts';
import { placeAt } from '../../parts/figures.ts';
import { type Part, type Parts, parts } from '../../parts/part.ts';

/** A place by its own name, or by what it is. */
export const called = (name: PlaceName, say: Say): Parts =>
  typeof name === 'string' ? parts`${name}` : say(name);

const ENDS = { passing: 'die Versorgung', start: 'Start', end: 'Ende' } as const;

/** "Far pump (km 212)". */
export const namedPlace = ({ kind, name, atM }: NamedPlace, say: Say): Part[] =>
  parts`${called(name ?? ENDS[kind], say)} (${placeAt(atM, 0)})`;
