import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { ExtractReading } from '../../../server/contract/supplies/readings.ts';
import { watchReadings } from '../../../web/api/maps.ts';

/** A stream of events that the test speaks for. */
class Stream {
  static last: Stream | null = null;
  readonly url: string;
  isClosed = false;
  readonly #listeners = new Map<string, (event: unknown) => void>();

  constructor(url: string) {
    this.url = url;
    Stream.last = this;
  }

  addEventListener(name: string, listener: (event: unknown) => void): void {
    this.#listeners.set(name, listener);
  }

  say(name: string, event: unknown = {}): void {
    this.#listeners.get(name)?.(event);
  }

  close(): void {
    this.isClosed = true;
  }
}

const named = (name: string) => ({ name }) as ExtractReading;
let asked: string[];
let told: string[][];
let stop: () => void;
beforeEach(() => {
  vi.useFakeTimers();
  asked = [];
  told = [];
  vi.stubGlobal('fetch', async (path: string) => {
    asked.push(path);
    return new Response(JSON.stringify({ extracts: [], reading: [named('polled')] }));
  });
});
afterEach(() => {
  stop();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const watch = () => {
  stop = watchReadings((readings) => told.push(readings.map(({ name }) => name)));
};
const stream = (): Stream => {
  if (Stream.last === null) throw new Error('no stream was opened');
  return Stream.last;
};

describe('readings are watched', () => {
  it('by events, and nothing is asked besides', async () => {
    vi.stubGlobal('EventSource', Stream);
    watch();
    expect(stream().url).toBe('/api/extracts/readings');
    stream().say('readings', { data: JSON.stringify({ reading: [named('a'), named('b')] }) });
    // A stream that ends is opened again by the browser itself.
    stream().say('error');
    await vi.advanceTimersByTimeAsync(5_000);
    expect([told, asked, stream().isClosed]).toEqual([[['a', 'b']], [], false]);
    stop();
    expect(stream().isClosed).toBe(true);
  });

  it('by asking each second where no event comes through, until it is stopped', async () => {
    vi.stubGlobal('EventSource', Stream);
    watch();
    stream().say('error');
    expect(stream().isClosed).toBe(true);
    await vi.advanceTimersByTimeAsync(2_500);
    expect(asked).toEqual(['/api/extracts', '/api/extracts', '/api/extracts']);
    expect(told).toEqual([['polled'], ['polled'], ['polled']]);
    stop();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(asked).toHaveLength(3);
  });

  it('by asking where the browser knows no events', async () => {
    vi.stubGlobal('EventSource', undefined);
    watch();
    await vi.advanceTimersByTimeAsync(100);
    expect(told).toEqual([['polled']]);
  });
});
