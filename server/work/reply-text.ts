import type { TripAnalysis } from '../app/analyse-trip.ts';
import type { GroundFeature, LoadedTrip } from '../app/loaded-trip.ts';
import type { AnalysisReply } from '../contract/answers/map.ts';

/** The ground's JSON is made once for a loaded trip: it is most of a reply and no analysis changes it. */
const groundTexts = new WeakMap<LoadedTrip, string>();

/** An AnalysisReply (server/contract/answers/map.ts) as JSON text. `said`: rig and trip as they were sent. */
export function replyText(
  id: string,
  said: AnalysisReply['said'],
  loaded: LoadedTrip,
  { analysis, map }: TripAnalysis,
): string {
  let ground = groundTexts.get(loaded);
  if (ground === undefined) {
    ground = JSON.stringify({ type: 'FeatureCollection', features: loaded.ground.map(rounded) });
    groundTexts.set(loaded, ground);
  }
  const rest = JSON.stringify(map);
  return `{"id":${JSON.stringify(id)},"said":${JSON.stringify(said)},"analysis":${JSON.stringify(analysis)},"map":${rest.slice(0, -1)},"ground":${ground}}}`;
}

/** Five decimals of a degree are about a metre: enough for ground. */
function rounded(feature: GroundFeature): unknown {
  const { geometry, properties } = feature;
  const coordinates = 'coordinates' in geometry ? roundAll(geometry.coordinates) : [];
  return { type: 'Feature', geometry: { type: geometry.type, coordinates }, properties };
}

function roundAll(value: unknown): unknown {
  if (typeof value === 'number') return Math.round(value * 1e5) / 1e5;
  return Array.isArray(value) ? value.map(roundAll) : value;
}
