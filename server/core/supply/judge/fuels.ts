import type { FuelKind } from '../../../contract/rig.ts';
import type { TagReasonCode } from '../../phrases/supply.ts';

export interface FuelRule {
  /** `=yes` on any of these says that the fuel is sold. */
  keys: readonly string[];
  /** Further keys that name a grade of it: the number of octanes is free. */
  grades?: RegExp;
  /** True when a station that tells nothing of its fuels is taken to sell it. */
  impliedByStation: boolean;
  /** `=yes` on one of these says that a near kin is sold, with what to know about it. */
  kin: Readonly<Record<string, TagReasonCode>>;
  /** What to know when nothing but these is sold. */
  onlyThese: readonly { keys: readonly string[]; code: TagReasonCode }[];
}

/**
 * How OSM names what a station sells, for each fuel of a rig. Keys are case-sensitive, values yes and no.
 * Names: id-tagging-schema, field `fuel:`; HVO, petrol and gasoline are used by mappers but are not in it.
 */
export const FUEL_RULES: Record<FuelKind, FuelRule> = {
  diesel: {
    // Grades by their standard or their winter class are diesel (OSM wiki, Key:fuel:*; names met in the data, from memory).
    keys: ['fuel:diesel'],
    grades:
      /^fuel:(diesel[_:](b7|b10|euro5|euro6|class[0-3]|class_[0-3]|premium|plus|winter|summer|arctic|10ppm|50)|euro_?diesel|b7|b10|(cold_weather|winter|premium|ulsd|auto|eco|super)_?diesel|ulsd|gasoil|gazole|gasoleo)$/,
    impliedByStation: true,
    kin: {
      'fuel:HGV_diesel': 'lorry-pump',
      'fuel:diesel_hgv': 'lorry-pump',
      'fuel:truck_diesel': 'lorry-pump',
      // Paraffinic diesel, EN 15940: most engines take it, the handbook says which (from memory).
      'fuel:GTL_diesel': 'diesel-kin',
      'fuel:HVO': 'diesel-kin',
      'fuel:HVO100': 'diesel-kin',
      // May be pure or a high blend, which many engines do not take (from memory).
      'fuel:biodiesel': 'fuel-may-not-suit',
      'fuel:b20': 'fuel-may-not-suit',
      'fuel:b30': 'fuel-may-not-suit',
      'fuel:b100': 'fuel-may-not-suit',
      'fuel:diesel_b30': 'fuel-may-not-suit',
      'fuel:diesel_b100': 'fuel-may-not-suit',
      // Dyed, for farms and ships: not allowed on roads in most countries (from memory).
      'fuel:taxfree_diesel': 'fuel-may-not-suit',
      'fuel:untaxed_diesel': 'fuel-may-not-suit',
      'fuel:red_diesel': 'fuel-may-not-suit',
      'fuel:diesel_red': 'fuel-may-not-suit',
    },
    onlyThese: [],
  },
  petrol: {
    keys: [
      'fuel:petrol',
      'fuel:gasoline',
      'fuel:e5',
      'fuel:e10',
      'fuel:octane_80',
      'fuel:octane_85',
      'fuel:octane_87',
      'fuel:octane_88',
      'fuel:octane_89',
      'fuel:octane_90',
      'fuel:octane_91',
      'fuel:octane_92',
      'fuel:octane_93',
      'fuel:octane_95',
      'fuel:octane_97',
      'fuel:octane_98',
      'fuel:octane_100',
    ],
    // The number is free by the wiki (Key:fuel:*); words for petrol as mappers write them, from memory.
    grades:
      /^fuel:(octane_(7\d|8\d|9\d|10[0-4])(_.*)?|unleaded(_\d+)?|lead_free|benzin|benzine|essence|gasolina|nafta|super|super_?plus|premium|regular|mogas)$/,
    impliedByStation: true,
    kin: {},
    onlyThese: [
      // Under 91 RON most engines of today are not meant to run; North America counts AKI, 4 to 5 lower (from memory).
      {
        keys: [
          'fuel:octane_80',
          'fuel:octane_85',
          'fuel:octane_87',
          'fuel:octane_88',
          'fuel:octane_89',
          'fuel:octane_90',
        ],
        code: 'low-octane',
      },
      { keys: ['fuel:e5', 'fuel:e10'], code: 'ethanol-blend' },
    ],
  },
  lpg: {
    keys: ['fuel:lpg'],
    impliedByStation: false,
    // Often bottles for cooking rather than a pump for vehicles (from memory).
    kin: { 'fuel:propane': 'fuel-may-not-suit' },
    onlyThese: [],
  },
  cng: { keys: ['fuel:cng'], impliedByStation: false, kin: {}, onlyThese: [] },
  lng: { keys: ['fuel:lng'], impliedByStation: false, kin: {}, onlyThese: [] },
  // No field of the tagging schema has it; `fuel:kerosene` as mappers write it (from memory).
  kerosene: { keys: ['fuel:kerosene'], impliedByStation: false, kin: {}, onlyThese: [] },
  e85: { keys: ['fuel:e85'], impliedByStation: false, kin: {}, onlyThese: [] },
};

/** Sold at stations but driven on by nobody: listing them says nothing about fuels. */
export const NOT_A_FUEL: readonly string[] = [
  'fuel:adblue',
  'fuel:adblue:canister',
  'fuel:def',
  'fuel:urea',
  'fuel:discount',
  'fuel:others',
];
