import { type Document, isNode, isScalar, LineCounter, parseDocument, visit } from 'yaml';
import { InputProblem, type Outcome, refused } from '../core/input/problem.ts';
import { scanJson } from './osm/json/scan-json.ts';

/** A rig or trip is a page of text; more than this is another file. Ours. */
export const MAX_YAML_BYTES = 512 * 1024;
/** YAML is read slowly, JSON not: what is longer is to be given as JSON. A rig that tells everything is some 8,000. Ours. */
const MAX_YAML_CHARACTERS = 64 * 1024;
/** A rig or trip nests 7 deep. Ours. */
const MAX_DEPTH = 30;
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
  if (text.trimStart().startsWith('{') && text.length > MAX_YAML_CHARACTERS)
    return parseLargeJson(text, source);
  const refusal = refusalByMeasure(text, source);
  if (refusal !== null) return refusal;
  const lines = new LineCounter();
  const document = parseDocument(text, {
    strict: true,
    // Looked at below: the library compares each key with each other one.
    uniqueKeys: false,
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
  const repeated = repeatedKeyAt(document);
  if (repeated !== null) {
    const { line, col } = lines.linePos(repeated);
    return brokenYaml(source, `line ${line}, column ${col}`, 'Map keys must be unique');
  }
  let value: unknown;
  try {
    value = document.toJS({ maxAliasCount: MAX_ALIASES });
  } catch (error) {
    return brokenYaml(source, null, wordsOfFault(error));
  }
  return { ok: true, value: { value, lineOf: (pointer) => lineOf(document, lines, pointer) } };
}

/** What the library says of a text; words of the engine, which ran out of room, are not for people. */
const wordsOfFault = (error: unknown): string => {
  if (error instanceof RangeError) return TOO_DEEP;
  return error instanceof Error ? error.message : 'text that does not resolve';
};

const TOO_DEEP = `lists and groups within each other over ${MAX_DEPTH} deep`;

/** Refuses what is larger or goes deeper than a rig or trip, before it is parsed. */
function refusalByMeasure(text: string, source: string): Outcome<never> | null {
  if (text.length > MAX_YAML_CHARACTERS)
    return refused({
      code: 'too-large',
      source,
      came: `${text.length} characters of YAML`,
      expected: `at most ${MAX_YAML_CHARACTERS} characters`,
      remedy: 'Give what is longer as JSON',
    });
  return depthOf(text) > MAX_DEPTH ? brokenYaml(source, null, TOO_DEEP) : null;
}

/** How deep a text may nest, at the most: by indents, by marks of lists and keys that open a line, by brackets. */
function depthOf(text: string): number {
  const indents: number[] = [];
  let [brackets, most] = [0, 0];
  for (const line of text.split('\n')) {
    const { column, marks } = openingOf(line);
    if (column < line.length) indent(indents, column);
    const { deepest, left } = bracketsOf(line, brackets);
    most = Math.max(most, deepest + indents.length + marks);
    brackets = left;
  }
  return most;
}

/** Notes the column at which a line begins: it ends all that begin there or farther in. */
function indent(indents: number[], column: number): void {
  while ((indents.at(-1) ?? -1) >= column) indents.pop();
  indents.push(column);
}

/** Of so many open brackets before a line, how many are open in it at the most, and behind it. */
function bracketsOf(line: string, before: number): { deepest: number; left: number } {
  let [deepest, left] = [before, before];
  for (const character of line) {
    if (character === '[' || character === '{') left += 1;
    else if (character === ']' || character === '}') left = Math.max(0, left - 1);
    deepest = Math.max(deepest, left);
  }
  return { deepest, left };
}

/** The first column of a line with text in it, and how many marks of lists and keys stand there one behind the other. */
function openingOf(line: string): { column: number; marks: number } {
  let column = 0;
  while (line[column] === ' ' || line[column] === '\t') column += 1;
  let marks = 0;
  let at = column;
  while ((line[at] === '-' || line[at] === '?') && line[at + 1] === ' ') {
    marks += 1;
    at += 2;
    while (line[at] === ' ') at += 1;
  }
  return { column, marks };
}

/** Where a key stands that its group has already; null where each is there once. */
function repeatedKeyAt(document: Document): number | null {
  let place: number | null = null;
  visit(document, {
    Map(_key, { items }) {
      const seen = new Set<unknown>();
      for (const { key } of items) {
        const name = isScalar(key) ? key.value : key;
        if (seen.has(name)) {
          place = isNode(key) ? (key.range?.[0] ?? 0) : 0;
          return visit.BREAK;
        }
        seen.add(name);
      }
    },
  });
  return place;
}

/** JSON of more than a page of YAML: the platform's own parser; no lines are known. */
function parseLargeJson(text: string, source: string): Outcome<ParsedText> {
  try {
    scanJson(text, source, 'Give the file of the rig or trip');
    return { ok: true, value: { value: JSON.parse(text), lineOf: () => null } };
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    return brokenYaml(source, null, 'JSON that cannot be read');
  }
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
