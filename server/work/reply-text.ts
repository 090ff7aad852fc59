import type { TripAnalysis } from '../app/analyse-trip.ts';
import type { GroundFeature, LoadedTrip } from '../app/loaded-trip.ts';
import type { AnalysisReply, MapData } from '../contract/answers/map.ts';
import type { Bbox } from '../contract/common.ts';
import { surroundingsGround } from '../core/mapview/surroundings-ground.ts';

/** What of a map no analysis changes, as JSON made once for a loaded trip: it is most of a reply. */
const lastingTexts = new WeakMap<LoadedTrip, string>();

/** An AnalysisReply (server/contract/answers/map.ts) as JSON text. `said`: rig and trip as they were sent. */
export function replyText(
  id: string,
  said: AnalysisReply['said'],
  loaded: LoadedTrip,
  { analysis, map }: TripAnalysis,
): string {
  let lasting = lastingTexts.get(loaded);
  if (lasting === undefined) {
    const { supplies, ground } = loaded;
    const around =
      supplies.surroundings === undefined ? [] : surroundingsGround(supplies.surroundings, map.bbox);
    const features = [...ground, ...around].map(rounded);
    lasting = `"ground":${JSON.stringify({ type: 'FeatureCollection', features })},"extracts":${JSON.stringify(outlinesOf(loaded))}`;
    lastingTexts.set(loaded, lasting);
  }
  const rest = JSON.stringify(map);
  return `{"id":${JSON.stringify(id)},"said":${JSON.stringify(said)},"analysis":${JSON.stringify(analysis)},"map":${rest.slice(0, -1)},${lasting}}}`;
}

/** Of each extract the area that it covers of anything, else the box of what it holds. */
function outlinesOf({ extents, supplies }: LoadedTrip): MapData['extracts'] {
  return extents.flatMap(({ source, bbox }) => {
    const cover = supplies.cover.find((area) => area.source === source);
    if (cover !== undefined) return [{ source, rings: cover.rings }];
    return bbox === null ? [] : [{ source, rings: [ringRound(bbox)] }];
  });
}

const ringRound = ([west, south, east, north]: Bbox): [number, number][] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
  [west, south],
];

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
