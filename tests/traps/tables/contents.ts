import { TAP, type Trap, water } from './trap.ts';

const HELD = { waterClass: 'treatable' } as const;
const COUNTS = { evidence: 'stated', counts: true } as const;

/** What holds or carries water that is fit to drink, and is no place to draw it. */
const HOLDERS: readonly [tags: Record<string, string>, source: string][] = [
  [{ man_made: 'pipeline', substance: 'water' }, 'Tag:man_made=pipeline'],
  [{ man_made: 'water_works' }, 'Tag:man_made=water_works'],
  [{ man_made: 'wastewater_plant' }, 'Tag:man_made=wastewater_plant'],
  [{ man_made: 'water_tower' }, 'Tag:man_made=water_tower'],
  [{ building: 'water_tower' }, 'Tag:building=water_tower'],
  [{ man_made: 'reservoir_covered' }, 'Tag:man_made=reservoir_covered'],
  [{ man_made: 'pumping_station' }, 'Tag:man_made=pumping_station'],
  [{ man_made: 'desalination_plant' }, 'Key:man_made'],
  [{ man_made: 'aqueduct' }, 'Key:man_made'],
  [{ waterway: 'dam' }, 'Tag:waterway=dam'],
  [{ waterway: 'canal' }, 'Tag:waterway=canal'],
  [{ waterway: 'river' }, 'Tag:waterway=river'],
  [{ waterway: 'stream' }, 'Tag:waterway=stream'],
  [{ natural: 'water' }, 'Tag:natural=water'],
  [{ natural: 'water', water: 'lake' }, 'Tag:water=lake'],
  [{ water: 'pond' }, 'Key:water'],
  [{ natural: 'wetland' }, 'Tag:natural=wetland'],
  [{ natural: 'glacier' }, 'Tag:natural=glacier'],
  [{ landuse: 'reservoir' }, 'Tag:landuse=reservoir'],
  [{ landuse: 'basin' }, 'Tag:landuse=basin'],
  [{ boundary: 'protected_area' }, 'Tag:boundary=protected_area'],
  [{ boundary: 'administrative' }, 'Tag:boundary=administrative'],
  [{ leisure: 'nature_reserve' }, 'Tag:leisure=nature_reserve'],
  [{ leisure: 'swimming_pool' }, 'Tag:leisure=swimming_pool'],
  [{ place: 'village' }, 'Key:place'],
  [{ place: 'hamlet', name: 'Kora' }, 'Key:place'],
  [{ amenity: 'prison' }, 'Tag:amenity=prison'],
  [{ emergency: 'fire_hydrant' }, 'Tag:emergency=fire_hydrant'],
  [{ emergency: 'suction_point' }, 'Tag:emergency=suction_point'],
  [{ power: 'plant' }, 'Key:power'],
];

/** Where people do draw water. */
const PLACES: readonly [tags: Record<string, string>, source: string][] = [
  [{ natural: 'spring' }, 'Tag:natural=spring'],
  [{ man_made: 'water_well' }, 'Tag:man_made=water_well'],
  [{ man_made: 'water_tap' }, 'Tag:man_made=water_tap'],
  [{ tourism: 'camp_site' }, 'Tag:tourism=camp_site'],
  [{ tourism: 'camp_site', landuse: 'forest' }, 'Tag:tourism=camp_site'],
  [{ amenity: 'shelter' }, 'Tag:amenity=shelter'],
  [{ amenity: 'toilets' }, 'Tag:amenity=toilets'],
  [{ highway: 'rest_area' }, 'Tag:highway=rest_area'],
  [{ amenity: 'fountain' }, 'Tag:amenity=fountain'],
];

export const CONTENTS: readonly Trap[] = [
  ...HOLDERS.map(([tags, source]) => water({ ...tags, drinking_water: 'yes' }, 'use-unknown', source, HELD)),
  water(
    { man_made: 'water_works', 'drinking_water:legal': 'yes' },
    'use-unknown',
    'Key:drinking_water:legal',
    HELD,
  ),
  water({ man_made: 'storage_tank', content: 'water' }, 'use-unknown', 'Tag:man_made=storage_tank', HELD),
  water({ emergency: 'water_tank', drinking_water: 'yes' }, 'for-fire-fighting', 'Tag:emergency=water_tank'),
  water({ man_made: 'water_tap' }, 'not-stated-fit', 'Tag:man_made=water_tap', {
    ...HELD,
    evidence: 'implied',
  }),
  water({ natural: 'spring' }, 'not-stated-fit', 'Tag:natural=spring', { ...HELD, evidence: 'implied' }),
  water({ man_made: 'water_well' }, 'salt-unknown', 'Tag:man_made=water_well', { waterClass: 'washing' }),
  water({ natural: 'hot_spring' }, 'minerals-unknown', 'Tag:natural=hot_spring', { waterClass: 'none' }),
  water({ amenity: 'fountain' }, 'decorative', 'Tag:amenity=fountain', { waterClass: 'none' }),
  water({ amenity: 'watering_place' }, 'for-animals', 'Tag:amenity=watering_place', { waterClass: 'none' }),
  water({ natural: 'waterhole' }, 'for-animals', 'Tag:natural=waterhole', { waterClass: 'none' }),
  water({ ...TAP, bottle: 'no' }, 'hard-to-fill', 'Key:bottle'),
  ...PLACES.map(([tags, source]) => water({ ...tags, drinking_water: 'yes' }, null, source, COUNTS)),
  water({ man_made: 'water_tower', amenity: 'drinking_water' }, null, 'Tag:amenity=drinking_water', COUNTS),
];
