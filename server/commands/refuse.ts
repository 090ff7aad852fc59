import { type Outcome, refused } from '../core/input/problem.ts';

/** A command line that cannot be understood: what came, what was expected; the help says the rest. */
export const refuse = (place: string | null, came: string, expected: string): Outcome<never> =>
  refused({ code: 'command-invalid', place, came, expected, remedy: 'See --help' });

/** An option of no known name, in Node's own words: "Unknown option '--suply'. To specify a positional argument …" */
export function refuseOption(error: unknown, known: string): Outcome<never> {
  const [came = 'an option that is not known'] = (error as Error).message.split(/[.;]\s/);
  return refuse(null, came, `the options ${known}`);
}
