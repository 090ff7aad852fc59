import type { Caution } from '../../../core/phrases/cautions.ts';
import { readGpx } from '../../gpx/read-gpx.ts';
import { NOTHING_FAR } from '../extract/far-objects.ts';
import type { RawExtract, ReadOptions } from '../extract/raw-extract.ts';
import { commoditiesOf } from '../extract/wanted-tags.ts';
import { plainPapers } from '../extract/whole-file/papers.ts';
import { waypointFeatures } from './waypoints.ts';

/** Reads the waypoints of a GPX file as supplies. They cover nothing: a waypoint file never says what is missing. */
export async function readWaypoints(path: string, options: ReadOptions): Promise<RawExtract> {
  const { source } = options;
  const document = await readGpx(path, source, options.signal);
  const { features, skipped } = waypointFeatures(document.waypoints, source);
  const shown = new Set(features.flatMap((feature) => commoditiesOf(feature.tags)));
  const cautions: Caution[] = [...document.cautions];
  if (features.length === 0) {
    const count = document.waypoints.length;
    cautions.push({ code: 'no-supply-in-waypoints', facts: { source, count } });
  }
  return {
    source,
    format: 'gpx-waypoints',
    papers: plainPapers({}),
    elements: [],
    wanted: new Set(),
    far: NOTHING_FAR,
    roads: null,
    surroundings: [],
    drawnRoads: null,
    unwanted: NOTHING_FAR,
    deleted: NOTHING_FAR,
    features,
    bounds: null,
    hull: null,
    shows: { fuel: shown.has('fuel'), water: shown.has('water'), general: false },
    counts: { nodes: 0, ways: 0, relations: 0 },
    ground: [],
    skipped,
    cautions,
  };
}
