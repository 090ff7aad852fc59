import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A country of some 1,100 by 1,100 km, and what is mapped in it. */
const [WEST, SOUTH, WIDE, HIGH] = [15, -28, 12, 10];
export const SUPPLIES = 100_000;

/** 1,500 km to and fro across it: vertices 1 km apart. */
export function longRoute(): { lon: Float64Array; lat: Float64Array } {
  const count = 1_500;
  const lon = new Float64Array(count);
  const lat = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    const share = at / count;
    lon[at] = WEST + 1 + share * 10 + Math.sin(share * 18) * 0.6;
    lat[at] = SOUTH + 2 + share * 6 + Math.cos(share * 11) * 0.8;
  }
  return { lon, lat };
}

/** A scratch folder with the country's supplies as OSM XML, spread evenly, one in twenty mapped as an area. */
export function landFile(): { folder: string; path: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-bench-store-'));
  const path = join(folder, 'country.osm');
  let state = 5;
  const random = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const lines = [
    `<osm version="0.6"><bounds minlat="${SOUTH}" minlon="${WEST}" maxlat="${SOUTH + HIGH}" maxlon="${WEST + WIDE}"/>`,
  ];
  const ways: string[] = [];
  let id = 0;
  const node = (lon: number, lat: number, tags = '') => {
    id += 1;
    lines.push(
      `<node id="${id}" version="1" timestamp="2025-05-01T00:00:00Z" lon="${lon.toFixed(7)}" lat="${lat.toFixed(7)}">${tags}</node>`,
    );
    return id;
  };
  for (let at = 0; at < SUPPLIES; at += 1) {
    const [lon, lat] = [WEST + random() * WIDE, SOUTH + random() * HIGH];
    const isFuel = at % 4 === 0;
    const kind = isFuel ? 'fuel' : 'drinking_water';
    const tags = `<tag k="amenity" v="${kind}"/><tag k="name" v="Place ${at}"/>${isFuel ? '<tag k="fuel:diesel" v="yes"/>' : ''}`;
    if (at % 20 !== 0) {
      node(lon, lat, tags);
      continue;
    }
    const corners = [
      [0, 0],
      [1e-4, 0],
      [1e-4, 1e-4],
    ].map(([x = 0, y = 0]) => node(lon + x, lat + y));
    const [first = 0] = corners;
    const refs = [...corners, first].map((ref) => `<nd ref="${ref}"/>`).join('');
    ways.push(`<way id="${at + 1}" version="1" timestamp="2025-05-01T00:00:00Z">${refs}${tags}</way>`);
  }
  writeFileSync(path, `${[...lines, ...ways].join('\n')}</osm>`);
  return { folder, path, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
