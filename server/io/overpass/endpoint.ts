import { type LookupAddress, lookup } from 'node:dns';
import { BlockList, isIP, type LookupFunction } from 'node:net';
import { type Outcome, refused } from '../../core/input/problem.ts';

/** The public interpreter of the Overpass API, of which its operators ask to use it sparingly. */
export const PUBLIC_ENDPOINT = 'https://overpass-api.de/api/interpreter';

/** The address in a configuration; `place` is how the configuration calls it, nothing given means the public one. */
export function endpointOf(text: string | undefined, place: string): Outcome<URL> {
  const given = text?.trim() || PUBLIC_ENDPOINT;
  const url = URL.canParse(given) ? new URL(given) : null;
  const isPlain = url !== null && url.username === '' && url.password === '';
  if (isPlain && (url.protocol === 'https:' || url.protocol === 'http:')) return { ok: true, value: url };
  return refused({
    code: 'command-invalid',
    place,
    came: `"${given}"`,
    expected: `the address of an Overpass interpreter, such as ${PUBLIC_ENDPOINT}`,
    remedy: 'Correct it, or leave it out for the public one',
  });
}

/** Ranges that lead into this machine or its own network (IANA special-purpose address registries, RFC 6890). */
const INNER = new BlockList();
for (const [net, prefix] of [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['224.0.0.0', 3],
] as const)
  INNER.addSubnet(net, prefix, 'ipv4');
for (const [net, prefix] of [
  ['::', 127],
  // Addresses of the fourth version inside ones of the sixth (NAT64, RFC 6052).
  ['64:ff9b::', 96],
  ['fc00::', 7],
  ['fe80::', 10],
  ['ff00::', 8],
] as const)
  INNER.addSubnet(net, prefix, 'ipv6');

export const isInner = ({ address, family }: LookupAddress): boolean =>
  INNER.check(address, family === 6 ? 'ipv6' : 'ipv4');

/** A name that leads into this machine or its own network. */
export class InnerAddress extends Error {}

/** Finds a name's addresses, as `dns.lookup` does with `all`. */
export type FindAddresses = (
  hostname: string,
  found: (error: Error | null, addresses: LookupAddress[]) => void,
) => void;

const askSystem: FindAddresses = (hostname, found) =>
  lookup(hostname, { all: true }, (error, addresses) => found(error, addresses ?? []));

/** Whether a configuration means this machine or network by its own words: an address in figures, or localhost. */
const isMeantSo = (hostname: string): boolean =>
  isIP(hostname.replace(/^\[|\]$/g, '')) !== 0 || hostname === 'localhost' || hostname.endsWith('.localhost');

/**
 * Looks names up for a connection, which then goes to one of the very addresses that were looked at. A name of the net
 * outside that leads inside is an error (InnerAddress).
 */
export function guardedLookup({ hostname }: URL, find: FindAddresses = askSystem): LookupFunction {
  const mayBeInner = isMeantSo(hostname);
  return (name, options, connect) =>
    find(name, (error, addresses) => {
      const [first] = addresses;
      const inner = mayBeInner ? undefined : addresses.find(isInner);
      if (error !== null || first === undefined) connect(error ?? new Error(`no address of ${name}`), '', 0);
      else if (inner !== undefined) connect(new InnerAddress(`${name} is ${inner.address}`), '', 0);
      else if (options.all === true) connect(null, addresses);
      else connect(null, first.address, first.family);
    });
}
