import type { Evidence } from '../../../contract/common.ts';
import { type CarrySide, endsOf } from '../side/carry-side.ts';
import { type Hop, weakestEnd } from './leg.ts';

/** Evidence that is weaker than it might be. */
export type WeakEvidence = Exclude<Evidence, 'confirmed'>;

/** The weak evidence that a hop hangs on; null where its ends are as good as they can be. */
export function hangsOn(side: CarrySide, hop: Pick<Hop, 'from' | 'to'>): WeakEvidence | null {
  const weakest = weakestEnd(...endsOf(side, hop));
  if (weakest === null || weakest === 'confirmed') return null;
  // What tags state is good enough, unless the user went and confirmed others.
  return weakest === 'stated' && !hasConfirmed(side) ? null : weakest;
}

const confirmed = new WeakMap<CarrySide['edges'], boolean>();

function hasConfirmed({ edges }: CarrySide): boolean {
  const has = confirmed.get(edges) ?? edges.some(({ evidence }) => evidence === 'confirmed');
  confirmed.set(edges, has);
  return has;
}
