import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { InputProblem } from '../core/input/problem.ts';

/** What of a request tells where it comes from. */
export interface Sender {
  /** The name by which the server was asked, with its port. */
  readonly host: string | undefined;
  /** Of the page that asks. */
  readonly origin: string | undefined;
  readonly site: string | undefined;
  readonly mode: string | undefined;
  readonly isApi: boolean;
}

/** A host without its port; brackets of an address of the sixth version taken off. */
function nameOf(host: string): string {
  if (host.startsWith('[')) return host.slice(1, Math.max(1, host.indexOf(']')));
  const colon = host.indexOf(':');
  return (colon < 0 ? host : host.slice(0, colon)).toLowerCase();
}

/** The names by which this machine is known, beside addresses in figures, which no name of the net leads to. */
const namesHere = (configured: readonly string[]): ReadonlySet<string> =>
  new Set(['localhost', hostname(), ...configured].map((name) => name.toLowerCase()));

/**
 * Why a request is not to be answered, null where it is: another site's page may ask this server only by a link that is
 * followed. Names that are not this machine's are refused, as a name of the net may be made to lead here.
 */
export function foreignness(sender: Sender, configured: readonly string[]): string | null {
  const { host = '', origin, site, mode, isApi } = sender;
  const name = nameOf(host);
  if (isIP(name) === 0 && !namesHere(configured).has(name)) return "a name that is not this machine's";
  if (origin !== undefined && origin !== 'null' && !isSameHost(origin, host)) return 'a page of another site';
  if (origin === 'null') return 'a page without a site';
  const isFollowed = mode === 'navigate' && !isApi;
  if ((site === 'cross-site' || site === 'same-site') && !isFollowed) return 'a page of another site';
  return null;
}

function isSameHost(origin: string, host: string): boolean {
  const scheme = origin.indexOf('://');
  return scheme > 0 && origin.slice(scheme + 3).toLowerCase() === host.toLowerCase();
}

const one = (header: string | string[] | undefined): string | undefined =>
  Array.isArray(header) ? header.join(', ') : header;

const senderOf = ({ headers, url }: FastifyRequest): Sender => ({
  host: headers.host,
  origin: one(headers.origin),
  site: one(headers['sec-fetch-site']),
  mode: one(headers['sec-fetch-mode']),
  isApi: url.startsWith('/api'),
});

/** Answers its own page and this machine's programs alone, and has no answer of the API kept by anybody on the way. */
export function answerOwnRequests(app: FastifyInstance, configured: readonly string[]): void {
  app.addHook('onRequest', async (request) => {
    const came = foreignness(senderOf(request), configured);
    if (came === null) return;
    throw new InputProblem({
      code: 'not-from-here',
      came,
      expected: "a request of this server's own page, or of a program, under a name of this machine",
      remedy: 'Open Drystage by the address that it prints at its start; HOST and DRYSTAGE_NAME name others',
    });
  });
  app.addHook('onSend', async (request, reply) => {
    if (request.url.startsWith('/api') && reply.getHeader('cache-control') === undefined)
      reply.header('cache-control', 'no-store');
  });
}
