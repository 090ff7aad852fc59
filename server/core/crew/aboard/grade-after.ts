import type { WaterClass } from '../../../contract/common.ts';

/** What the water of a container and of the pipes after it is fit for. */
export interface WaterState {
  container: WaterClass;
  pipes: WaterClass;
}

/** What happens to a container: water runs in, or it (or the pipes after it) is emptied, cleaned and disinfected. */
export type Mix =
  | { kind: 'fill'; water: WaterClass }
  | { kind: 'disinfect'; what: 'container' | 'pipes' | 'both' };

const RANK: Record<WaterClass, number> = { drinking: 3, treatable: 2, washing: 1, none: 0 };

/** The less fit of two waters. */
const lessFitOf = (a: WaterClass, b: WaterClass): WaterClass => (RANK[a] <= RANK[b] ? a : b);

const CLEAN: WaterState = { container: 'drinking', pipes: 'drinking' };

/**
 * What container and pipes are fit for after fills and disinfections in order. Water of a lower class, however little,
 * lowers the whole container and the pipes after it; better water does not raise them again, only disinfection does.
 */
export function gradeAfter(mixes: readonly Mix[], start: WaterState = CLEAN): WaterState {
  return mixes.reduce((state, mix): WaterState => {
    if (mix.kind === 'fill') {
      const container = lessFitOf(state.container, mix.water);
      return { container, pipes: lessFitOf(state.pipes, container) };
    }
    const container = mix.what === 'pipes' ? state.container : 'drinking';
    // Pipes behind a container that is not clean are filled by it again at once.
    return { container, pipes: mix.what === 'container' ? state.pipes : container };
  }, start);
}

/** What reaches the container of a water fetched: treatment on filling makes treatable water fit before it is in. */
export const waterFilled = (water: WaterClass, treatAt: 'filling' | 'tap' | null): WaterClass =>
  water === 'treatable' && treatAt === 'filling' ? 'drinking' : water;

/** What a tap without treatment gives. */
export const atTap = (state: WaterState): WaterClass => lessFitOf(state.container, state.pipes);
