/**
 * How long a test waits before it gives up. These are ceilings, not waits: a test goes on as soon as the state that it
 * waits for has come, which on an idle machine is thousandths of a second. They are wide, so that a machine with much
 * else to do fails no test, and they stand here only.
 */

/** For one state to come: a text, an attribute, a process that answers; ms. */
export const STATE_MS = 180_000;

/** For one test, or for what is done before and after the tests of a file; ms. */
export const TEST_MS = 900_000;

/** For the solver at one plan, where a test wants the best plan proven and not what the machine could do in time; s. */
export const PLAN_SECONDS = 300;
