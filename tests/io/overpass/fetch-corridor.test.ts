import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import type { ServerResponse } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Bbox } from '../../../server/contract/common.ts';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { readExtract } from '../../../server/io/osm/read-extract.ts';
import { coverOfExtract } from '../../../server/io/osm/unite/cover.ts';
import type { Interpreter } from '../../../server/io/overpass/ask.ts';
import { ChunkFolder, FRESH_MS, sweepChunks } from '../../../server/io/overpass/chunk-folder.ts';
import { type FetchState, fetchCorridor } from '../../../server/io/overpass/fetch-corridor.ts';
import { mergeChunks } from '../../../server/io/overpass/merge-chunks.ts';
import { type LandNode, SmallOverpass, type Trick } from './small-overpass.ts';

const WEST: Bbox = [85, -35.1, 85.3, -34.9];
const EAST: Bbox = [85.25, -35.1, 85.5, -34.9];
const LAND: LandNode[] = [
  { id: 1, lat: -35, lon: 85.1, tags: { amenity: 'fuel' } },
  // In both boxes.
  { id: 2, lat: -35, lon: 85.27, tags: { amenity: 'drinking_water', name: 'Tap of the ford' } },
  { id: 3, lat: -35, lon: 85.4, tags: { amenity: 'fuel', name: 'Far pump' } },
  { id: 4, lat: -36, lon: 85.4, tags: { amenity: 'fuel', name: 'Off the corridor' } },
];

let overpass: SmallOverpass;
let interpreter: Interpreter;
let folder: string;
/** Milliseconds that were let pass, without waiting for them. */
let waits: number[];
let states: FetchState[];
beforeEach(async () => {
  overpass = new SmallOverpass(LAND);
  interpreter = await overpass.start();
  folder = await mkdtemp(join(tmpdir(), 'drystage-overpass-test-'));
  waits = [];
  states = [];
});
afterEach(async () => {
  overpass.stop();
  await rm(folder, { recursive: true, force: true });
});

interface Going {
  boxes?: Bbox[];
  signal?: AbortSignal;
  now?: () => number;
  limits?: Interpreter['limits'];
}

function fetchIt({ boxes = [WEST, EAST], signal = new AbortController().signal, now, limits }: Going = {}) {
  const asker = limits === undefined ? interpreter : { ...interpreter, limits };
  return fetchCorridor(asker, boxes, new ChunkFolder(folder, interpreter.address, now), {
    signal,
    wait: async (ms) => {
      waits.push(ms);
    },
    onState: (state) => states.push(state),
  });
}

/** The problem that a fetch ends with. */
async function refusalOf(going?: Going) {
  const error = await fetchIt(going).catch((thrown: unknown) => thrown);
  if (error instanceof InputProblem) return error.problem;
  throw error;
}

/** Does a trick at the first so many questions. */
const first =
  (times: number, answer: (response: ServerResponse) => void): Trick =>
  (_asked, response, number) => {
    if (number > times) return false;
    answer(response);
    return true;
  };

async function readMerged(going?: Going) {
  const to = join(folder, 'merged');
  expect(await mergeChunks(await fetchIt(going), to)).toEqual({ ok: true, value: undefined });
  const read = await readExtract(to, { source: 'corridor', ground: null });
  if (!read.ok) throw new InputProblem(read.problem);
  return read.value;
}

