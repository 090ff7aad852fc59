declare module 'osmtogeojson' {
  import type { Feature, FeatureCollection, GeometryObject } from 'geojson';

  /** `id` is "node/1", "way/2" or "relation/3"; `tainted` tells that members or nodes were missing. */
  export type OsmFeature = Feature<GeometryObject, { tainted?: boolean }>;
  export default function osmtogeojson(
    data: { elements: readonly object[] },
    options?: { flatProperties?: boolean; verbose?: boolean },
  ): Omit<FeatureCollection, 'features'> & { features: OsmFeature[] };
}
