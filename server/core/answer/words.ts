import type { Gap, SentencePart } from '../../contract/analysis.ts';
import type { Commodity, Verdict } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';

const FUEL_WORDS: Record<FuelKind, string> = {
  diesel: 'diesel',
  petrol: 'petrol',
  lpg: 'LPG',
  cng: 'CNG',
  lng: 'LNG',
  e85: 'E85',
};

export const commodityWord = (commodity: Commodity, kind: FuelKind): string =>
  commodity === 'fuel' ? FUEL_WORDS[kind] : 'drinking water';

export const at = (km: number): SentencePart => ({ quantity: km, unit: 'km', as: 'at' });
export const much = (quantity: number, unit: 'km' | 'l' | 'days' | 'count'): SentencePart => ({
  quantity,
  unit,
  as: 'much',
});
export const strong = (text: string, verdict?: Verdict): SentencePart =>
  verdict === undefined ? { strong: text } : { strong: text, verdict };

const EDGE_WORDS = { start: 'the start', end: 'the end', passing: 'a supply' } as const;
export const edgeName = (edge: Gap['from']): string => edge.name ?? EDGE_WORDS[edge.kind];

/** "Ketta to Dune station" */
export const stretchName = (gap: Gap): string => `${edgeName(gap.from)} to ${edgeName(gap.to)}`;
