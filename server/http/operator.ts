import { isIP } from 'node:net';
import { type Outcome, refused } from '../core/input/problem.ts';

/** What whoever runs the server sets around it, beside its address. */
export interface OperatorSettings {
  /** Null where everybody who reaches it may use it: on this machine alone. */
  secret: string | null;
  /** Names under which it is asked, behind a proxy for example. */
  names: readonly string[];
  /** Proxies whose word on the sender's address and scheme is taken. */
  trustProxy: readonly string[];
}

const LEAST_SECRET = 16;
/** Ranges that have a name (proxy-addr). */
const NAMED_RANGES = ['loopback', 'linklocal', 'uniquelocal'];

/** Whether an address to listen on is reached from this machine alone. */
const isLoopback = (host: string): boolean =>
  host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));

const listOf = (text: string | undefined): string[] =>
  (text ?? '')
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');

function isRange(text: string): boolean {
  const [address = '', bits = '0', ...rest] = text.split('/');
  return NAMED_RANGES.includes(text) || (isIP(address) !== 0 && /^\d{1,3}$/.test(bits) && rest.length === 0);
}

/** Reads them from the environment. Refuses an address of the net without a secret. */
export function operatorSettings(env: NodeJS.ProcessEnv, host: string): Outcome<OperatorSettings> {
  const secret = env.DRYSTAGE_SECRET ?? '';
  const wants = `a secret of at least ${LEAST_SECRET} characters`;
  if (secret !== '' && secret.length < LEAST_SECRET)
    return refused({
      code: 'command-invalid',
      place: 'DRYSTAGE_SECRET',
      came: `${secret.length} characters`,
      expected: wants,
      remedy: 'Take a longer one, such as that of: openssl rand -base64 24',
    });
  if (secret === '' && !isLoopback(host))
    return refused({
      code: 'command-invalid',
      place: 'HOST',
      came: `"${host}", which others can reach, and no secret`,
      expected: `DRYSTAGE_SECRET with ${wants}, or this machine alone`,
      remedy: 'Set DRYSTAGE_SECRET, such as to that of: openssl rand -base64 24, or leave HOST out',
    });
  const trustProxy = listOf(env.DRYSTAGE_TRUST_PROXY);
  const strange = trustProxy.find((one) => !isRange(one));
  if (strange !== undefined)
    return refused({
      code: 'command-invalid',
      place: 'DRYSTAGE_TRUST_PROXY',
      came: `"${strange}"`,
      expected: `addresses of proxies or ranges of them (10.0.0.0/8), or ${NAMED_RANGES.join(', ')}`,
      remedy: 'Name the proxy that stands before this server, or leave it out',
    });
  return {
    ok: true,
    value: { secret: secret === '' ? null : secret, names: listOf(env.DRYSTAGE_NAME), trustProxy },
  };
}
