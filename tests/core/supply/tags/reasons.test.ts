import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../server/core/input/sources.ts';
import type { SupplyReasonCode } from '../../../../server/core/phrases/supply.ts';
import { classify, type Judging } from '../../../../server/core/supply/judge/rules.ts';
import type { LineVerdict, WaterTreated } from '../../../../server/core/supply/judge/treats.ts';
import { toSupplyFeatures } from '../../../../server/core/supply/points/features.ts';
import { REASON_RULES } from '../../../../server/core/supply/tags/reasons.ts';
import { openingHours } from '../../../../server/io/opening-hours.ts';
import { textOf } from '../../../../server/words/words-of.ts';
import { anyJudging, anyTags } from '../any-tags.ts';
import { codesOf, nodeOf, PLAIN, type Place, pointsOf } from '../judged.ts';

const STATION = { amenity: 'fuel', 'fuel:diesel': 'yes' };
const TAP = { amenity: 'drinking_water' };
const reports = (on: string, works: boolean): Partial<Judging> => ({
  on: '2026-05-31',
  confirmations: [{ id: 'node/1', on, works }],
});

const treated = (changes: Partial<WaterTreated>): Partial<Judging> => ({
  treats: () => ({
    salt: 'none',
    saltOn: null,
    line: null,
    filling: null,
    treatEverything: false,
    ...changes,
  }),
});

const FIT: LineVerdict & { fit: true } = {
  fit: true,
  as: {
    phrase: 'taken-as',
    facts: { kind: 'spring', logs: { bacteria: 6, viruses: 4, protozoa: 3 }, at: 'tap' },
  },
  remarks: [],
};
const FILLING: WaterTreated['filling'] = {
  phrase: 'filled-in',
  facts: { litres: 70, minutes: 23, lPerMin: 3, how: 'noted' },
};

const HOURS: Partial<Judging> = { on: '2026-01-15', readHours: openingHours };

/** One case for each reason: the tags, and what they are judged for. */
const CASES: Record<
  Exclude<
    SupplyReasonCode,
    | 'tags-differ'
    | 'no-opening-found'
    | 'no-way-across'
    | 'way-not-looked-at'
    | 'not-there-yet'
    | 'laid-litres'
    | 'no-longer-there'
    | 'litres-told'
    | 'own-point'
    | 'corrected'
  >,
  [Tags, Partial<Judging>?, Place?]
