import { readFile, stat } from 'node:fs/promises';
import type { Outcome, Problem } from '../core/input/problem.ts';

/** Twenty thousand lines of a log are about this. Ours. */
export const MAX_LOG_BYTES = 1_000_000;

/** Reads a log as text. A refusal names the file and the remedy. */
export async function readLogFile(path: string): Promise<Outcome<string>> {
  const refuse = (code: Problem['code'], came: string, remedy: string): Outcome<never> => ({
    ok: false,
    problem: { code, source: path, place: null, came, expected: 'a log as CSV', remedy },
  });
  let bytes: Buffer;
  try {
    const found = await stat(path);
    if (found.isDirectory()) return refuse('file-unreadable', 'a folder', 'Give the path of the file in it');
    if (found.size > MAX_LOG_BYTES) {
      return refuse('too-large', `${found.size} bytes`, `Give a file under ${MAX_LOG_BYTES} bytes`);
    }
    bytes = await readFile(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'ENOENT' || code === 'ENOTDIR') {
      return refuse('file-missing', 'no such file', 'Check the path');
    }
    return refuse('file-unreadable', `a file that cannot be read (${code})`, 'Check that you may read it');
  }
  return logText(bytes, path);
}

/** The text of a log's bytes; `source` names it in a refusal. */
export function logText(bytes: Uint8Array, source: string): Outcome<string> {
  const refuse = (code: Problem['code'], came: string, remedy: string): Outcome<never> => ({
    ok: false,
    problem: { code, source, place: null, came, expected: 'a log as CSV', remedy },
  });
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse('log-invalid', 'bytes that are not UTF-8 text', 'Save the log as CSV in UTF-8');
  }
  if (text.trim() === '') return refuse('empty-file', 'an empty file', 'Give the log itself');
  return { ok: true, value: text };
}
