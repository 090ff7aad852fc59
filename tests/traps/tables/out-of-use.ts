import { LIFECYCLE_PREFIXES } from '../../../server/core/supply/tags/kinds.ts';
import { fuel, STATION, TAP, type Trap, water } from './trap.ts';

const LIFECYCLE = 'Lifecycle prefix';

/** Tags that say of the whole object that it is not there, or not in use. */
const STATES: readonly [key: string, value: string, source: string][] = [
  ['disused', 'yes', 'Key:disused'],
  ['disused', 'YES', 'Key:disused'],
  ['abandoned', 'yes', 'Key:abandoned'],
  ['ruins', 'yes', 'Key:ruins'],
  ['demolished', 'yes', LIFECYCLE],
  ['removed', 'yes', LIFECYCLE],
  ['razed', 'yes', LIFECYCLE],
  ['destroyed', 'yes', LIFECYCLE],
  ['dismantled', 'yes', LIFECYCLE],
  ['vacant', 'yes', LIFECYCLE],
  ['construction', 'yes', 'Key:construction'],
  ['proposed', 'yes', 'Key:proposed'],
  ['planned', 'yes', LIFECYCLE],
  ['historic', 'yes', 'Key:historic'],
];

export const OUT_OF_USE: readonly Trap[] = [
  ...LIFECYCLE_PREFIXES.flatMap((prefix) => [
    fuel({ [`${prefix}:amenity`]: 'fuel', 'fuel:diesel': 'yes' }, 'out-of-use', LIFECYCLE),
    fuel({ ...STATION, [`${prefix}:amenity`]: 'yes' }, 'out-of-use', LIFECYCLE),
    fuel({ amenity: 'fuel', [`${prefix}:fuel:diesel`]: 'yes' }, 'out-of-use', LIFECYCLE),
    water({ [`${prefix}:amenity`]: 'drinking_water' }, 'out-of-use', LIFECYCLE),
    water({ ...TAP, [`${prefix}:drinking_water`]: 'yes' }, 'out-of-use', LIFECYCLE),
    water({ [`${prefix}:tourism`]: 'camp_site', drinking_water: 'yes' }, 'out-of-use', LIFECYCLE),
  ]),
  fuel({ ...STATION, 'disused:fuel:diesel': 'yes' }, 'out-of-use', LIFECYCLE),
  fuel({ ...STATION, 'disused:amenity': 'fuel' }, 'out-of-use', LIFECYCLE),
  water({ natural: 'spring', drinking_water: 'yes', 'was:natural': 'spring' }, 'out-of-use', LIFECYCLE),
  water({ 'abandoned:man_made': 'water_well', drinking_water: 'yes' }, 'out-of-use', LIFECYCLE),
  water({ 'disused:building': 'yes', drinking_water: 'yes' }, 'out-of-use', LIFECYCLE),
  ...STATES.flatMap(([key, value, source]) => [
    fuel({ ...STATION, [key]: value }, 'out-of-use', source),
    water({ ...TAP, [key]: value }, 'out-of-use', source),
  ]),
  fuel({ ...STATION, closed: 'yes' }, 'closed', LIFECYCLE),
  water({ ...TAP, closed: 'yes' }, 'closed', LIFECYCLE),
  fuel({ ...STATION, permanently_closed: 'yes' }, 'closed', LIFECYCLE),
  fuel({ ...STATION, shop: 'vacant' }, 'closed', 'Tag:shop=vacant'),
  fuel({ ...STATION, status: 'closed' }, 'closed', 'Key:status'),
  fuel({ ...STATION, status: 'abandoned' }, 'out-of-use', 'Key:status'),
  water({ man_made: 'water_well', drinking_water: 'yes', status: 'Broken' }, 'broken', 'Key:status'),
  water({ man_made: 'water_well', drinking_water: 'yes', condition: 'dry' }, 'broken', 'Key:condition'),
  water({ ...TAP, operational_status: 'broken' }, 'broken', 'Key:operational_status'),
  water({ ...TAP, operational_status: 'needs_maintenance' }, 'status-unclear', 'Key:operational_status'),
  water({ man_made: 'water_well', drinking_water: 'yes', 'pump:status': 'broken' }, 'broken', 'Key:pump'),
  fuel({ ...STATION, end_date: '2019' }, 'out-of-use', 'Key:end_date'),
  fuel({ ...STATION, end_date: '2019-05-04' }, 'out-of-use', 'Key:end_date'),
  water({ ...TAP, end_date: '2019-05' }, 'out-of-use', 'Key:end_date'),
  fuel({ ...STATION, end_date: '~2010' }, 'status-unclear', 'Key:end_date'),
  water({ ...TAP, end_date: 'before 2015' }, 'status-unclear', 'Key:end_date'),
  fuel({ ...STATION, start_date: '2199' }, 'out-of-use', 'Key:start_date'),
  water({ ...TAP, start_date: '2199-03-01' }, 'out-of-use', 'Key:start_date'),
  fuel({ ...STATION, opening_date: '2199-01' }, 'out-of-use', 'Key:opening_date'),
  fuel({ ...STATION, opening_date: 'next spring' }, 'status-unclear', 'Key:opening_date'),
  // What stands beside these is in use, and they must not be lost.
  fuel({ ...STATION, 'disused:amenity': 'restaurant' }, null, LIFECYCLE, {
    evidence: 'stated',
    counts: true,
  }),
  fuel({ ...STATION, disused: 'no' }, null, 'Key:disused', { evidence: 'stated', counts: true }),
  fuel({ ...STATION, start_date: '1964' }, null, 'Key:start_date', { evidence: 'stated', counts: true }),
  fuel({ ...STATION, historic: 'monument' }, null, 'Key:historic', { evidence: 'stated', counts: true }),
  water({ amenity: 'shelter', drinking_water: 'yes', 'disused:shop': 'kiosk' }, null, LIFECYCLE, {
    evidence: 'stated',
    counts: true,
  }),
];
