import type { Caution } from '../../../../core/phrases/cautions.ts';

/**
 * How a server says that it stopped early: Overpass writes "runtime error: Query timed out in …" and answers with what
 * it had so far, as if all were well (from memory, and so in its replies).
 */
const FAILURE = /error|timed out|timeout|out of memory|incomplete|truncated|limit/i;

/** Whether a remark in a reply says that the reply is not whole. */
export const tellsOfFailure = (remark: string): boolean => FAILURE.test(remark);

/** An incomplete reply may be used for the supplies that it shows, never for their absence: it covers nothing. */
export const incompleteCaution = (source: string, remark: string): Caution => ({
  code: 'extract-incomplete',
  facts: { source, remark },
});
