import type { Evidence, WaterClass } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import type { PlainReasonCode } from '../../phrases/supply.ts';

interface KindRuleBase {
  /** Names the rule, and tells whether two objects are of the same kind. */
  key: string;
  /** Tags that make an object of this kind: the current form first, then forms that OSM has replaced. */
  forms: readonly Tags[];
  /** What it is, for people. */
  kind: Exclude<SupplyKind, { phrase: 'water-at' }>;
  /** What the kind alone tells, before any other tag is looked at. */
  evidence: Evidence;
  /** Why the kind alone is not enough. */
  reason?: PlainReasonCode;
  /** True when no other tag lifts `evidence` and `reason`: boats stay boats. */
  sticks?: boolean;
}
export interface FuelKindRule extends KindRuleBase {
  commodity: 'fuel';
}
export interface WaterKindRule extends KindRuleBase {
  commodity: 'water';
  waterClass: WaterClass;
}
export type KindRule = FuelKindRule | WaterKindRule;

/**
 * Objects that are a supply by their kind. Within a commodity the first rule that fits an object is taken.
 * Left out on purpose: lakes and rivers (`SURFACE_WATERS`), water works and towers (not places to fill), shops and machines that sell
 * bottled water, single fuel pumps (their station is mapped), fuel for trains.
 */
