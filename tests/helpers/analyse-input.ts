import { analysisToContract } from '../../server/app/to-contract.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import { type AnalyseInput, analyse } from '../../server/core/analyse/analyse.ts';
import type { MappedFeature, RouteDocument, Waypoint } from '../../server/core/input/sources.ts';
import { EXAMPLE_RIG } from './course.ts';

/** Metres of one degree of the equator, WGS 84 (check-values G3). */
const EQUATOR_DEGREE_M = 111_319.490793;

/** Longitude of a place so many km along the equator from the Greenwich meridian. */
export const equatorLon = (km: number): number => (km * 1000) / EQUATOR_DEGREE_M;

/** A route along the equator, a vertex every km, so that its km are plain. */
export function equatorDocument(lengthKm: number, stepKm = 1): RouteDocument {
  const lons: number[] = [];
  for (let km = 0; km < lengthKm; km += stepKm) lons.push(equatorLon(km));
  lons.push(equatorLon(lengthKm));
  return documentOf([lons.map((lon) => [lon, 0])]);
}

/** One track whose segments are given as lists of [lon, lat]. */
export function documentOf(segments: [number, number][][], waypoints: Waypoint[] = []): RouteDocument {
  return {
    name: 'test route',
    parts: [
      {
        kind: 'track',
        name: null,
        segments: segments.map((points) => ({
          lon: Float64Array.from(points, (point) => point[0]),
          lat: Float64Array.from(points, (point) => point[1]),
          ele: new Float64Array(points.length).fill(Number.NaN),
        })),
      },
    ],
    waypoints,
    cautions: [],
  };
}

export function pointFeature(id: string, km: number, tags: Record<string, string>, offKm = 0): MappedFeature {
  // North of the equator one degree of latitude is 110,574 m (check-values G4).
  const lat = (offKm * 1000) / 110_574.276;
  return { id, geometry: { type: 'Point', coordinates: [equatorLon(km), lat] }, tags, editedAt: null };
}

export const DIESEL = { amenity: 'fuel', 'fuel:diesel': 'yes' };
export const TAP = { amenity: 'drinking_water' };

/** Cover of the whole world for both commodities. */
export const WORLD_COVER = (['fuel', 'water'] as const).map((commodity) => ({
  commodity,
  rings: [
    [
      [-180, -90],
      [180, -90],
      [180, 90],
      [-180, 90],
      [-180, -90],
    ] as [number, number][],
  ],
  guessed: false,
  source: 'test',
}));

export function inputOf(changes: Partial<AnalyseInput> & { features?: MappedFeature[] } = {}): AnalyseInput {
  const { features, ...rest } = changes;
  return {
    document: equatorDocument(1340),
    supplies: { extracts: [], features: features ?? [], cover: WORLD_COVER, skipped: [], cautions: [] },
    rig: EXAMPLE_RIG,
    trip: {
      aboard: { fuelKmSinceFill: 0, waterDaysSinceFill: 0 },
      onward: { km: 0 },
      allowancePercent: 0,
      departure: '2026-05-04',
    },
    today: '2026-05-01',
    camps: [],
    ...rest,
  };
}

export function analysisOf(changes: Parameters<typeof inputOf>[0] = {}): Analysis {
  const outcome = analyse(inputOf(changes));
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return analysisToContract(outcome.value.analysis);
}
