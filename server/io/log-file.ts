import { type Outcome, refused } from '../core/input/problem.ts';
import { readSmallFile, utf8Text } from './small-file.ts';

/** Twenty thousand lines of a log are about this. Ours. */
export const MAX_LOG_BYTES = 1_000_000;

const EXPECTED = 'a log as CSV';

/** Reads a log as text. A refusal names the file and the remedy. */
export async function readLogFile(path: string): Promise<Outcome<string>> {
  const bytes = await readSmallFile(path, { what: EXPECTED, mostBytes: MAX_LOG_BYTES });
  return bytes.ok ? logText(bytes.value, path) : bytes;
}

/** The text of a log's bytes; `source` names it in a refusal. */
export function logText(bytes: Uint8Array, source: string): Outcome<string> {
  const text = utf8Text(bytes);
  if (text === null) {
    const came = 'bytes that are not UTF-8 text';
    const remedy = 'Save the log as CSV in UTF-8';
    return refused({ code: 'log-invalid', source, came, expected: EXPECTED, remedy });
  }
  if (text.trim() === '') {
    const remedy = 'Give the log itself';
    return refused({ code: 'empty-file', source, came: 'an empty file', expected: EXPECTED, remedy });
  }
  return { ok: true, value: text };
}
