import type { Caution } from '../../phrases/cautions.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { gradeAfter, type WaterState, waterFilled } from './grade-after.ts';
import type { Mixing } from './water-use.ts';

/**
 * Each fill along the route, at the supplies that count, which makes the water of containers or pipes less fit, and a
 * caution for each.
 */
export function mixingOf(
  passings: readonly Passing[],
  treatAt: 'filling' | 'tap' | null,
): { mixing: Mixing[]; cautions: Caution[] } {
  const mixing: Mixing[] = [];
  const cautions: Caution[] = [];
  let state: WaterState = gradeAfter([]);
  for (const passing of passings) {
    if (passing.commodity !== 'water' || !passing.counts) continue;
    const water = waterFilled(passing.waterClass ?? 'none', treatAt);
    const after = gradeAfter([{ kind: 'fill', water }], state);
    if (after.container === state.container && after.pipes === state.pipes) continue;
    const facts = { name: passing.name ?? passing.kind, container: after.container };
    mixing.push({ atM: passing.atM, id: passing.id, ...after, text: { phrase: 'water-lowered-by', facts } });
    cautions.push({ code: 'water-lowered', facts });
    state = after;
  }
  return { mixing, cautions };
}
