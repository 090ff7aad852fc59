import { execFileSync } from 'node:child_process';
import { closeSync, existsSync, mkdirSync, openSync, renameSync, statSync, writeSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Bench, type BenchRow, median } from './measure.ts';

const RUNS = 3;
const TARGET_MS = 1_500;
const TARGET_MB = 200;
const FILE_MB = 40;
const DATA = fileURLToPath(new URL('.data/', import.meta.url));
const CHILD = fileURLToPath(new URL('gpx-child.ts', import.meta.url));

/** A recorded track of about 40 MB with elevation and time, the same at every call. */
function syntheticGpx(): string {
  const path = `${DATA}track-${FILE_MB}mb.gpx`;
  if (existsSync(path)) return path;
  mkdirSync(DATA, { recursive: true });
  const file = openSync(`${path}.part`, 'w');
  const bytesWanted = FILE_MB * 1e6;
  let bytes = writeSync(
    file,
    '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1">\n<trk><name>Bench</name><trkseg>\n',
  );
  for (let i = 0; bytes < bytesWanted; ) {
    let block = '';
    for (const end = i + 5_000; i < end; i += 1) {
      const lat = (-35 + 2 * Math.sin(i / 90_000)).toFixed(7);
      const lon = (85 + i / 60_000).toFixed(7);
      const time = new Date(1_750_000_000_000 + i * 1000).toISOString();
      block += `  <trkpt lat="${lat}" lon="${lon}">\n    <ele>${(300 + (i % 97)).toFixed(1)}</ele>\n    <time>${time}</time>\n  </trkpt>\n`;
    }
    bytes += writeSync(file, block);
  }
  writeSync(file, '</trkseg></trk>\n</gpx>\n');
  closeSync(file);
  renameSync(`${path}.part`, path);
  return path;
}

interface ChildReport {
  ms: number;
  peakMb: number;
  points: number;
}

function measure(who: 'drystage' | 'saxes', path: string): { row: BenchRow; points: number } {
  const reports = Array.from({ length: RUNS }, () => {
    const out = execFileSync(process.execPath, ['--import', 'tsx', CHILD, who, path], { encoding: 'utf8' });
    return JSON.parse(out) as ChildReport;
  });
  const points = reports[0]!.points;
  return {
    points,
    row: {
      what: `GPX of ${(statSync(path).size / 1e6).toFixed(0)} MB, ${points} points`,
      who: who === 'saxes' ? 'saxes 6, parsed and thrown away (the floor)' : 'drystage',
      medianMs: median(reports.map((report) => report.ms)),
      runs: RUNS,
      peakMb: Math.max(...reports.map((report) => report.peakMb)),
    },
  };
}

/** Reading a long recorded track, each run in a process of its own, memory of the whole process. */
export const bench: Bench = async () => {
  const path = syntheticGpx();
  const own = measure('drystage', path);
  const floor = measure('saxes', path);
  if (own.points !== floor.points)
    throw new Error(`read ${own.points} points where there are ${floor.points}`);
  return {
    title: 'GPX',
    target: `${FILE_MB} MB within ${TARGET_MS / 1000} s and ${TARGET_MB} MB`,
    met: own.row.medianMs <= TARGET_MS && (own.row.peakMb ?? Infinity) <= TARGET_MB,
    rows: [own.row, floor.row],
  };
};
