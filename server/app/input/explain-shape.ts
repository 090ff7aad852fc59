import type { TSchema } from 'typebox';
import type { FileKind } from '../../contract/file-kind.ts';
import { nearestWord } from './nearest-word.ts';
import type { Shape } from './shape.ts';
import { came, describe, kindOf, unitOf } from './shape-words.ts';

/** Keys and indices from the top of a value. */
type Keys = readonly (string | number)[];

/** What is wrong first, in words. `path` is a JSON pointer, empty for the whole. */
export interface ShapeFinding {
  path: string;
  came: string;
  expected: string;
  remedy: string;
  /** The file that it lies in, by the schema's mark `x-file`; `path` counts from that file's top then. */
  file: { kind: FileKind; at: Keys } | null;
}

/** First misfit of the value against the schema, unknown keys before missing ones; null when none is found. */
export function explainShape(schema: TSchema, value: unknown): ShapeFinding | null {
  return explain(schema as Shape, value, []);
}

function explain(shape: Shape, value: unknown, keys: Keys): ShapeFinding | null {
  const kind = shape['x-file'];
  if (kind === undefined) return explainValue(shape, value, keys);
  const finding = explainValue(shape, value, []);
  return finding === null ? null : { ...finding, file: { kind, at: keys } };
}

function explainValue(shape: Shape, value: unknown, keys: Keys): ShapeFinding | null {
  if (shape.anyOf !== undefined) return explainChoice(shape.anyOf, value, keys);
  if (shape.const !== undefined) return value === shape.const ? null : misfit(shape, value, keys);
  switch (shape.type) {
    case 'object':
      return explainObject(shape, value, keys);
    case 'array':
      return explainArray(shape, value, keys);
    case 'number':
    case 'integer':
      return numberFits(shape, value) ? null : misfit(shape, value, keys);
    case 'string':
      return stringFits(shape, value) ? null : misfit(shape, value, keys);
    case 'boolean':
      return typeof value === 'boolean' ? null : misfit(shape, value, keys);
    default:
      return null;
  }
}

function explainChoice(choices: Shape[], value: unknown, keys: Keys): ShapeFinding | null {
  const findings = choices.map((choice) => explain(choice, value, keys));
  if (findings.includes(null)) return null;
  const path = pointerOf(keys);
  const sameKind = choices.findIndex((choice) => choice.const === undefined && choice.type === kindOf(value));
  const finding = findings[sameKind];
  // Within the branch of the same kind the finding is about the misfit; across kinds, name all that would do.
  if (finding !== undefined && finding !== null && finding.path !== path) return finding;
  const expected = choices.map((choice) => describe(choice)).join(' or ');
  const words = choices.map((choice) => choice.const).filter((word) => typeof word === 'string');
  const near = typeof value === 'string' ? nearestWord(value, words) : null;
  const remedy = near === null ? correct(path) : `Did you mean "${near}"`;
  return { path, came: came(value), expected, remedy, file: null };
}

function explainObject(shape: Shape, value: unknown, keys: Keys): ShapeFinding | null {
  if (kindOf(value) !== 'object') return misfit(shape, value, keys);
  const group = value as Record<string, unknown>;
  const outer = explainKeys(shape, group, keys);
  if (outer !== null) return outer;
  for (const [key, member] of Object.entries(shape.properties ?? {})) {
    if (!Object.hasOwn(group, key)) continue;
    const finding = explain(member, group[key], [...keys, key]);
    if (finding !== null) return finding;
  }
  return null;
}

/** The first key that is not known, else the first that is not there. */
function explainKeys(shape: Shape, group: Record<string, unknown>, keys: Keys): ShapeFinding | null {
  const { properties = {}, required = [], 'x-words': words } = shape;
  const finding = (key: string, came: string, expected: string, remedy: string): ShapeFinding => ({
    path: pointerOf([...keys, key]),
    came,
    ...(words ?? { expected, remedy }),
    file: null,
  });
  if (shape.additionalProperties === false) {
    const unknown = Object.keys(group).find((key) => !Object.hasOwn(properties, key));
    if (unknown !== undefined) {
      const known = Object.keys(properties);
      const near = nearestWord(unknown, known);
      const remedy =
        near === null ? 'Take it out, or see the README for what each key means' : `Did you mean "${near}"`;
      return finding(unknown, 'an unknown key', `one of ${known.join(', ')}`, remedy);
    }
  }
  const missing = required.find((key) => !Object.hasOwn(group, key));
  if (missing === undefined) return null;
  const expected = describe(properties[missing] ?? {}, unitOf(missing));
  return finding(missing, words === undefined ? 'nothing' : `no ${missing}`, expected, `Add "${missing}"`);
}

function explainArray(shape: Shape, value: unknown, keys: Keys): ShapeFinding | null {
  if (!Array.isArray(value)) return misfit(shape, value, keys);
  const { least, most } = lengthsOf(shape);
  if (value.length < least || value.length > most) {
    const expected = least === most ? `${least} entries` : `${least} to ${most} entries`;
    return { ...misfit(shape, value, keys), expected: shape['x-words']?.expected ?? expected };
  }
  const { items } = shape;
  for (const [index, entry] of value.entries()) {
    const member = Array.isArray(items) ? items[index] : items;
    const finding = member === undefined ? null : explain(member, entry, [...keys, index]);
    if (finding !== null) return finding;
  }
  return null;
}

function lengthsOf({ items, minItems = 0, maxItems = Number.POSITIVE_INFINITY }: Shape) {
  return Array.isArray(items)
    ? { least: items.length, most: items.length }
    : { least: minItems, most: maxItems };
}

function numberFits({ type, minimum, exclusiveMinimum, maximum }: Shape, value: unknown): boolean {
  if (typeof value !== 'number' || !Number.isFinite(value)) return false;
  if (type === 'integer' && !Number.isInteger(value)) return false;
  if (minimum !== undefined && value < minimum) return false;
  if (exclusiveMinimum !== undefined && value <= exclusiveMinimum) return false;
  return maximum === undefined || value <= maximum;
}

function stringFits({ minLength, maxLength, pattern }: Shape, value: unknown): boolean {
  if (typeof value !== 'string') return false;
  if (minLength !== undefined && value.length < minLength) return false;
  if (maxLength !== undefined && value.length > maxLength) return false;
  return pattern === undefined || new RegExp(pattern).test(value);
}

function misfit(shape: Shape, value: unknown, keys: Keys): ShapeFinding {
  const path = pointerOf(keys);
  const unit = unitOf(String(keys.at(-1) ?? ''));
  const words = shape['x-words'] ?? { expected: describe(shape, unit), remedy: correct(path) };
  return { path, came: came(value), ...words, file: null };
}

const correct = (path: string) =>
  path === '' ? 'Compare it with the example in the README' : `Correct ${path}`;

/** JSON pointer (RFC 6901). */
const pointerOf = (keys: Keys) =>
  keys.map((key) => `/${String(key).replace(/~/g, '~0').replace(/\//g, '~1')}`).join('');
