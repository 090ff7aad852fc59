import type { Passing } from '../../server/contract/analysis.ts';
import type { MapData } from '../../server/contract/answers/map.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { t } from '../language/t.ts';

/** A supply at one passing; or, with members, a stop of several that the route comes by within 3 km. */
export interface SupplyRow {
  /** The same point can be passed more than once: its place in the list tells the passings apart. */
  key: string;
  /** Of a stop the first one. */
  passing: Passing;
  /** In the order of the route; none of a supply alone. */
  members: readonly SupplyRow[];
}

/** What a row stands for, singly. */
export const singlesOf = (row: SupplyRow): readonly SupplyRow[] =>
  row.members.length === 0 ? [row] : row.members;

/** A row is open for itself, or for one of its members. */
export const holds = (row: SupplyRow, key: string): boolean =>
  row.key === key || row.members.some((member) => member.key === key);

/** Supplies of one stop as one row, in their order; a supply alone stays as it is. */
export function stopsOf(singles: readonly SupplyRow[]): SupplyRow[] {
  const stops = new Map<number, [SupplyRow, ...SupplyRow[]]>();
  for (const single of singles) {
    const { stop } = single.passing;
    const others = stops.get(stop);
    if (others === undefined) stops.set(stop, [single]);
    else others.push(single);
  }
  return [...stops].map(([stop, members]) =>
    members.length === 1 ? members[0] : { key: `${STOP} ${stop}`, passing: members[0].passing, members },
  );
}

const STOP = 'stop';
export const isStopKey = (key: string | null): boolean => key?.startsWith(`${STOP} `) === true;

const STATION = 'fuel station';
const TAPS: readonly string[] = ['water tap', 'drinking water', 'water point'];

/** "5 stations, 2 taps": a point that is passed twice is one. */
export function countsOf({ members }: SupplyRow): string {
  const points = new Map(members.map(({ passing }) => [`${passing.commodity} ${passing.id}`, passing]));
  const count = (isOne: (passing: Passing) => boolean) => [...points.values()].filter(isOne).length;
  const isStation = ({ kind }: Passing) => kind === STATION;
  const isTap = ({ kind }: Passing) => TAPS.includes(kind);
  const stations = count(isStation);
  const otherFuel = count((point) => point.commodity === 'fuel' && !isStation(point));
  const taps = count(isTap);
  const otherWater = count((point) => point.commodity === 'water' && !isTap(point));
  return [
    stations === 1 ? t('1 station') : stations > 1 ? t`${stations} stations` : '',
    otherFuel > 0 ? t`${otherFuel} other fuel` : '',
    taps === 1 ? t('1 tap') : taps > 1 ? t`${taps} taps` : '',
    otherWater > 0 ? t`${otherWater} other water` : '',
  ]
    .filter((words) => words !== '')
    .join(', ');
}

export const nameOf = ({ name, kind }: Passing): string => name ?? kind;

/** Those of a stop that must not go under: the only one of its commodity that is relied on, and what the answer stands on. */
export function keySupplies({ members }: SupplyRow, matters: (row: SupplyRow) => boolean): SupplyRow[] {
  const relied = members.filter(({ passing }) => passing.counts);
  const isOnly = (commodity: Commodity) =>
    new Set(relied.flatMap(({ passing }) => (passing.commodity === commodity ? [passing.id] : []))).size ===
    1;
  return relied.filter((row) => isOnly(row.passing.commodity) || matters(row));
}

/** A town or village that a stop is called by. */
export interface NamedPlace {
  name: string;
  lon: number;
  lat: number;
}

export const placesOf = ({ ground }: MapData): NamedPlace[] =>
  ground.features.flatMap(({ geometry, properties }) => {
    const [lon, lat] = geometry.type === 'Point' ? (geometry.coordinates as number[]) : [];
    const isNamed = properties.what === 'place' && properties.name !== null;
    return isNamed && lon !== undefined && lat !== undefined
      ? [{ name: properties.name ?? '', lon, lat }]
      : [];
  });

/** A stop is called by a place that is no farther from its first supply, km (ours). */
const NEAR_KM = 5;
const KM_PER_DEGREE = 111.2;

/** The nearest place, where one is near. Good to a per cent, which a name does not need. */
export function placeNear({ passing }: SupplyRow, places: readonly NamedPlace[]): string | null {
  const km = ({ lon, lat }: NamedPlace) => {
    const eastward = (((lon - passing.lon + 540) % 360) - 180) * Math.cos((passing.lat * Math.PI) / 180);
    return Math.hypot(eastward, lat - passing.lat) * KM_PER_DEGREE;
  };
  const nearest = places.reduce<NamedPlace | null>(
    (best, place) => (best === null || km(place) < km(best) ? place : best),
    null,
  );
  return nearest !== null && km(nearest) <= NEAR_KM ? nearest.name : null;
}
