/** What all the readers of extracts take together, for messages. */
export const SUPPLY_FORMATS =
  'OpenStreetMap data (.osm.pbf, .osm XML, Overpass JSON, GeoJSON) or GPX waypoints';
