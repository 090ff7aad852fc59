import { readFile, stat } from 'node:fs/promises';
import type { Outcome, Problem } from '../core/input/problem.ts';
import { MAX_YAML_BYTES, type ParsedText, parseYaml } from './yaml-text.ts';

/** Reads and parses a small YAML or JSON file; `what` says in a refusal what it should be ("a rig file"). */
export async function readYamlFile(path: string, what: string): Promise<Outcome<ParsedText>> {
  const refuse = (code: Problem['code'], came: string, remedy: string): Outcome<never> => ({
    ok: false,
    problem: { code, source: path, place: null, came, expected: what, remedy },
  });
  let bytes: Buffer;
  try {
    const found = await stat(path);
    if (found.isDirectory()) return refuse('file-unreadable', 'a folder', 'Give the path of the file in it');
    if (found.size > MAX_YAML_BYTES) {
      return refuse('too-large', `${found.size} bytes`, `Give a file under ${MAX_YAML_BYTES} bytes`);
    }
    bytes = await readFile(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'ENOENT' || code === 'ENOTDIR')
      return refuse('file-missing', 'no such file', 'Check the path');
    return refuse('file-unreadable', `a file that cannot be read (${code})`, 'Check that you may read it');
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse('yaml-broken', 'bytes that are not UTF-8 text', 'Save the file as UTF-8 text');
  }
  return parseYaml(text, path);
}

/** Adds the line to a refusal whose place is a key's path. */
export function withLine<T>(outcome: Outcome<T>, lineOf: ParsedText['lineOf']): Outcome<T> {
  if (outcome.ok || outcome.problem.place === null) return outcome;
  const line = lineOf(outcome.problem.place);
  if (line === null) return outcome;
  return { ok: false, problem: { ...outcome.problem, place: `${outcome.problem.place} (line ${line})` } };
}