export const KIND_RULES: readonly KindRule[] = [
  {
    key: 'amenity=fuel',
    forms: [{ amenity: 'fuel' }],
    kind: { phrase: 'fuel-station', facts: {} },
    commodity: 'fuel',
    evidence: 'implied',
  },
  {
    key: 'amenity=vending_machine,vending=fuel',
    forms: [{ amenity: 'vending_machine', vending: 'fuel' }],
    kind: { phrase: 'fuel-machine', facts: {} },
    commodity: 'fuel',
    evidence: 'doubtful',
    reason: 'fuel-kind-unknown',
  },
  {
    key: 'shop=fuel',
    forms: [{ shop: 'fuel' }],
    kind: { phrase: 'fuel-shop', facts: {} },
    commodity: 'fuel',
    evidence: 'doubtful',
    reason: 'fuel-kind-unknown',
  },
  {
    key: 'waterway=fuel',
    forms: [{ waterway: 'fuel' }],
    kind: { phrase: 'fuel-for-boats', facts: {} },
    commodity: 'fuel',
    evidence: 'doubtful',
    reason: 'for-boats',
    sticks: true,
  },
  {
    key: 'aeroway=fuel',
    forms: [{ aeroway: 'fuel' }],
    kind: { phrase: 'fuel-for-aircraft', facts: {} },
    commodity: 'fuel',
    evidence: 'doubtful',
    reason: 'for-aircraft',
    sticks: true,
  },
  {
    // Before the tanks: fire tanks are often tagged as both.
    key: 'emergency=water_tank',
    forms: [{ emergency: 'water_tank' }],
    kind: { phrase: 'fire-tank', facts: {} },
    commodity: 'water',
    waterClass: 'none',
    evidence: 'doubtful',
    reason: 'for-fire-fighting',
    sticks: true,
  },
  {
    key: 'amenity=drinking_water',
    forms: [{ amenity: 'drinking_water' }],
    kind: { phrase: 'drinking-water', facts: {} },
    commodity: 'water',
    waterClass: 'drinking',
    evidence: 'stated',
  },
  {
    key: 'amenity=water_point',
    forms: [{ amenity: 'water_point' }],
    kind: { phrase: 'water-point', facts: {} },
    commodity: 'water',
    waterClass: 'drinking',
    evidence: 'stated',
  },
  {
    key: 'waterway=water_point',
    forms: [{ waterway: 'water_point' }],
    kind: { phrase: 'water-point-for-boats', facts: {} },
    commodity: 'water',
    waterClass: 'drinking',
    evidence: 'doubtful',
    reason: 'for-boats',
    sticks: true,
  },
  {
    key: 'man_made=water_tap',
    forms: [{ man_made: 'water_tap' }],
    kind: { phrase: 'water-tap', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'implied',
    reason: 'not-stated-fit',
  },
  {
    key: 'man_made=water_well',
    forms: [{ man_made: 'water_well' }, { man_made: 'well' }, { man_made: 'village_pump' }],
    kind: { phrase: 'water-well', facts: {} },
    commodity: 'water',
    waterClass: 'washing',
    evidence: 'doubtful',
    reason: 'salt-unknown',
  },
  {
    key: 'natural=spring',
    forms: [{ natural: 'spring' }],
    kind: { phrase: 'spring', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'implied',
    reason: 'not-stated-fit',
  },
  {
    key: 'man_made=spring_box',
    forms: [{ man_made: 'spring_box' }],
    kind: { phrase: 'spring-box', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'implied',
    reason: 'not-stated-fit',
  },
  {
    key: 'natural=hot_spring',
    forms: [{ natural: 'hot_spring' }],
    kind: { phrase: 'hot-spring', facts: {} },
    commodity: 'water',
    waterClass: 'none',
    evidence: 'doubtful',
    reason: 'minerals-unknown',
  },
  {
    key: 'amenity=watering_place',
    forms: [{ amenity: 'watering_place' }],
    kind: { phrase: 'watering-place', facts: {} },
    commodity: 'water',
    waterClass: 'none',
    evidence: 'doubtful',
    reason: 'for-animals',
  },
  {
    key: 'natural=waterhole',
    forms: [{ natural: 'waterhole' }],
    kind: { phrase: 'waterhole', facts: {} },
    commodity: 'water',
    waterClass: 'none',
    evidence: 'doubtful',
    reason: 'for-animals',
  },
  {
    key: 'amenity=fountain',
    forms: [{ amenity: 'fountain' }],
    kind: { phrase: 'fountain', facts: {} },
    commodity: 'water',
    waterClass: 'none',
    evidence: 'doubtful',
    reason: 'decorative',
  },
  {
    key: 'man_made=storage_tank,content=water',
    forms: [{ man_made: 'storage_tank', content: 'water' }, { man_made: 'water_tank' }],
    kind: { phrase: 'water-tank', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'doubtful',
    reason: 'use-unknown',
  },
  {
    key: 'man_made=reservoir_covered',
    forms: [{ man_made: 'reservoir_covered' }],
    kind: { phrase: 'covered-reservoir', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'doubtful',
    reason: 'use-unknown',
  },
  {
    // Camp sites and places to empty a toilet tank say it so; whether the water is fit to drink is not said.
    key: 'water_point=yes',
    forms: [{ water_point: 'yes' }],
    kind: { phrase: 'place-with-water-point', facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'implied',
    reason: 'not-stated-fit',
  },
];

/** An object of any other kind whose tags speak of drinking water: the camp site with a tap. */
export const ANY_WITH_WATER: WaterKindRule = {
  key: 'drinking_water',
  forms: [{ drinking_water: 'yes' }],
  kind: { phrase: 'place-with-water', facts: {} },
  commodity: 'water',
  waterClass: 'none',
  evidence: 'doubtful',
  reason: 'use-unknown',
};

/** Rivers and lakes that the route comes by: found on the ground, never among the objects that readers keep as supplies. */
export const SURFACE_WATERS: Readonly<Record<'river' | 'lake', WaterKindRule>> = {
  river: surfaceWater('waterway=river', { waterway: 'river' }, 'river'),
  lake: surfaceWater('natural=water', { natural: 'water' }, 'lake'),
};

function surfaceWater(key: string, form: Tags, phrase: 'river' | 'lake'): WaterKindRule {
  return {
    key,
    forms: [form],
    kind: { phrase, facts: {} },
    commodity: 'water',
    waterClass: 'treatable',
    evidence: 'doubtful',
    reason: 'not-stated-fit',
  };
}

/** Prefixes of a key that say: not there any more, not in use, or not there yet. */
export const LIFECYCLE_PREFIXES = [
  'disused',
  'abandoned',
  'was',
  'removed',
  'razed',
  'demolished',
  'destroyed',
  'dismantled',
  'obliterated',
  'ruins',
  'closed',
  'vacant',
  'historic',
  'construction',
  'proposed',
  'planned',
] as const;

/** A key without its lifecycle prefix, and the prefix; null where it has none. */
export function prefixOf(key: string): [prefix: string | null, bare: string] {
  const colon = key.indexOf(':');
  const prefix = key.slice(0, Math.max(colon, 0));
  return (LIFECYCLE_PREFIXES as readonly string[]).includes(prefix)
    ? [prefix, key.slice(colon + 1)]
    : [null, key];
}

/** Keys of any object that speak of water; `drinkable` is what OSM has replaced by `drinking_water`. */
export const WATER_KEYS = ['drinking_water', 'drinkable', 'drinking_water:legal'] as const;

const mainKeyOf = (form: Tags): string => Object.keys(form)[0]!;
/** The key of each form by which kinds are looked up. */
export const MAIN_KEYS: readonly string[] = [
  ...new Set(KIND_RULES.flatMap((rule) => rule.forms.map(mainKeyOf))),
];
