/** Reads one GPX file once in a process of its own: `gpx-child.ts drystage|saxes FILE` prints { ms, peakMb, points }. */
import { createReadStream } from 'node:fs';
import { SaxesParser } from 'saxes';
import { readGpx } from '../../server/io/gpx/read-gpx.ts';

async function byDrystage(path: string): Promise<number> {
  const document = await readGpx(path, path);
  return document.parts
    .flatMap((part) => part.segments)
    .reduce((sum, segment) => sum + segment.lon.length, 0);
}

/** The floor: the same parser, the same pieces, and nothing done but counting points. */
async function bySaxes(path: string): Promise<number> {
  const parser = new SaxesParser();
  let points = 0;
  parser.on('opentag', (tag) => {
    if (tag.name === 'trkpt') points += 1;
  });
  const decoder = new TextDecoder();
  for await (const chunk of createReadStream(path, { highWaterMark: 256 * 1024 }) as AsyncIterable<Buffer>) {
    parser.write(decoder.decode(chunk, { stream: true }));
  }
  parser.close();
  return points;
}

const [, , who, path] = process.argv;
if (path === undefined) throw new Error('expected a reader and a file');
const start = performance.now();
const points = who === 'saxes' ? await bySaxes(path) : await byDrystage(path);
const ms = performance.now() - start;
// maxRSS is in kilobytes on Linux and macOS alike under libuv.
console.log(JSON.stringify({ ms, peakMb: process.resourceUsage().maxRSS / 1024, points }));
