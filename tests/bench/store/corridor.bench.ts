import type { Bbox } from '../../../server/contract/common.ts';
import { boxesAlong } from '../../../server/core/route/cover/boxes-along.ts';
import type { RawElement } from '../../../server/io/osm/extract/raw-element.ts';
import { ingest } from '../../../server/store/extracts/ingest.ts';
import { suppliesAlong } from '../../../server/store/extracts/points-along.ts';
import { folderStore } from '../../../server/store/open-store.ts';
import { landFile, longRoute, SUPPLIES } from '../../store/country.ts';
import { type Bench, type BenchRow, median, medianMsOf } from '../measure.ts';

const CORRIDOR_KM = 5;
const TARGET_MS = 50;
const RUNS = 9;
const WORLD: Bbox = [-180, -90, 180, 90];

/** Supplies along a route by their spatial key, beside a look at all of them; and how long taking them in takes. */
export const bench: Bench = async () => {
  const land = landFile();
  const store = folderStore(land.folder);
  try {
    const { extracts, driver } = store;
    const waits: number[] = [];
    const watch = setInterval(() => waits.push(performance.now()), 1);
    const start = performance.now();
    const { id } = await extracts.add({ path: land.path, fileName: 'country.osm', isOurs: false }, (path) =>
      ingest(path, 'country.osm', {}),
    );
    const ingestMs = performance.now() - start;
    clearInterval(watch);
    const route = longRoute();
    const boxes = boxesAlong(route, CORRIDOR_KM);
    const found = driver.extracts.pointsIn(id, boxes).length;
    const rows: BenchRow[] = [
      {
        what: `${found} of ${SUPPLIES} supplies within ${CORRIDOR_KM} km of 1,500 km, by ${boxes.length} boxes`,
        who: 'drystage, R*Tree',
        medianMs: await medianMsOf(RUNS, () => driver.extracts.pointsIn(id, boxes)),
        runs: RUNS,
      },
      {
        what: 'the same, read and made into features',
        who: 'drystage, R*Tree and unite',
        medianMs: await medianMsOf(RUNS, () => suppliesAlong(extracts, id, route, CORRIDOR_KM)),
        runs: RUNS,
      },
      {
        what: 'the same by looking at all of them',
        who: 'full scan',
        medianMs: await medianMsOf(3, () => scanned(driver.extracts.pointsIn(id, [WORLD]), boxes)),
        runs: 3,
      },
      {
        what: `taking the ${SUPPLIES} in from OSM XML, in this thread`,
        who: 'drystage, ingest',
        medianMs: ingestMs,
        runs: 1,
        peakMb: process.memoryUsage.rss() / 1e6,
        note: `${Math.round(SUPPLIES / (ingestMs / 1000))} supplies a second; between two looks at the clock ${Math.round(longest(waits))} ms at most, ${median(gaps(waits)).toFixed(1)} ms mostly`,
      },
    ];
    const [first] = rows;
    const met = (first?.medianMs ?? Infinity) <= TARGET_MS;
    return { title: 'supplies of a country along a route', target: `${TARGET_MS} ms`, met, rows };
  } finally {
    store.close();
    land.remove();
  }
};

const gaps = (times: readonly number[]): number[] =>
  times.slice(1).map((time, at) => time - (times[at] ?? time));
const longest = (times: readonly number[]): number => Math.max(0, ...gaps(times));

/** Which of some points lie in one of the boxes, by the place that each of them says. */
function scanned(points: readonly string[], boxes: readonly Bbox[]): string[] {
  return points.filter((json) => {
    const { element, lending = [] } = JSON.parse(json) as { element: RawElement; lending?: RawElement[] };
    return [element, ...lending].some(({ lon = 999, lat = 999 }) =>
      boxes.some(([w, s, e, n]) => w <= lon && lon <= e && s <= lat && lat <= n),
    );
  });
}
