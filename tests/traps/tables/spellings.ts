import { fuel, STATION, TAP, type Trap, water } from './trap.ts';

const FUELS = 'Key:fuel:*';
const WATER = 'Key:drinking_water';
const COUNTS = { evidence: 'stated', counts: true } as const;
const at = (tags: Record<string, string>) => ({ amenity: 'fuel', ...tags });
const petrol = { rig: 'petrol' } as const;

/** Values in other spellings, and kinds as they are met in the data. */
export const SPELLINGS: readonly Trap[] = [
  fuel(at({ 'fuel:diesel': 'No' }), 'fuel-not-sold', FUELS),
  fuel(at({ 'fuel:diesel': 'NO ' }), 'fuel-not-sold', FUELS),
  fuel(at({ 'fuel:diesel': 'false' }), 'fuel-not-sold', FUELS),
  fuel(at({ 'fuel:diesel': 'out_of_stock' }), 'fuel-not-sold', FUELS),
  fuel(at({ 'fuel:diesel': 'yes;no' }), 'fuel-unclear', FUELS),
  fuel(at({ 'fuel:diesel': 'sometimes' }), 'fuel-unclear', FUELS),
  fuel(at({ fuel: 'no' }), 'fuel-not-sold', 'Key:fuel'),
  fuel(at({ 'fuel:octane_95': 'Yes' }), 'other-fuels-listed', FUELS),
  fuel(at({ 'fuel:octane_99': 'yes' }), 'other-fuels-listed', FUELS),
  fuel(at({ 'fuel:unleaded': 'yes' }), 'other-fuels-listed', FUELS),
  fuel(at({ 'fuel:lpg': 'only' }), 'other-fuels-listed', FUELS),
  fuel(at({ 'fuel:biodiesel': 'yes' }), 'fuel-may-not-suit', FUELS),
  fuel(at({ 'fuel:taxfree_diesel': 'yes' }), 'fuel-may-not-suit', FUELS),
  fuel(at({ 'fuel:b100': 'yes' }), 'fuel-may-not-suit', FUELS),
  fuel(at({ 'fuel:diesel': 'yes' }), 'other-fuels-listed', FUELS, petrol),
  fuel(at({ 'fuel:diesel_b7': 'yes' }), 'other-fuels-listed', FUELS, petrol),
  fuel(at({ 'fuel:diesel': 'yes' }), 'never-implied', FUELS, { rig: 'lpg' }),
  fuel(at({}), 'never-implied', 'Tag:amenity=fuel', { rig: 'lpg' }),
  fuel(at({ 'fuel:lpg': 'No' }), 'fuel-not-sold', FUELS, { rig: 'lpg' }),
  fuel(at({ 'fuel:propane': 'yes' }), 'fuel-may-not-suit', FUELS, { rig: 'lpg' }),
  water({ ...TAP, drinking_water: 'No' }, 'tags-contradict', WATER, { waterClass: 'washing' }),
  water({ ...TAP, drinking_water: 'no ' }, 'tags-contradict', WATER, { waterClass: 'washing' }),
  water({ ...TAP, drinking_water: 'not_potable' }, 'tags-contradict', WATER, { waterClass: 'washing' }),
  water({ ...TAP, drinking_water: 'yes;no' }, 'fit-unclear', WATER, { waterClass: 'treatable' }),
  water({ ...TAP, drinking_water: 'sometimes' }, 'fit-unclear', WATER, { waterClass: 'treatable' }),
  water({ man_made: 'water_tap', drinking_water: 'Untreated' }, 'untreated', WATER, {
    waterClass: 'treatable',
    evidence: 'stated',
  }),
  water({ man_made: 'water_tap', drinking_water: 'non_potable' }, 'not-fit', WATER, {
    waterClass: 'washing',
    evidence: 'implied',
  }),
  water({ natural: 'spring', drinking_water: 'yes', intermittent: 'Yes' }, 'may-be-dry', 'Key:intermittent'),
  water({ natural: 'spring', drinking_water: 'yes', salt: 'Yes' }, 'salty', 'Key:salt', {
    waterClass: 'washing',
  }),
  water(
    { natural: 'spring', drinking_water: 'yes', 'drinking_water:legal': 'No' },
    'not-controlled',
    'Key:drinking_water:legal',
    { waterClass: 'treatable', evidence: 'stated' },
  ),
  water({ man_made: 'water_well', drinking_water: 'yes', pump: 'NO' }, 'no-pump', 'Key:pump', {
    evidence: 'stated',
  }),
  fuel(at({ 'fuel:diesel': 'Yes' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:diesel': 'YES' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:diesel': 'yes ' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:diesel': 'only' }), null, FUELS, COUNTS),
  fuel({ amenity: 'Fuel', 'fuel:diesel': 'yes' }, null, 'Tag:amenity=fuel', COUNTS),
  fuel(at({ 'fuel:diesel_b7': 'yes' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:euro_diesel': 'yes' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:diesel:class2': 'yes' }), null, FUELS, COUNTS),
  fuel(at({ 'fuel:HGV_diesel': 'yes' }), 'lorry-pump', FUELS, COUNTS),
  fuel(at({ 'fuel:GTL_diesel': 'yes' }), 'diesel-kin', FUELS, COUNTS),
  fuel(at({ 'fuel:adblue': 'yes' }), null, FUELS, { evidence: 'implied', counts: true }),
  fuel(at({ 'fuel:discount': 'shopper' }), null, FUELS, { evidence: 'implied', counts: true }),
  fuel(at({ 'fuel:unleaded': 'yes' }), null, FUELS, { ...COUNTS, ...petrol }),
  fuel(at({ 'fuel:octane_99': 'yes' }), null, FUELS, { ...COUNTS, ...petrol }),
  fuel(at({ 'fuel:lpg': 'YES' }), null, FUELS, { ...COUNTS, rig: 'lpg' }),
  water({ man_made: 'water_tap', drinking_water: 'Yes' }, null, WATER, COUNTS),
  water({ man_made: 'water_tap', drinking_water: 'yes ' }, null, WATER, COUNTS),
  water({ ...TAP, fee: 'yes' }, 'fee', 'Key:fee', COUNTS),
  fuel({ ...STATION, 'fuel:adblue': 'yes' }, null, FUELS, COUNTS),
];
