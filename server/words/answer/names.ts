import type { Commodity } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';
import type { GapEdge } from '../../core/gaps/gap.ts';
import type { PlaceName } from '../../core/phrases/said/supply-kinds.ts';
import { answerWords } from '../answered.ts';
import type { SaidPlace } from '../parts/said-place.ts';
import { textOf } from '../words-of.ts';

const words = () => answerWords().names;

export const commodityWord = (commodity: Commodity, kind: FuelKind): string =>
  commodity === 'fuel' ? words().fuels[kind] : words().water;

/** An end of a gap as a sentence speaks of it. */
export const namedEdge = ({ name, kind, atM }: GapEdge): SaidPlace => ({
  name: nameText(name ?? words().ends[kind]),
  atM,
});

/** A place by its own name, or by what it is. */
export const nameText = (name: PlaceName): string => (typeof name === 'string' ? name : textOf(name));
