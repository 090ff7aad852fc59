import type { Outcome } from '../../core/input/problem.ts';
import { userAgent } from '../program.ts';
import type { Interpreter } from './ask.ts';
import { endpointOf } from './endpoint.ts';

/** The environment variable that names the interpreter. */
const OVERPASS_VARIABLE = 'DRYSTAGE_OVERPASS';

/** The interpreter that an option names, else the environment, else the public one. */
export function interpreterOf(
  option: string | undefined,
  env: Readonly<Record<string, string | undefined>> = process.env,
): Outcome<Interpreter> {
  const address =
    option === undefined
      ? endpointOf(env[OVERPASS_VARIABLE], OVERPASS_VARIABLE)
      : endpointOf(option, '--overpass');
  return address.ok ? { ok: true, value: { address: address.value, userAgent: userAgent(env) } } : address;
}
