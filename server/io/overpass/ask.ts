import type { IncomingMessage } from 'node:http';
import { request as requestPlain } from 'node:http';
import { request as requestSecure } from 'node:https';
import type { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { type FindAddresses, guardedLookup, InnerAddress } from './endpoint.ts';
import { QUERY_TIMEOUT_S } from './query.ts';

/** What came of one request. */
export type Answer =
  | { outcome: 'text'; text: string }
  /** The server is busy; `afterS`: it says itself when to come again. */
  | { outcome: 'busy'; status: number; afterS: number | null }
  | { outcome: 'refusal'; status: number; text: string }
  /** More than the limit. */
  | { outcome: 'too-much' }
  /** The connection or the answer broke off, or took too long: worth another try. */
  | { outcome: 'broken'; came: string }
  /** The name leads into this machine or network. */
  | { outcome: 'inner-address'; came: string };

/** One Overpass server and how it is spoken to. */
export interface Interpreter {
  readonly address: URL;
  /** Who asks. */
  readonly userAgent: string;
  readonly limits?: Partial<AskLimits>;
  /** Between two questions, where not the usual. */
  readonly pauseMs?: number;
  /** Given by tests. */
  readonly findAddresses?: FindAddresses;
}

export interface AskLimits {
  /** Of an answer, unpacked. */
  bytes: number;
  /** From the question to the last byte. */
  ms: number;
}

/** Ours: an answer so large is parsed in half a second; the server's own time and a minute for the way. */
const LIMITS: AskLimits = { bytes: 32_000_000, ms: (QUERY_TIMEOUT_S + 60) * 1_000 };
/** Of a refusal's page. */
const REFUSAL_BYTES = 100_000;
const BUSY: ReadonlySet<number> = new Set([429, 502, 503, 504]);

class TooMuch extends Error {}

/** Asks once. Redirects are not followed. Rejects only when `signal` called it off. */
export async function askOnce(interpreter: Interpreter, query: string, signal: AbortSignal): Promise<Answer> {
  const { bytes, ms } = { ...LIMITS, ...interpreter.limits };
  const tooLong = AbortSignal.timeout(ms);
  try {
    const response = await send(interpreter, query, AbortSignal.any([signal, tooLong]));
    const status = response.statusCode ?? 0;
    if (status === 200) return { outcome: 'text', text: await textOf(response, bytes) };
    if (BUSY.has(status)) {
      response.destroy();
      return { outcome: 'busy', status, afterS: secondsOf(response.headers['retry-after']) };
    }
    if (status >= 300 && status < 400) {
      response.destroy();
      return {
        outcome: 'refusal',
        status,
        text: `it points to ${response.headers.location ?? 'another address'}`,
      };
    }
    return { outcome: 'refusal', status, text: await textOf(response, REFUSAL_BYTES) };
  } catch (error) {
    signal.throwIfAborted();
    if (error instanceof TooMuch) return { outcome: 'too-much' };
    if (error instanceof InnerAddress) return { outcome: 'inner-address', came: error.message };
    if (tooLong.aborted)
      return { outcome: 'broken', came: `no whole answer within ${Math.round(ms / 1_000)} s` };
    return { outcome: 'broken', came: causeOf(error) };
  }
}

function send({ address, userAgent, findAddresses }: Interpreter, query: string, signal: AbortSignal) {
  const body = new URLSearchParams({ data: query }).toString();
  const post = address.protocol === 'https:' ? requestSecure : requestPlain;
  return new Promise<IncomingMessage>((resolve, reject) => {
    const asking = post(address, {
      method: 'POST',
      headers: {
        'user-agent': userAgent,
        accept: 'application/json',
        'accept-encoding': 'gzip',
        'content-type': 'application/x-www-form-urlencoded',
        'content-length': Buffer.byteLength(body),
      },
      lookup: guardedLookup(address, findAddresses),
      signal,
      agent: false,
    });
    asking.once('response', resolve).once('error', reject).end(body);
  });
}

async function textOf(response: IncomingMessage, mostBytes: number): Promise<string> {
  const isPacked = response.headers['content-encoding'] === 'gzip';
  const gunzip = createGunzip();
  // An answer that breaks off breaks off its unpacking as well.
  const body: Readable = isPacked
    ? response.once('error', (error) => gunzip.destroy(error)).pipe(gunzip)
    : response;
  const pieces: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const piece of body as AsyncIterable<Buffer>) {
      bytes += piece.length;
      if (bytes > mostBytes) throw new TooMuch();
      pieces.push(piece);
    }
  } finally {
    response.destroy();
  }
  return Buffer.concat(pieces).toString('utf8');
}

/** Retry-After in seconds: a number of them or a date (RFC 9110, 10.2.3); null for what is neither. */
function secondsOf(header: string | undefined): number | null {
  const text = header?.trim() ?? '';
  if (/^\d+$/.test(text)) return Number(text);
  const at = Date.parse(text);
  return Number.isNaN(at) ? null : Math.max(0, Math.ceil((at - Date.now()) / 1_000));
}

function causeOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { code } = error as NodeJS.ErrnoException;
  return code === undefined || error.message.includes(code) ? error.message : `${error.message} (${code})`;
}
