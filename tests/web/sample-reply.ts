import type { Edge, Gap, Passing, Report } from '../../server/contract/analysis.ts';
import type { AnalysisReply, MapData, RoutePiece } from '../../server/contract/answers/map.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { SAMPLE_FUEL_USE } from './sample-fuel-use.ts';
import { SAMPLE_WATER_USE } from './sample-water-use.ts';

/**
 * A small hand-made reply on an invented coast: four fuel gaps, four water gaps, one of each verdict, one
 * point with both commodities that is passed twice, and a stretch without cover for water.
 */

type Stop = { id: string; name: string | null; atKm: number };

const START: Edge = { kind: 'start', id: null, name: 'Low Harbour', atKm: 0, detourKm: 0 };
const END: Edge = { kind: 'end', id: null, name: 'High Cairn', atKm: 1200, detourKm: 0 };

const edgeAt = (stop: Stop): Edge => ({ kind: 'passing', ...stop, detourKm: 0.4 });

function gapBetween(from: Edge, to: Edge, departL: number, perKm: number, reserveL: number): Gap {
  const lengthKm = to.atKm - from.atKm;
  const needL = lengthKm * perKm;
  const arriveL = departL - needL;
  const marginL = arriveL - reserveL;
  const kmAtLevel = (litres: number) => from.atKm + (departL - litres) / perKm;
  const inside = (km: number) => (km > from.atKm && km < to.atKm ? km : null);
  const turnBack = from.atKm + (departL - reserveL) / (2 * perKm);
  return {
    from,
    to,
    lengthKm,
    wayKm: lengthKm,
    days: lengthKm / 245,
    departL,
    needL,
    reserveL,
    arriveL,
    marginL,
    verdict: arriveL < 0 ? 'short' : marginL < 0 ? 'into-reserve' : 'enough',
    acrossNoData: false,
    doubt: null,
    weakest: 'stated',
    extraL: Math.max(0, -marginL),
    extraCans: Math.ceil(Math.max(0, -marginL) / 20),
    turnBackKm: Math.min(turnBack, to.atKm),
    skipHelps: false,
    ifToFails: null,
    reserveFromKm: inside(kmAtLevel(reserveL)),
    runsDryKm: inside(kmAtLevel(0)),
    levels: [
      { atKm: from.atKm, litres: departL },
      { atKm: to.atKm, litres: arriveL },
    ],
    rescue: [],
    working: { wayKm: [], needL: [], reserveL: [] },
  };
}

function reportOf(edges: Edge[], capacityL: number, perKm: number, reserveL: number): Report {
  const gaps = edges.slice(1).map((to, i) => gapBetween(edges[i]!, to, capacityL, perKm, reserveL));
  const indexOfLeast = (score: (gap: Gap) => number) =>
    gaps.reduce((best, gap, i) => (score(gap) < score(gaps[best]!) ? i : best), 0);
  return {
    capacityL,
    canL: 20,
    cansOwned: 2,
    takesCans: true,
    cover: [{ fromKm: 0, toKm: 1200 }],
    gaps,
    longest: indexOfLeast((gap) => -gap.lengthKm),
    tightest: indexOfLeast((gap) => gap.marginL),
  };
}

const LOW_BRIDGE = { id: 'node/1', name: 'Low Bridge', atKm: 180 };
const SALT_PANS = { id: 'way/2', name: 'Salt Pans Roadhouse', atKm: 640 };
const RED_GATE = { id: 'node/3', name: 'Red Gate', atKm: 960 };
const TAP = { id: 'node/4', name: null, atKm: 400 };

function sampleWater(): Report {
  const report = reportOf(
    [START, edgeAt(LOW_BRIDGE), edgeAt(SALT_PANS), edgeAt(RED_GATE), END],
    70,
    0.17,
    16,
  );
  report.cover = [
    { fromKm: 0, toKm: 1000 },
    { fromKm: 1100, toKm: 1200 },
  ];
  const last = report.gaps[3]!;
  report.gaps[3] = { ...last, verdict: 'unknown', acrossNoData: true };
  return report;
}

