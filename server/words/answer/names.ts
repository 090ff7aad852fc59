import type { Commodity } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';
import type { Gap, GapEdge } from '../../core/gaps/gap.ts';
import type { PlaceName } from '../../core/phrases/said/supply-kinds.ts';
import { FUEL_WORDS } from '../en/rig/fuel-words.ts';
import { textOf } from '../words-of.ts';

export const commodityWord = (commodity: Commodity, kind: FuelKind): string =>
  commodity === 'fuel' ? FUEL_WORDS[kind] : 'drinking water';

const EDGE_WORDS = { start: 'the start', end: 'the end', passing: 'a supply' } as const;
export const edgeName = ({ name, kind }: Pick<GapEdge, 'name' | 'kind'>): string =>
  nameText(name ?? EDGE_WORDS[kind]);

/** A place by its own name, or by what it is. */
export const nameText = (name: PlaceName): string => (typeof name === 'string' ? name : textOf(name));

/** "Ketta to Dune station" */
export const stretchName = (gap: Gap): string => `${edgeName(gap.from)} to ${edgeName(gap.to)}`;
