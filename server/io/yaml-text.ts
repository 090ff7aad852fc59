import { isNode, LineCounter, parseDocument } from 'yaml';
import { type Outcome, refused } from '../core/input/problem.ts';

/** A rig or trip is a page of text; more than this is another file. Ours. */
export const MAX_YAML_BYTES = 512 * 1024;
/** Repeats of one anchor allowed, against a file that multiplies itself. Ours. */
const MAX_ALIASES = 20;

/** A parsed YAML or JSON text and where its keys stand. */
export interface ParsedText {
  value: unknown;
  /** Line (from 1) of the value at a JSON pointer, or of the nearest group around it. */
  lineOf: (pointer: string) => number | null;
}

/** Parses YAML 1.2 (JSON is part of it): unique keys, no tags, no merge keys. `source` names the file in a refusal. */
export function parseYaml(text: string, source: string): Outcome<ParsedText> {
  if (text.trim() === '') {
    return refused({
      code: 'empty-file',
      source,
      came: 'an empty file',
      expected: 'YAML or JSON with keys and values',
      remedy: 'Give the file that holds them',
    });
  }
  const lines = new LineCounter();
  const document = parseDocument(text, {
    strict: true,
    uniqueKeys: true,
    stringKeys: true,
    prettyErrors: false,
    resolveKnownTags: false,
    merge: false,
    lineCounter: lines,
  });
  const fault = document.errors[0] ?? document.warnings[0];
  if (fault !== undefined) {
    const { line, col } = lines.linePos(fault.pos[0]);
    return brokenYaml(source, `line ${line}, column ${col}`, fault.message);
  }
  let value: unknown;
  try {
    value = document.toJS({ maxAliasCount: MAX_ALIASES });
  } catch (error) {
    return brokenYaml(source, null, error instanceof Error ? error.message : 'text that does not resolve');
  }
  return { ok: true, value: { value, lineOf: (pointer) => lineOf(document, lines, pointer) } };
}

function lineOf(
  document: ReturnType<typeof parseDocument>,
  lines: LineCounter,
  pointer: string,
): number | null {
  const steps = pointer
    .split('/')
    .slice(1)
    .map((step) => step.replace(/~1/g, '/').replace(/~0/g, '~'));
  for (let depth = steps.length; depth >= 0; depth -= 1) {
    const path = steps.slice(0, depth).map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    const node = depth === 0 ? document.contents : document.getIn(path, true);
    if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
  }
  return null;
}

const brokenYaml = (source: string, place: string | null, message: string): Outcome<never> =>
  refused({
    code: 'yaml-broken',
    source,
    place,
    came: (message.split('\n', 1)[0] ?? '').replace(/[.;:]+$/, ''),
    expected: 'YAML or JSON',
    remedy: 'Correct the text there: keys and values as "key: value", each key once, indented by spaces',
  });
