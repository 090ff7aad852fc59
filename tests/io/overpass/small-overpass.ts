import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Interpreter } from '../../../server/io/overpass/ask.ts';

/** A node of the small land. */
export interface LandNode {
  id: number;
  lat: number;
  lon: number;
  tags?: Record<string, string>;
}

/** What was asked: the query, the box that it names first, and the headers. */
export interface Asked {
  query: string;
  box: [number, number, number, number];
  headers: IncomingMessage['headers'];
}

/** Answers one question; gives true where it did, else the server answers from its land. */
export type Trick = (asked: Asked, response: ServerResponse, number: number) => boolean;

/** A server on this machine that speaks the protocol: answers from a land, but where a trick comes first. */
export class SmallOverpass {
  readonly asked: Asked[] = [];
  /** Most questions that were open at one time. */
  mostAtOnce = 0;
  trick: Trick = () => false;
  base = '2026-04-30T06:00:00Z';
  #open = 0;
  readonly #land: readonly LandNode[];
  readonly #server = createServer((request, response) => void this.#take(request, response));

  constructor(land: readonly LandNode[]) {
    this.#land = land;
  }

  async start(): Promise<Interpreter> {
    this.#server.listen(0, '127.0.0.1');
    await once(this.#server, 'listening');
    const { port } = this.#server.address() as AddressInfo;
    return { address: new URL(`http://127.0.0.1:${port}/api/interpreter`), userAgent: 'drystage/test' };
  }

  stop(): void {
    this.#server.closeAllConnections();
    this.#server.close();
  }

  async #take(request: IncomingMessage, response: ServerResponse): Promise<void> {
    this.#open += 1;
    this.mostAtOnce = Math.max(this.mostAtOnce, this.#open);
    response.once('close', () => {
      this.#open -= 1;
    });
    let body = '';
    for await (const piece of request) body += String(piece);
    const query = new URLSearchParams(body).get('data') ?? '';
    const [south = 0, west = 0, north = 0, east = 0] = (
      /\(([-\d.]+,[-\d.]+,[-\d.]+,[-\d.]+)\)/.exec(query)?.[1] ?? ''
    )
      .split(',')
      .map(Number);
    const asked: Asked = { query, box: [west, south, east, north], headers: request.headers };
    this.asked.push(asked);
    if (!this.trick(asked, response, this.asked.length)) response.end(this.answerTo(asked));
  }

  answerTo({ box: [west, south, east, north] }: Asked, remark?: string): string {
    const elements = this.#land
      .filter(({ lat, lon }) => lat >= south && lat <= north && lon >= west && lon <= east)
      .flatMap(({ tags, ...node }) => {
        const bare = { type: 'node', ...node };
        // As servers do: with its tags, and bare as a part of something else.
        return [{ ...bare, version: 2, timestamp: '2026-01-02T00:00:00Z', tags }, bare];
      });
    return JSON.stringify({
      version: 0.6,
      osm3s: { timestamp_osm_base: this.base, copyright: 'The data included in this document is from there' },
      elements,
      ...(remark !== undefined && { remark }),
    });
  }
}
