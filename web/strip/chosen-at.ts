import type { Analysis } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { gapIndexAt } from '../levels/levels.ts';
import type { Focus } from '../state/focus.ts';

/** What choosing a place on one side of the strip comes to: its gap, or none where it was chosen already. Null without gaps. */
export function chosenAt(
  analysis: Analysis,
  focus: Focus,
  commodity: Commodity,
  km: number,
): Partial<Focus> | null {
  const index = gapIndexAt(analysis[commodity], km);
  if (index < 0) return null;
  const again = focus.gap?.commodity === commodity && focus.gap.index === index;
  return {
    atKm: km,
    gap: again ? null : { commodity, index },
    marked: [...focus.marked.slice(-1), km],
  };
}
