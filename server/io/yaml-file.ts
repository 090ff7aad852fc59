import { type Outcome, refused } from '../core/input/problem.ts';
import { readSmallFile, utf8Text } from './small-file.ts';
import { MAX_YAML_BYTES, type ParsedText, parseYaml } from './yaml-text.ts';

/** Reads and parses a small YAML or JSON file; `what` says in a refusal what it should be ("a rig file"). */
export async function readYamlFile(path: string, what: string): Promise<Outcome<ParsedText>> {
  const bytes = await readSmallFile(path, { what, mostBytes: MAX_YAML_BYTES });
  if (!bytes.ok) return bytes;
  const text = utf8Text(bytes.value);
  if (text !== null) return parseYaml(text, path);
  return refused({
    code: 'yaml-broken',
    source: path,
    came: 'bytes that are not UTF-8 text',
    expected: what,
    remedy: 'Save the file as UTF-8 text',
  });
}

/** Adds the line to a refusal whose place is a key's path. */
export function withLine<T>(outcome: Outcome<T>, lineOf: ParsedText['lineOf']): Outcome<T> {
  if (outcome.ok || outcome.problem.place === null) return outcome;
  const line = lineOf(outcome.problem.place);
  if (line === null) return outcome;
  return { ok: false, problem: { ...outcome.problem, place: `${outcome.problem.place} (line ${line})` } };
}