> = {
  'reported-out': [TAP, reports('2026-05-01', false)],
  'out-of-use': [{ 'disused:amenity': 'fuel' }],
  closed: [{ ...STATION, opening_hours: 'closed' }],
  broken: [{ man_made: 'water_well', 'pump:status': 'broken' }],
  'not-public': [{ ...TAP, access: 'private' }],
  'permit-needed': [{ ...TAP, access: 'permit' }],
  'out-of-season': [{ ...TAP, seasonal: 'winter' }, { on: '2026-01-15' }],
  'no-pump': [{ man_made: 'water_well', pump: 'no' }],
  'fuel-not-sold': [{ amenity: 'fuel', 'fuel:diesel': 'no' }],
  'grade-below-engine': [
    { amenity: 'fuel', 'fuel:octane_91': 'yes' },
    { fuelKind: 'petrol', engine: { octane: 95 } },
  ],
  'blend-beyond-engine': [
    { amenity: 'fuel', 'fuel:e10': 'yes' },
    { fuelKind: 'petrol', engine: { ethanolPercent: 5 } },
  ],
  'grade-not-stated': [
    { amenity: 'fuel', 'fuel:petrol': 'yes' },
    { fuelKind: 'petrol', engine: { octane: 95 } },
  ],
  'for-aircraft': [{ aeroway: 'fuel' }],
  'for-boats': [{ waterway: 'fuel' }],
  'for-trains': [{ ...STATION, railway: 'fuel' }],
  'not-for-cars': [{ ...STATION, motor_vehicle: 'no' }],
  'members-only': [{ ...STATION, membership: 'required' }],
  'words-deny': [{ ...STATION, note: 'Permanently closed' }],
  'hours-unread': [{ ...STATION, opening_hours: 'whenever' }, HOURS],
  'tags-contradict': [{ ...TAP, drinking_water: 'no' }],
  'for-fire-fighting': [{ emergency: 'water_tank' }],
  'for-animals': [{ amenity: 'watering_place' }],
  decorative: [{ amenity: 'fountain' }],
  'not-fit': [{ natural: 'spring', drinking_water: 'no' }],
  salty: [{ natural: 'spring', salt: 'yes' }],
  untreated: [{ natural: 'spring', drinking_water: 'untreated' }],
  'not-controlled': [{ natural: 'spring', drinking_water: 'yes', 'drinking_water:legal': 'no' }],
  'not-stated-fit': [{ natural: 'spring' }],
  'fit-on-condition': [{ natural: 'spring', drinking_water: 'conditional' }],
  'fit-unclear': [{ natural: 'spring', drinking_water: 'perhaps' }],
  'salt-unknown': [{ man_made: 'water_well' }],
  'minerals-unknown': [{ natural: 'hot_spring' }],
  'salt-found': [TAP, treated({ salt: 'bad', saltOn: '2026-05-01' })],
  'line-lacks': [
    { natural: 'spring' },
    treated({ line: { fit: false, lacks: [{ phrase: 'salt-stays', facts: {} }] } }),
  ],
  'use-unknown': [{ man_made: 'storage_tank', content: 'water' }],
  'never-implied': [{ amenity: 'fuel' }, { fuelKind: 'lng' }],
  'other-fuels-listed': [{ amenity: 'fuel', 'fuel:octane_95': 'yes' }],
  'grade-not-sold': [{ amenity: 'fuel', 'fuel:octane_95': 'no' }, { fuelKind: 'petrol' }],
  'fuel-kind-unknown': [{ shop: 'fuel' }],
  'fuel-unclear': [{ amenity: 'fuel', 'fuel:diesel': 'perhaps' }],
  'fuel-may-not-suit': [{ amenity: 'fuel', 'fuel:biodiesel': 'yes' }],
  'lorries-only': [{ ...STATION, hgv: 'only' }],
  'access-unclear': [{ ...STATION, access: 'members' }],
  'hard-to-fill': [{ ...TAP, bottle: 'no' }],
  'status-unclear': [{ ...TAP, operational_status: 'perhaps' }],
  'may-be-dry': [{ natural: 'spring', intermittent: 'yes' }],
  'season-unknown': [{ ...TAP, seasonal: 'yes' }],
  stale: [{ ...TAP, check_date: '2001-01-01' }, { on: '2026-01-15' }],
  'gone-in-newer': [TAP, {}, { goneIn: 'newer.osm.pbf' }],
  'on-closed-ground': [TAP, {}, { closedGround: [{ what: 'military', id: 'way/9', name: 'Camp North' }] }],
  undated: [TAP, { on: '2026-01-15' }, { undated: true }],
  'evidence-below': [{ amenity: 'fuel' }, { counting: { fuel: 'stated', water: 'stated' } }],
  'confirmation-expired': [TAP, { ...reports('2026-05-01', true), on: null, today: '2026-05-31' }],
  'confirmation-ahead': [TAP, reports('2026-06-01', true)],
  'confirmation-undated': [TAP, { ...reports('2026-05-30', true), on: null }],
  'confirmation-not-yet': [
    TAP,
    {
      on: '2026-05-31',
      confirmations: [{ id: 'node/1', on: '2026-05-01', works: true, from: '2026-06-01' }],
    },
  ],
  confirmed: [TAP, reports('2026-05-30', true)],
  'confirm-again': [TAP, reports('2026-04-30', true)],
  'confirmed-against-tags': [{ ...TAP, access: 'private' }, reports('2026-05-30', true)],
  'class-by-tags': [{ natural: 'spring' }, reports('2026-05-30', true)],
  'treat-everything': [TAP, treated({ line: FIT, treatEverything: true })],
  'made-fit': [{ natural: 'spring' }, treated({ line: FIT })],
  'treated-as-far-as-known': [
    { natural: 'spring' },
    treated({ line: { ...FIT, remarks: [{ phrase: 'chemicals-not-known', facts: {} }] } }),
  ],
  'salt-noted': [{ man_made: 'water_well' }, treated({ salt: 'ok', saltOn: '2026-05-01' })],
  'time-to-fill': [TAP, treated({ filling: FILLING })],
  'in-season': [{ ...TAP, seasonal: 'summer' }, { on: '2026-01-15' }],
  'customers-only': [{ ...STATION, access: 'customers' }],
  'access-unknown': [{ ...STATION, access: 'unknown' }],
  'lorry-pump': [{ amenity: 'fuel', 'fuel:HGV_diesel': 'yes' }],
  'diesel-kin': [{ amenity: 'fuel', 'fuel:GTL_diesel': 'yes' }],
  'ethanol-blend': [{ amenity: 'fuel', 'fuel:e10': 'yes' }, { fuelKind: 'petrol' }],
  'low-octane': [{ amenity: 'fuel', 'fuel:octane_80': 'yes' }, { fuelKind: 'petrol' }],
  'powered-pump': [{ man_made: 'water_well', pump: 'powered' }],
  fee: [{ ...TAP, fee: 'yes' }],
  'opening-hours': [{ ...STATION, opening_hours: 'Mo-Fr 08:00-17:00' }],
  'check-date-ahead': [{ ...TAP, check_date: '2206-01-01' }, { on: '2026-01-15' }],
  'mapper-doubt': [{ ...TAP, fixme: 'has moved' }],
};

describe('reasons', () => {
  it.each(Object.entries(CASES))(
    '%s is reached, and says what and why in one line',
    (code, [tags, judge, place]) => {
      const points = pointsOf(tags, judge, place);
      const reason = points.flatMap((point) => point.reasons).find((one) => one.code === code);
      expect(reason && textOf(reason)).toMatch(/^[A-Z][^\n]{10,200}[^.]$/);
      for (const point of points) {
        if (REASON_RULES[code as SupplyReasonCode].effect === 'blocks') expect(point.counts).toBe(false);
      }
    },
  );

  it('tags-differ is reached where merged objects differ', () => {
    const ring = [
      [88, -35],
      [88.01, -35],
      [88.01, -34.99],
      [88, -34.99],
      [88, -35],
    ];
    const area = {
      ...nodeOf(STATION, { id: 'way/7' }),
      geometry: { type: 'Polygon' as const, coordinates: [ring] },
    };
    const node = nodeOf({ amenity: 'fuel', 'fuel:diesel': 'no' }, { lon: 88.005, lat: -34.995 });
    const [point] = classify(toSupplyFeatures([area, node]).features, PLAIN);
    const differ = point?.reasons.find(({ code }) => code === 'tags-differ');
    expect(differ && textOf(differ)).toContain('node/1: fuel:diesel');
  });

  it('list what decides before what advises', () => {
    fc.assert(
      fc.property(anyTags, anyJudging, (tags, judge) => {
        for (const point of pointsOf(tags, judge)) {
          const advises = codesOf(point).map(
            (code) => REASON_RULES[code as SupplyReasonCode].effect === 'advises',
          );
          expect(advises).toEqual([...advises].sort((a, b) => Number(a) - Number(b)));
        }
      }),
    );
  });
});