describe('a corridor', () => {
  it('is asked for box by box, one question at a time, by a program that says its name', async () => {
    await fetchIt();
    expect(overpass.asked.map(({ box }) => box)).toEqual([WEST, EAST]);
    expect(overpass.mostAtOnce).toBe(1);
    expect(waits).toEqual([1_000]);
    expect(overpass.asked[0]?.headers['user-agent']).toBe('drystage/test');
    expect(states.at(-1)).toEqual({ done: 2, chunks: 2, waiting: null });
  });

  it('becomes one file that covers the boxes and nothing else, with its oldest date and each object once', async () => {
    overpass.trick = (asked, response) => {
      overpass.base = asked.box[0] === WEST[0] ? '2026-04-30T00:00:00Z' : '2026-04-29T00:00:00Z';
      response.setHeader('content-encoding', 'gzip').end(gzipSync(overpass.answerTo(asked)));
      return true;
    };
    const extract = await readMerged();
    expect([...extract.wanted].sort()).toEqual(['node/1', 'node/2', 'node/3']);
    expect(extract.counts.nodes).toBe(3);
    expect(extract.papers.asOf).toBe('2026-04-29T00:00:00Z');
    expect(extract.elements.find(({ id }) => id === 2)).toMatchObject({
      version: 2,
      timestamp: '2026-01-02T00:00:00Z',
    });
    expect([extract.bounds, extract.moreBounds]).toEqual([WEST, [EAST]]);
    const { areas } = coverOfExtract(extract);
    expect(areas.map(({ commodity, guessed, rings }) => [commodity, guessed, rings.length])).toEqual([
      ['fuel', false, 2],
      ['water', false, 2],
    ]);
  });

  it('speaks of water where it was asked for and there is none', async () => {
    const extract = await readMerged({ boxes: [[85.3, -35.1, 85.5, -34.9]] });
    expect(extract.shows).toMatchObject({ fuel: true, water: true, general: false });
  });

  it('has no date where a piece has none', async () => {
    overpass.trick = (asked) => {
      overpass.base = asked.box[0] === WEST[0] ? '' : '2026-04-30T00:00:00Z';
      return false;
    };
    expect((await readMerged()).papers.asOf).toBeNull();
  });
});

describe('a server that is busy', () => {
  it('is asked again when it says, by seconds or by date', async () => {
    overpass.trick = first(1, (response) =>
      response.writeHead(429, { 'retry-after': '7' }).end('<html>slow down'),
    );
    await fetchIt();
    expect(waits).toEqual([7_000, 1_000]);
    expect(states).toContainEqual({
      done: 0,
      chunks: 2,
      waiting: { seconds: 7, why: 'busy', detail: 'status 429' },
    });
    overpass.trick = (_asked, response, number) => {
      if (number !== 4) return false;
      response.writeHead(504, { 'retry-after': new Date(Date.now() + 60_000).toUTCString() }).end();
      return true;
    };
    await fetchIt({ boxes: [[84, -35, 84.1, -34.9]] });
    expect(waits.at(-1)).toBeGreaterThan(50_000);
    expect(waits.at(-1)).toBeLessThanOrEqual(60_000);
  });

  it('is asked five times, after longer and longer waits, and then told of', async () => {
    overpass.trick = first(99, (response) => response.writeHead(504).end('<html>busy</html>'));
    expect(await refusalOf()).toMatchObject({ code: 'overpass-busy', came: 'status 504 at try 5' });
    expect(waits).toEqual([15_000, 30_000, 60_000, 120_000]);
    expect(overpass.asked).toHaveLength(5);
  });

  it('is left alone where it asks for a long wait', async () => {
    overpass.trick = first(1, (response) => response.writeHead(429, { 'retry-after': '3600' }).end());
    expect(await refusalOf()).toMatchObject({
      code: 'overpass-busy',
      came: expect.stringMatching(/to come again in 3600 s/),
    });
    expect(overpass.asked).toHaveLength(1);
  });
});

