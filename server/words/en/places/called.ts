import type { PlaceName } from '../../../core/phrases/said/supply-kinds.ts';
import type { Say } from '../../parts/catalogue.ts';
import { type Parts, parts } from '../../parts/part.ts';

/** A place by its own name, or by what it is. */
export const called = (name: PlaceName, say: Say): Parts =>
  typeof name === 'string' ? parts`${name}` : say(name);
