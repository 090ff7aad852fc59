import type { Correction } from '../../../contract/notes.ts';
import type { Tags } from '../../input/sources.ts';
import { NOT_A_FUEL } from '../../supply/judge/fuels.ts';
import type { SupplyFeature } from '../../supply/points/supply-feature.ts';
import { prefixOf } from '../../supply/tags/kinds.ts';
import { saidBy } from '../../supply/tags/said-by.ts';
import { wantedFor } from '../../supply/tags/wanted.ts';
import { fuelTags } from './told-tags.ts';

/** Water of a grade, as tags say it of an object of any kind. */
const GRADE_TAGS: Record<NonNullable<Correction['grade']>, string> = {
  drinking: 'yes',
  treatable: 'untreated',
  washing: 'no',
};

/** Keys of an object that say what its water is like. */
const OF_GRADE = ['drinking_water', 'drinkable', 'drinking_water:legal', 'salt'];

/**
 * Features with what the user says that the map has wrong: their tags are replaced, the newest correction of each thing
 * stands, and who said it is kept. Whoever corrects an object has looked at it: it is as new as that day.
 */
export function correctedFeatures(
  features: readonly SupplyFeature[],
  corrections: readonly Correction[],
): SupplyFeature[] {
  if (corrections.length === 0) return [...features];
  const byId = new Map<string, Correction[]>();
  for (const one of [...corrections].sort((a, b) => (a.on < b.on ? -1 : Number(a.on > b.on))))
    byId.set(one.id, [...(byId.get(one.id) ?? []), one]);
  return features.map((feature) => {
    const own = [feature.id, ...feature.alsoIds].flatMap((id) => byId.get(id) ?? []);
    return own.reduce(correctedBy, feature);
  });
}

function correctedBy(feature: SupplyFeature, correction: Correction): SupplyFeature {
  const tags = correctedTags(feature.tags, correction);
  const { undated: _dated, ...rest } = feature;
  const { on, fuels, grade, openingHours } = correction;
  const seen = feature.editedAt?.slice(0, 10) ?? '';
  return {
    ...rest,
    tags,
    mappedTags: feature.mappedTags ?? feature.tags,
    wanted: wantedFor(tags),
    editedAt: seen > on ? feature.editedAt : on,
    corrections: [
      ...(feature.corrections ?? []),
      {
        on,
        ...saidBy(correction),
        ...(fuels === undefined ? {} : { fuels }),
        ...(grade === undefined ? {} : { grade }),
        ...(openingHours === undefined ? {} : { hours: openingHours }),
      },
    ],
    ...(feature.otherReadings === undefined
      ? {}
      : {
          otherReadings: feature.otherReadings.map((other) => ({
            ...other,
            tags: correctedTags(other.tags, correction),
          })),
        }),
  };
}

function correctedTags(tags: Tags, { fuels, grade, openingHours, phone }: Correction): Tags {
  return {
    ...Object.fromEntries(
      Object.entries(tags).filter(
        ([key]) =>
          !(fuels !== undefined && isOfFuels(key)) &&
          !(grade !== undefined && OF_GRADE.includes(prefixOf(key)[1])) &&
          !(openingHours !== undefined && key.startsWith('opening_hours')),
      ),
    ),
    ...(fuels === undefined ? {} : fuelTags(fuels)),
    ...(grade === undefined ? {} : { drinking_water: GRADE_TAGS[grade] }),
    ...(openingHours === undefined ? {} : { opening_hours: openingHours }),
    ...(phone === undefined ? {} : { phone }),
  };
}

/** Keys that name a fuel, sold or sold in former times; what else pumps give stays as mapped. */
function isOfFuels(key: string): boolean {
  const [, bare] = prefixOf(key);
  return bare.startsWith('fuel:') && !NOT_A_FUEL.includes(bare);
}
