import type { Commodity } from '../../../server/contract/common.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import { classify, type Judging } from '../../../server/core/supply/judge/rules.ts';
import type { DatedFeature } from '../../../server/core/supply/points/dated.ts';
import { toSupplyFeatures } from '../../../server/core/supply/points/features.ts';
import type { SupplyPoint } from '../../../server/core/supply/points/supply-point.ts';
import type { ClosedGround } from '../../../server/core/surroundings/enclosing.ts';

/** Diesel, no rope, no date, the default levels. */
export const PLAIN: Judging = {
  fuelKind: 'diesel',
  ropeAndBucket: false,
  counting: { fuel: 'implied', water: 'stated' },
  on: null,
  confirmations: [],
};

export interface Place {
  id?: string;
  lon?: number;
  lat?: number;
  editedAt?: string | null;
  /** As `DatedFeature` has it: neither object nor file is dated. */
  undated?: true;
  goneIn?: string;
  closedGround?: readonly ClosedGround[];
}

export function nodeOf(tags: Tags, place: Place = {}): DatedFeature {
  return {
    id: place.id ?? 'node/1',
    geometry: { type: 'Point', coordinates: [place.lon ?? 88, place.lat ?? -35] },
    tags,
    editedAt: place.editedAt ?? null,
    ...(place.goneIn === undefined ? {} : { goneIn: place.goneIn }),
    ...(place.undated === undefined ? {} : { undated: place.undated }),
  };
}

/** Every point that one node with these tags gives. */
export function pointsOf(tags: Tags, judge: Partial<Judging> = {}, place: Place = {}): SupplyPoint[] {
  const { features } = toSupplyFeatures([nodeOf(tags, place)]);
  const { closedGround = [] } = place;
  return classify(
    features.map((feature) => ({ ...feature, closedGround })),
    { ...PLAIN, ...judge },
  );
}

/** The point of one commodity that a node with these tags gives. */
export function pointOf(
  commodity: Commodity,
  tags: Tags,
  judge: Partial<Judging> = {},
  place: Place = {},
): SupplyPoint {
  const point = pointsOf(tags, judge, place).find((one) => one.commodity === commodity);
  if (point === undefined) throw new Error(`no ${commodity} point for ${JSON.stringify(tags)}`);
  return point;
}

export const codesOf = (point: SupplyPoint): string[] => point.reasons.map(({ code }) => code);
