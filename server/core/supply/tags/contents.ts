import type { Tags } from '../../input/sources.ts';
import { hostOf } from './hosts.ts';

/** Objects whose `drinking_water=*` speaks of what they hold or carry, not of a tap that anybody can draw from. */
interface ContentsRule {
  readonly key: string;
  readonly values: readonly string[] | 'any';
  /** Page of the OSM wiki. */
  readonly source: string;
}

const CONTENTS_RULES: readonly ContentsRule[] = [
  {
    key: 'man_made',
    values: [
      'pipeline',
      'water_works',
      'wastewater_plant',
      'water_tower',
      'reservoir_covered',
      'pumping_station',
      'pump_station',
      'desalination_plant',
      'dyke',
      'tunnel',
      'aqueduct',
      'manhole',
    ],
    source: 'Key:man_made',
  },
  {
    key: 'building',
    values: ['water_tower', 'water_works', 'reservoir', 'pumping_station'],
    source: 'Key:building',
  },
  { key: 'waterway', values: 'any', source: 'Key:waterway' },
  { key: 'water', values: 'any', source: 'Key:water' },
  {
    key: 'natural',
    values: ['water', 'wetland', 'glacier', 'bay', 'strait', 'coastline'],
    source: 'Key:natural',
  },
  {
    key: 'landuse',
    values: [
      'reservoir',
      'basin',
      'salt_pond',
      'aquaculture',
      'forest',
      'farmland',
      'meadow',
      'residential',
      'industrial',
      'military',
    ],
    source: 'Key:landuse',
  },
  {
    key: 'leisure',
    values: ['nature_reserve', 'swimming_pool', 'swimming_area', 'water_park'],
    source: 'Key:leisure',
  },
  { key: 'boundary', values: 'any', source: 'Key:boundary' },
  { key: 'place', values: 'any', source: 'Key:place' },
  { key: 'amenity', values: ['prison', 'swimming_pool'], source: 'Tag:amenity=prison' },
  {
    key: 'emergency',
    values: ['fire_hydrant', 'fire_water_pond', 'suction_point'],
    source: 'Tag:emergency=fire_hydrant',
  },
  { key: 'pipeline', values: 'any', source: 'Tag:man_made=pipeline' },
  { key: 'power', values: 'any', source: 'Key:power' },
];

/** The tag that makes an object one that only holds water; null where it is none, or a place where people fill. */
export function contentsOf(tags: Tags): string | null {
  if (hostOf(tags) !== null) return null;
  for (const { key, values } of CONTENTS_RULES) {
    const value = tags[key]?.trim().toLowerCase();
    if (value === undefined || value === 'no') continue;
    if (values === 'any' || values.includes(value)) return `${key}=${tags[key]}`;
  }
  return null;
}