const passing = (stop: Stop, commodity: Commodity, counts: boolean, kind: string): Passing => ({
  id: stop.id,
  alsoIds: [],
  seenOn: '2026-02-01',
  tags: {},
  name: stop.name,
  commodity,
  kind,
  ...positionAt(stop.atKm),
  atKm: stop.atKm,
  stop: Math.floor(stop.atKm / 3),
  offRouteKm: 0.3,
  detourKm: 0.4,
  evidence: counts ? 'stated' : 'implied',
  counts,
  reasons: counts ? [] : [{ code: 'not-stated-drinkable', text: 'not stated fit to drink' }],
  ...(commodity === 'water' ? { waterClass: counts ? ('drinking' as const) : ('treatable' as const) } : {}),
});

/** A gentle S across open ground: 1,200 km from south-west to north-east. */
function positionAt(km: number): { lon: number; lat: number } {
  const t = km / 1200;
  return { lon: 86 + 6 * t, lat: -37 + 3.2 * t + 0.7 * Math.sin(t * Math.PI * 2) };
}

const STEP_KM = 20;

function piecesOf(report: Report, commodity: Commodity): MapData['route']['features'] {
  return report.gaps.flatMap((gap, index) => {
    const features: MapData['route']['features'] = [];
    for (let fromKm = gap.from.atKm; fromKm < gap.to.atKm; fromKm += STEP_KM) {
      const toKm = Math.min(fromKm + STEP_KM, gap.to.atKm);
      const middle = (fromKm + toKm) / 2;
      const t = (middle - gap.from.atKm) / gap.lengthKm;
      const litres = gap.departL + t * (gap.arriveL - gap.departL);
      const state: RoutePiece['state'] = litres <= 0 ? 'dry' : litres < gap.reserveL ? 'reserve' : 'left';
      const ends = [fromKm, middle, toKm].map(positionAt);
      features.push({
        type: 'Feature',
        geometry: { type: 'LineString', coordinates: ends.map(({ lon, lat }) => [lon, lat]) },
        properties: {
          commodity,
          gap: index,
          verdict: gap.verdict,
          state,
          noCover: !report.cover.some((span) => middle >= span.fromKm && middle <= span.toKm),
          share: Math.max(0, litres) / report.capacityL,
          fromKm,
          toKm,
        },
      });
    }
    return features;
  });
}

function mapOf(passings: Passing[], fuel: Report, water: Report): MapData {
  const atKm = Array.from({ length: 61 }, (_, i) => i * STEP_KM);
  const marks = new Map<string, MapData['supplies']['features'][number]>();
  for (const at of passings) {
    const key = `${at.id} ${at.commodity}`;
    const known = marks.get(key);
    if (known) known.properties.atKm.push(at.atKm);
    else
      marks.set(key, {
        type: 'Feature',
        geometry: { type: 'Point', coordinates: [at.lon, at.lat] },
        properties: {
          id: at.id,
          name: at.name,
          commodity: at.commodity,
          kind: at.kind,
          counts: at.counts,
          evidence: at.evidence,
          atKm: [at.atKm],
          tags:
            at.commodity === 'fuel' ? { amenity: 'fuel', 'fuel:diesel': 'yes' } : { drinking_water: 'yes' },
        },
      });
  }
  const coast: MapData['ground']['features'][number] = {
    type: 'Feature',
    geometry: {
      type: 'LineString',
      coordinates: [
        [84.5, -38.2],
        [93.5, -37.6],
        [93.2, -32.5],
        [85, -33],
        [84.5, -38.2],
      ],
    },
    properties: { what: 'coast', name: null, rank: 'coastline' },
  };
  const town: MapData['ground']['features'][number] = {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [86, -37] },
    properties: { what: 'place', name: 'Low Harbour', rank: 'town' },
  };
  return {
    bbox: [86, -37.3, 92, -33.4],
    line: {
      coordinates: atKm.map((km) => [positionAt(km).lon, positionAt(km).lat]),
      atKm,
    },
    route: { type: 'FeatureCollection', features: [...piecesOf(fuel, 'fuel'), ...piecesOf(water, 'water')] },
    supplies: { type: 'FeatureCollection', features: [...marks.values()] },
    ground: { type: 'FeatureCollection', features: [coast, town] },
    extracts: [],
    notice: 'This land is invented. Do not drive by it.',
  };
}

