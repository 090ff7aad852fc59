import type { Feature, LineString, Position } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';

interface GapLine {
  commodity: 'fuel' | 'water';
  gap: number;
  verdict: string;
}

/** Each gap as one line, joined from its pieces: dashes then run on, and bends leave no seams. */
export function gapLines(map: MapData): Feature<LineString, GapLine>[] {
  const lines = new Map<string, Feature<LineString, GapLine>>();
  for (const { geometry, properties } of map.route.features) {
    const { commodity, gap, verdict } = properties;
    const key = `${commodity} ${gap}`;
    const known = lines.get(key);
    if (known === undefined) {
      lines.set(key, {
        type: 'Feature',
        geometry: { type: 'LineString', coordinates: [...geometry.coordinates] },
        properties: { commodity, gap, verdict },
      });
    } else
      known.geometry.coordinates.push(...withoutRepeat(known.geometry.coordinates, geometry.coordinates));
  }
  return [...lines.values()];
}

/** Pieces share their ends: the second piece's first position is left out when the line already ends there. */
function withoutRepeat(line: readonly Position[], piece: readonly Position[]): Position[] {
  const end = line.at(-1);
  const first = piece[0];
  const same = end !== undefined && first !== undefined && end[0] === first[0] && end[1] === first[1];
  return piece.slice(same ? 1 : 0);
}
