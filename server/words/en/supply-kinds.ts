import type { SupplyHost, SupplyKinds } from '../../core/phrases/supply-kinds.ts';
import type { Sayings } from '../parts/catalogue.ts';
import { parts } from '../parts/part.ts';

const HOSTS: Record<SupplyHost, string> = {
  'amenity=fuel': 'fuel station',
  'amenity=parking': 'car park',
  'amenity=place_of_worship': 'place of worship',
  'amenity=ranger_station': 'ranger station',
  'amenity=restaurant': 'restaurant',
  'amenity=shelter': 'shelter',
  'amenity=toilets': 'toilets',
  'highway=rest_area': 'rest area',
  'highway=services': 'service area',
  'tourism=alpine_hut': 'mountain hut',
  'tourism=camp_pitch': 'camp pitch',
  'tourism=camp_site': 'camp site',
  'tourism=caravan_site': 'caravan site',
  'tourism=hostel': 'hostel',
  'tourism=hotel': 'hotel',
  'tourism=information': 'information point',
  'tourism=picnic_site': 'picnic site',
  'tourism=wilderness_hut': 'wilderness hut',
};

/** What a supply is, in running text. */
export const SUPPLY_KINDS: Sayings<SupplyKinds> = {
  'fuel-station': () => parts`fuel station`,
  'fuel-machine': () => parts`fuel machine`,
  'fuel-shop': () => parts`fuel shop`,
  'fuel-for-boats': () => parts`fuel for boats`,
  'fuel-for-aircraft': () => parts`fuel for aircraft`,
  'fire-tank': () => parts`water tank for fire fighting`,
  'drinking-water': () => parts`drinking water`,
  'water-point': () => parts`water point`,
  'water-point-for-boats': () => parts`water point for boats`,
  'water-tap': () => parts`water tap`,
  'water-well': () => parts`water well`,
  spring: () => parts`spring`,
  'spring-box': () => parts`spring box`,
  'hot-spring': () => parts`hot spring`,
  'watering-place': () => parts`watering place for animals`,
  waterhole: () => parts`waterhole`,
  river: () => parts`river, surface water`,
  lake: () => parts`lake or pond, surface water`,
  fountain: () => parts`fountain`,
  'water-tank': () => parts`water tank`,
  'covered-reservoir': () => parts`covered reservoir`,
  'place-with-water-point': () => parts`place with a water point`,
  'place-with-water': () => parts`place with water`,
  'water-at': ({ host }) => parts`water at: ${HOSTS[host]}`,
};