/** A fresh reply each time, so that a test may change it. */
export function sampleReply(): AnalysisReply {
  const fuel = reportOf(
    [START, edgeAt(LOW_BRIDGE), edgeAt(SALT_PANS), edgeAt(RED_GATE), END],
    127,
    0.17 * 1.4,
    24,
  );
  const water = sampleWater();
  const passings = [
    passing(LOW_BRIDGE, 'fuel', true, 'fuel station'),
    passing(LOW_BRIDGE, 'water', true, 'drinking water'),
    passing({ ...LOW_BRIDGE, atKm: 210 }, 'water', true, 'drinking water'),
    passing(TAP, 'water', false, 'water tap'),
    passing(SALT_PANS, 'fuel', true, 'fuel station'),
    passing(SALT_PANS, 'water', true, 'water point'),
    passing(RED_GATE, 'fuel', true, 'fuel station'),
    passing(RED_GATE, 'water', true, 'drinking water'),
  ];
  return {
    id: 'sample',
    said: {
      rig: {
        name: 'Sample wagon',
        fuel: {
          kind: 'diesel',
          litresPer100Km: { low: 18, typical: 20, high: 23.8 },
          tanks: [{ name: 'main', litres: 130, unusableLitres: 3 }],
        },
        water: { litresPerDay: { low: 11, typical: 14, high: 18 }, tanks: [{ name: 'floor', litres: 70 }] },
        pace: { hoursPerDay: 7, kmPerHour: { slow: 35, typical: 45, fast: 60 } },
      },
      trip: { onward: { km: 0 } },
    },
    analysis: {
      route: {
        name: 'Low Harbour to High Cairn',
        lengthKm: 1200,
        vertices: 61,
        parts: 1,
        bbox: [86, -37.3, 92, -33.4],
        longestStepKm: 20,
      },
      extracts: [],
      noData: [],
      passings,
      fuel,
      water,
      nights: [
        { atKm: 245, name: null, from: 'pace' },
        { atKm: 490, name: 'Dry Fork', from: 'camp' },
        { atKm: 735, name: null, from: 'pace' },
        { atKm: 980, name: null, from: 'pace' },
      ],
      days: {
        rows: [],
        allListed: true,
        drivingHours: { slow: 34, typical: 27, fast: 20 },
        elapsedDays: { slow: 4.3, typical: 3.6, fast: 2.9 },
        waterCharge: 'elapsed',
      },
      fuelUse: SAMPLE_FUEL_USE,
      waterUse: SAMPLE_WATER_USE,
      treatment: null,
      mass: null,
      answer: { fuel: [], water: [], todo: [] },
      rig: {
        name: 'Sample wagon',
        fuel: {
          kind: 'diesel',
          litresPer100Km: { low: 18, typical: 20, high: 23.8 },
          tanks: [{ name: 'main', litres: 130, unusableLitres: 3 }],
        },
        water: { litresPerDay: { low: 11, typical: 14, high: 18 }, tanks: [{ name: 'floor', litres: 70 }] },
        pace: { hoursPerDay: 7, kmPerHour: { slow: 35, typical: 45, fast: 60 } },
      },
      trip: { onward: { km: 0 } },
      assumptions: [],
      cautions: [],
      standing: [{ code: 'carry-reserve', text: 'Carry the reserve.' }],
      skipped: [],
    },
    map: mapOf(passings, fuel, water),
  };
}