describe('an answer that is none', () => {
  it.each<[string, (response: ServerResponse) => void, RegExp]>([
    [
      'a page with status 200',
      (response) => response.end('<html><head><title>x</title></head><p>Log in to the hotel'),
      /a web page: Log in to the hotel/,
    ],
    [
      'a page of errors',
      (response) =>
        response
          .writeHead(400)
          .end('<html><body><p><strong>Error</strong>: line 1: parse error: &quot;;&quot;</body>'),
      /status 400: Error : line 1: parse error: ";"/,
    ],
    [
      'a way to another address',
      (response) => response.writeHead(302, { location: 'http://127.0.0.1:1/' }).end(),
      /status 302: it points to http:\/\/127.0.0.1:1\//,
    ],
  ])('%s is a refusal in its own words, and nothing is asked again', async (_name, answer, words) => {
    overpass.trick = first(1, answer);
    const { code, came } = await refusalOf();
    expect([code, came]).toEqual(['overpass-refused', expect.stringMatching(words)]);
    expect(overpass.asked).toHaveLength(1);
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each<[string, (response: ServerResponse) => void]>([
    [
      'cut short by the connection',
      (response) =>
        void response
          .writeHead(200, { 'content-length': 500 })
          .write('{"elements":[', () => response.destroy()),
    ],
    ['cut short by its end', (response) => response.end('{"elements":[')],
    ['no answer of Overpass', (response) => response.end('{"ok":true}')],
    ['no connection', (response) => response.destroy()],
  ])('%s is asked for again', async (_name, answer) => {
    overpass.trick = first(1, answer);
    expect(await fetchIt()).toHaveLength(2);
    expect(overpass.asked).toHaveLength(3);
    expect(waits).toEqual([15_000, 1_000]);
  });

  it('slow beyond the limit is asked for again', async () => {
    overpass.trick = first(1, (response) => void response.writeHead(200).write('{'));
    await fetchIt({ limits: { ms: 150 } });
    expect(states.find(({ waiting }) => waiting !== null)?.waiting).toMatchObject({
      why: 'broken',
      detail: expect.stringMatching(/no whole answer within/),
    });
  });

  it('a runtime error in an answer makes halves of the box, and none of the partial data is kept', async () => {
    const remark = 'runtime error: Query timed out in "query" at line 3 after 181 seconds.';
    overpass.trick = (asked, response) => {
      const [west, , east] = asked.box;
      if (east - west <= 0.26) return false;
      response.end(overpass.answerTo(asked, remark));
      return true;
    };
    const fetched = await fetchIt();
    expect(fetched.map(({ box }) => box)).toEqual([
      [85, -35.1, 85.15, -34.9],
      [85.15, -35.1, 85.3, -34.9],
      EAST,
    ]);
    expect(
      readdirSync(folder)
        .map((name) => readFileSync(join(folder, name), 'utf8'))
        .join(),
    ).not.toContain(remark);
    expect(states.at(-1)).toMatchObject({ done: 3, chunks: 3 });
    // What has to be halved is known the next time.
    const before = overpass.asked.length;
    await fetchIt();
    expect(overpass.asked).toHaveLength(before);
  });

  it('an answer of too many bytes makes halves as well', async () => {
    const whole = overpass.answerTo({ query: '', box: WEST, headers: {} }).length;
    const fetched = await fetchIt({ boxes: [WEST], limits: { bytes: whole - 1 } });
    expect(fetched).toHaveLength(2);
  });

  it('a stretch that cannot be halved any more is refused with the words of the server', async () => {
    overpass.trick = (asked, response) => {
      response.end(overpass.answerTo(asked, 'runtime error: out of memory'));
      return true;
    };
    expect(await refusalOf({ boxes: [[85, -35, 85.03, -34.99]] })).toMatchObject({
      code: 'overpass-refused',
      came: 'of a stretch of 2 km: runtime error: out of memory',
    });
  });
});

describe('what was fetched', () => {
  it('is not asked for again after a stop, nor while it is fresh', async () => {
    const control = new AbortController();
    overpass.trick = (_asked, _response, number) => {
      if (number === 2) control.abort();
      return false;
    };
    await expect(fetchIt({ signal: control.signal })).rejects.toThrow();
    expect(overpass.asked).toHaveLength(2);
    overpass.trick = () => false;
    expect(await fetchIt()).toHaveLength(2);
    expect(overpass.asked.slice(2).map(({ box }) => box)).toEqual([EAST]);
    await fetchIt();
    expect(overpass.asked).toHaveLength(3);
    await fetchIt({ now: () => Date.now() + FRESH_MS + 60_000 });
    expect(overpass.asked).toHaveLength(5);
  });

  it('is asked for again where its file is cut short', async () => {
    const [{ path } = { path: '' }] = await fetchIt();
    writeFileSync(path, readFileSync(path, 'utf8').slice(0, -20));
    await fetchIt();
    expect(overpass.asked.slice(2).map(({ box }) => box)).toEqual([WEST]);
  });

  it('goes when it is old', async () => {
    const [old, fresh] = await fetchIt();
    const then = (Date.now() - FRESH_MS) / 1_000 - 60;
    utimesSync(old?.path ?? '', then, then);
    await sweepChunks(folder);
    expect(readdirSync(folder).map((name) => join(folder, name))).toEqual([fresh?.path]);
    await sweepChunks(join(folder, 'nowhere'));
  });
});

it('a name of the net that leads into this machine is refused, and nothing is sent', async () => {
  const { port } = interpreter.address;
  interpreter = {
    ...interpreter,
    address: new URL(`http://overpass.example:${port}/`),
    findAddresses: (_name, found) => found(null, [{ address: '127.0.0.1', family: 4 }]),
  };
  expect(await refusalOf()).toMatchObject({
    code: 'overpass-refused',
    came: expect.stringMatching(/overpass.example is 127/),
  });
  expect(overpass.asked).toEqual([]);
});
