import { closeSync, openSync, type Stats, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import type { RawExtract, ReadOptions } from '../../extract/raw-extract.ts';
import { IdFilter } from '../find/id-filter.ts';
import { aroundMemory } from '../find/near-nodes.ts';
import { pbfProblem } from '../wire/broken.ts';
import { type Frame, framesOf } from '../wire/framing.ts';
import { readHeaderBlock } from '../wire/header-block.ts';
import { JobDoer, type JobSettings } from './jobs.ts';
import { OwnThread } from './own-thread.ts';
import { type Fetched, Reading } from './reading.ts';
import { WorkerThreads } from './worker-threads.ts';
import type { Workers } from './workers.ts';

/** A file on disk; it is read at several places, twice in part. */
export interface PbfSource {
  path: string;
}

/** Files below this size are read in the calling thread: threads take longer to start. Ours, measured. */
const THREADS_FROM_BYTES = 12 * 1024 * 1024;

/** Most reading threads: memory grows with each (about 35 MB), and the target is 200 MB in all. Ours. */
const MOST_THREADS = 2;

/**
 * Reads what concerns supply from an .osm.pbf file: the wanted elements, the nodes and members that give them geometry,
 * and, when asked, the map's ground. Blob by blob: memory does not grow with the file.
 *
 * What only lends geometry comes without tags and times, also nodes whose position is stored in the way itself. A file that looks
 * as if it had been cut exactly between two blobs comes with the caution `maybe-cut`. A hull over the 180th meridian has longitudes beyond 180.
 *
 * @throws InputProblem file-missing, file-unreadable, empty-file, pbf-broken, pbf-truncated, pbf-oversized,
 *   pbf-compression, pbf-feature; the signal's reason when aborted.
 */
export async function readPbf(
  source: PbfSource,
  options: ReadOptions,
  threadsFromBytes = THREADS_FROM_BYTES,
): Promise<RawExtract> {
  options.signal?.throwIfAborted();
  const fileBytes = sizeOf(source.path, options.source);
  const fd = openSync(source.path, 'r');
  try {
    const threads = fileBytes < threadsFromBytes ? 0 : Math.min(MOST_THREADS, availableParallelism());
    return await readOpened({ path: source.path, fd, fileBytes }, options, threads);
  } finally {
    closeSync(fd);
  }
}

function sizeOf(path: string, source: string): number {
  let stats: Stats | undefined;
  try {
    stats = statSync(path, { throwIfNoEntry: false });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw pbfProblem({
      code: 'file-unreadable',
      source,
      came: why,
      expected: 'a readable file',
      remedy: 'Check its name and permissions',
    });
  }
  if (stats === undefined)
    throw pbfProblem({
      code: 'file-missing',
      source,
      came: 'no such file',
      expected: 'an .osm.pbf file',
      remedy: 'Check its name',
    });
  if (!stats.isFile())
    throw pbfProblem({
      code: 'file-unreadable',
      source,
      came: 'not a regular file',
      expected: 'an .osm.pbf file',
      remedy: 'Check its name',
    });
  if (stats.size === 0) throw pbfProblem({ code: 'empty-file', source, came: 'an empty file' });
  return stats.size;
}

async function readOpened(
  { path, fd, fileBytes }: { path: string; fd: number; fileBytes: number },
  options: ReadOptions,
  threads: number,
): Promise<RawExtract> {
  const { source, ground } = options;
  const frames = framesOf(fd, fileBytes, source);
  const { header, dataStart } = readHeader(frames, path, source);
  const settings: JobSettings = {
    path,
    source,
    ground: ground === null ? null : { box: ground, filterMemory: new SharedArrayBuffer(IdFilter.BYTES) },
    hull: header.bounds === null,
    near: options.near ?? null,
    around: options.near?.around === undefined ? null : aroundMemory(options.near.around),
  };
  const workers: Workers =
    threads === 0
      ? new OwnThread(settings, options.signal)
      : new WorkerThreads(settings, threads, options.signal);
  const reading = new Reading(workers, options, header, settings.around);
  let fetched: Fetched;
  try {
    await reading.scan(frames, dataStart, fileBytes);
    fetched = await reading.fetch(ground);
  } finally {
    // Threads give their memory back before what they brought is put together.
    await workers.close();
  }
  return reading.finish(ground, fetched);
}

function readHeader(frames: Generator<Frame>, path: string, source: string) {
  const first = frames.next();
  if (first.done === true || first.value.type !== 'OSMHeader') {
    const came = first.done === true ? 'nothing' : `a first blob of type "${first.value.type.slice(0, 40)}"`;
    throw pbfProblem({
      code: 'pbf-broken',
      source,
      byte: 0,
      came,
      expected: 'the header blob of an .osm.pbf file',
    });
  }
  const doer = new JobDoer({ path, source, ground: null, hull: false, near: null, around: null });
  try {
    const header = readHeaderBlock(doer.payload(first.value), first.value, source);
    return { header, dataStart: first.value.blobStart + first.value.blobBytes };
  } finally {
    doer.close();
  }
}
