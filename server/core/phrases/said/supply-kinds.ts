import type { NoFacts, Phrased } from './said.ts';

/** Objects that often have water beside what they are for. */
export type SupplyHost =
  | 'amenity=fuel'
  | 'amenity=parking'
  | 'amenity=place_of_worship'
  | 'amenity=ranger_station'
  | 'amenity=restaurant'
  | 'amenity=shelter'
  | 'amenity=toilets'
  | 'highway=rest_area'
  | 'highway=services'
  | 'tourism=alpine_hut'
  | 'tourism=camp_pitch'
  | 'tourism=camp_site'
  | 'tourism=caravan_site'
  | 'tourism=hostel'
  | 'tourism=hotel'
  | 'tourism=information'
  | 'tourism=picnic_site'
  | 'tourism=wilderness_hut';

/** What a supply is, for people. */
export interface SupplyKinds {
  'fuel-station': NoFacts;
  'fuel-machine': NoFacts;
  'fuel-shop': NoFacts;
  'fuel-for-boats': NoFacts;
  'fuel-for-aircraft': NoFacts;
  'fire-tank': NoFacts;
  'drinking-water': NoFacts;
  'water-point': NoFacts;
  'water-point-for-boats': NoFacts;
  'water-tap': NoFacts;
  'water-well': NoFacts;
  spring: NoFacts;
  'spring-box': NoFacts;
  'hot-spring': NoFacts;
  'watering-place': NoFacts;
  waterhole: NoFacts;
  river: NoFacts;
  lake: NoFacts;
  fountain: NoFacts;
  'water-tank': NoFacts;
  'covered-reservoir': NoFacts;
  'place-with-water-point': NoFacts;
  'place-with-water': NoFacts;
  /** The user's own. */
  'own-point': NoFacts;
  'laid-depot': NoFacts;
  'brought-by-others': NoFacts;
  'second-vehicle': NoFacts;
  'water-at': { host: SupplyHost };
}
export type SupplyKind = Phrased<SupplyKinds>;

/** How a place is called: its own name, or what it is. */
export type PlaceName = string | SupplyKind;
