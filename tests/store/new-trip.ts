import type { NewTrip } from '../../server/store/library/store.ts';

export const RIG: NewTrip['rig'] = {
  fuel: { kind: 'diesel', litresPer100Km: 15, tanks: [{ name: 'main', litres: 130 }] },
  water: { litresPerDay: 14, tanks: [{ name: 'under floor', litres: 70 }] },
  pace: { hoursPerDay: 7, kmPerHour: 45 },
};

/** A trip whose maps are no maps: the store does not look into them. */
export const newTrip = (parts: Partial<NewTrip> = {}): NewTrip => ({
  name: 'Across',
  rig: RIG,
  trip: { corridorKm: 5 },
  route: { fileName: 'across.gpx', hash: 'ab12', bytes: Uint8Array.of(1, 2, 3) },
  extracts: [{ id: null, name: 'land.osm.pbf' }],
  maps: Uint8Array.of(9, 8),
  notice: null,
  beginning: 'Read from across.gpx',
  ...parts,
});
