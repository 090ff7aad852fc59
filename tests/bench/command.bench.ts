import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plan } from '../../server/contract/plan.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { solvedByModel } from '../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../server/io/solver.ts';
import { equatorLon } from '../helpers/analyse-input.ts';
import { realFolderThere, realPath } from '../helpers/real.ts';
import { type Bench, type BenchRow, median } from './measure.ts';
import { BENCH_RIG, problemWith, randomOf, STEP_KM } from './plan.bench.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** The most that any of them may take of memory. */
const TARGET_MB = 300;

/** The whole command on one trip: what it may take, and what it took before the search took the solver's place. */
interface Case {
  what: string;
  args: readonly string[];
  targetS: number;
  beforeS: number;
}

interface Usage {
  wallMs: number;
  processorMs: number;
  peakMb: number;
  proven: boolean;
}

/** A route along the equator with so many stops, as files; the same stops whenever it is asked for. */
function tripWith(folder: string, stops: number): readonly string[] {
  const random = randomOf(stops);
  const lengthKm = (stops + 1) * STEP_KM;
  const file = (name: string, content: string) => {
    const path = join(folder, `${stops}-${name}`);
    writeFileSync(path, content);
    return path;
  };
  const points = Array.from({ length: lengthKm + 1 }, (_, km) => `<trkpt lat="0" lon="${lonAt(km)}"/>`);
  const elements = Array.from({ length: stops }, (_, index) => {
    const km = (index + 1 + random() * 0.8 - 0.4) * STEP_KM;
    const offers = random();
    const tags = {
      ...(offers < 0.7 && { amenity: 'fuel', ...(random() < 0.6 && { 'fuel:diesel': 'yes' }) }),
      ...(offers > 0.3 && { drinking_water: 'yes', ...(offers >= 0.7 && { man_made: 'water_tap' }) }),
    };
    const lat = random() < 0.4 ? 0 : random() * 0.035;
    return { type: 'node', id: index + 1, lon: lonAt(km), lat, tags, timestamp: '2026-11-01T00:00:00Z' };
  });
  const bbox: [number, number, number, number] = [-180, -1, 180, 1];
  const trip: TripFile = {
    aboard: { fuelKmSinceFill: 0, waterDaysSinceFill: 0 },
    onward: { km: 0 },
    cover: [
      { commodity: 'fuel', bbox },
      { commodity: 'water', bbox },
    ],
  };
  return [
    file(
      'route.gpx',
      `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`,
    ),
    '--supply',
    file(
      'land.json',
      JSON.stringify({ version: 0.6, osm3s: { timestamp_osm_base: '2026-11-20T00:00:00Z' }, elements }),
    ),
    '--rig',
    file('rig.yaml', JSON.stringify(BENCH_RIG)),
    '--trip',
    file('trip.yaml', JSON.stringify(trip)),
  ];
}

/** Round the world more than once, where it is longer: the longitude of a place along the equator. */
const lonAt = (km: number): number => ((equatorLon(km) + 180) % 360) - 180;

const demo = (name: string): string => `${ROOT}fixtures/orrimar/${name}`;

function runOnce(folder: string, { args }: Case): Usage {
  const usage = join(folder, 'usage.json');
  const start = performance.now();
  const out = execFileSync(
    process.execPath,
    ['--import', './tests/bench/usage.mjs', 'server/cli.mjs', 'plan', ...args, '--json'],
    {
      cwd: ROOT,
      env: { ...process.env, DRYSTAGE_USAGE: usage },
      maxBuffer: 1 << 30,
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  const wallMs = performance.now() - start;
  const { plan } = JSON.parse(out.toString()) as { plan: Plan };
  const { processorMs, peakMb } = JSON.parse(readFileSync(usage, 'utf8')) as Usage;
  const proven =
    plan.status === 'none' ||
    (plan.aims.every((aim) => aim.proven) && (plan.oneFailure === null || plan.oneFailure.proven));
  return { wallMs, processorMs, peakMb, proven };
}

function measured(folder: string, one: Case, runs: number): { row: BenchRow; met: boolean } {
  const all = Array.from({ length: runs }, () => runOnce(folder, one));
  const processorMs = median(all.map((run) => run.processorMs));
  const peakMb = Math.max(...all.map((run) => run.peakMb));
  const proven = all.every((run) => run.proven);
  return {
    row: {
      what: `drystage plan --json, ${one.what}`,
      who: 'drystage',
      medianMs: median(all.map((run) => run.wallMs)),
      runs,
      peakMb,
      note: `${(processorMs / 1000).toFixed(1)} s of processor (target ${one.targetS}, before ${one.beforeS}), ${proven ? 'all proven' : 'NOT all proven'}`,
    },
    met: proven && processorMs <= one.targetS * 1000 && peakMb <= TARGET_MB,
  };
}

/**
 * The whole command with what-ifs, the plan against one failure and the gauge. Judged by processor time, which other work
 * on the machine changes least. The peer is the solver by the model, on the plain plan of 60 stops alone, in the same run.
 */
export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-bench-'));
  try {
    const cases: Case[] = [
      { what: 'one station', args: tripWith(folder, 1), targetS: 1.5, beforeS: 9.4 },
      { what: '60 stops', args: tripWith(folder, 60), targetS: 2, beforeS: 14 },
      { what: '150 stops', args: tripWith(folder, 150), targetS: 5, beforeS: 43 },
      { what: '400 stops', args: tripWith(folder, 400), targetS: 10, beforeS: 111 },
    ];
    if (realFolderThere)
      cases.push({
        what: 'the Swiss route, 436 stations',
        args: [
          realPath('routes/swiss-grand-tour.gpx'),
          '--supply',
          realPath('extracts/switzerland-fuel-2026.overpass.json'),
          '--rig',
          demo('rig-simple.yaml'),
        ],
        targetS: 10,
        beforeS: 111,
      });
    const results = cases.map((one) => measured(folder, one, 3));
    const solver = await loadSolver();
    const start = performance.now();
    solvedByModel(problemWith(60, 1), { solver, seconds: 60, clock: () => performance.now() / 1000 });
    const peer: BenchRow = {
      what: 'the plain plan alone, 60 stops',
      who: 'HiGHS by the model',
      medianMs: performance.now() - start,
      runs: 1,
    };
    return {
      title: 'Whole command',
      target: `one station 1.5 s, 60 stops 2 s, 150 stops 5 s, 400 stops and the Swiss route 10 s of processor, every plan proven, ${TARGET_MB} MB`,
      met: results.every(({ met }) => met),
      rows: [peer, ...results.map(({ row }) => row)],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
