import type { Geometry, Position } from 'geojson';
import type { LandAround, NearGrid } from '../../../app/near-route.ts';
import type { DrawnRoads, OsmShape, Surrounding, Tags } from '../../../core/input/sources.ts';
import { CellSet } from '../../../core/route/cover/road-cells.ts';
import { isDriven } from '../../../core/surroundings/kinds.ts';
import { RoadMarks } from '../../../core/surroundings/road-marks.ts';
import type { LatLon } from '../extract/position.ts';
import { RoadCells } from '../keep/road-presence.ts';
import { type SurroundingLand, surroundingsOf } from '../surroundings/shapes.ts';

const placesOf = (positions: readonly Position[]): LatLon[] =>
  positions.flatMap(([lon, lat]) => (lon === undefined || lat === undefined ? [] : [{ lon, lat }]));

/** The lines of a geometry, the rings of an area alike. */
function linesOf(geometry: Geometry): LatLon[][] {
  switch (geometry.type) {
    case 'Point':
      return [placesOf([geometry.coordinates])];
    case 'LineString':
      return [placesOf(geometry.coordinates)];
    case 'MultiLineString':
    case 'Polygon':
      return geometry.coordinates.map(placesOf);
    case 'MultiPolygon':
      return geometry.coordinates.flat().map(placesOf);
    default:
      return [];
  }
}

/** What form an object had before it was made into a feature. */
function shapeOfGeometry({ type }: Geometry, tags: Tags): OsmShape {
  if (type === 'Point') return 'point';
  if (type === 'LineString') return 'line';
  if (tags.type === 'boundary') return 'boundary';
  return type === 'MultiLineString' ? 'boundary' : type === 'Polygon' ? 'ring' : 'area';
}

/** What features show of the ground around the route: roads, and what else bears on supplies. */
export class GroundAround {
  readonly surroundings: Surrounding[] = [];
  readonly #land: SurroundingLand;
  readonly #marks: RoadMarks;
  readonly #cells: RoadCells;

  constructor(near: NearGrid, around: LandAround) {
    const reach = new CellSet(around.reach);
    this.#land = { near, reach };
    this.#marks = RoadMarks.of(reach);
    this.#cells = new RoadCells(new CellSet(around.band));
  }

  /** Takes a feature; one without a geometry that can be used shows nothing. */
  take(id: string | null, tags: Tags, feature: object | { geometry: Geometry }): void {
    if (!('geometry' in feature)) return;
    const { geometry } = feature;
    const lines = linesOf(geometry);
    if (tags.highway !== undefined && geometry.type !== 'Point')
      for (const line of lines) {
        this.#cells.addLine(line);
        if (isDriven(tags)) this.#marks.markLine(line);
      }
    const shaped = { id: id ?? tags.name ?? '', tags, shape: shapeOfGeometry(geometry, tags) };
    this.surroundings.push(...surroundingsOf(shaped, lines, true, this.#land));
  }

  roads(): { roads: Int32Array; drawnRoads: DrawnRoads } {
    return { roads: this.#cells.cells(), drawnRoads: this.#marks.drawn() };
  }
}
