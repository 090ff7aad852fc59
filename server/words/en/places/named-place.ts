import type { NamedPlace } from '../../../core/phrases/plan/plan.ts';
import type { Say } from '../../parts/catalogue.ts';
import { placeAt } from '../../parts/figures.ts';
import { type Part, parts } from '../../parts/part.ts';
import { called } from './called.ts';

/** "Far pump (km 212)". */
export function namedPlace({ kind, name, atM }: NamedPlace, say: Say): Part[] {
  return parts`${called(name ?? (kind === 'passing' ? 'the supply' : `the ${kind}`), say)} (${placeAt(atM, 0)})`;
}
