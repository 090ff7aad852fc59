import type { TSchema } from 'typebox';
import { IsoDate } from '../contract/common.ts';
import { nearestWord } from './nearest-word.ts';

/** The part of JSON Schema that the contract is written in. */
interface Shape {
  type?: string;
  const?: unknown;
  anyOf?: Shape[];
  properties?: Record<string, Shape>;
  required?: string[];
  additionalProperties?: boolean | Shape;
  items?: Shape | Shape[];
  minItems?: number;
  maxItems?: number;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
}

/** What is wrong first, in words. `path` is a JSON pointer, empty for the whole. */
export interface ShapeFinding {
  path: string;
  came: string;
  expected: string;
  remedy: string;
}

/** First misfit of the value against the schema, unknown keys before missing ones; null when none is found. */
export function explainShape(schema: TSchema, value: unknown): ShapeFinding | null {
  return explain(schema as Shape, value, '');
}

function explain(shape: Shape, value: unknown, path: string): ShapeFinding | null {
  if (shape.anyOf !== undefined) return explainChoice(shape.anyOf, value, path);
  if (shape.const !== undefined) return value === shape.const ? null : misfit(shape, value, path);
  switch (shape.type) {
    case 'object':
      return explainObject(shape, value, path);
    case 'array':
      return explainArray(shape, value, path);
    case 'number':
    case 'integer':
      return numberFits(shape, value) ? null : misfit(shape, value, path);
    case 'string':
      return stringFits(shape, value) ? null : misfit(shape, value, path);
    case 'boolean':
      return typeof value === 'boolean' ? null : misfit(shape, value, path);
    default:
      return null;
  }
}

function explainChoice(choices: Shape[], value: unknown, path: string): ShapeFinding | null {
  const findings = choices.map((choice) => explain(choice, value, path));
  if (findings.includes(null)) return null;
  const sameKind = choices.findIndex((choice) => choice.const === undefined && choice.type === kindOf(value));
  const finding = findings[sameKind];
  // Within the branch of the same kind the finding is about the misfit; across kinds, name all that would do.
  if (finding !== undefined && finding !== null && finding.path !== path) return finding;
  const expected = choices.map((choice) => describe(choice)).join(' or ');
  const words = choices.map((choice) => choice.const).filter((word) => typeof word === 'string');
  const near = typeof value === 'string' ? nearestWord(value, words) : null;
  const remedy = near === null ? correct(path) : `Did you mean "${near}"`;
  return { path, came: came(value), expected, remedy };
}

function explainObject(shape: Shape, value: unknown, path: string): ShapeFinding | null {
  const properties = shape.properties ?? {};
  const known = Object.keys(properties);
  if (kindOf(value) !== 'object') return misfit(shape, value, path);
  const given = value as Record<string, unknown>;
  if (shape.additionalProperties === false) {
    for (const key of Object.keys(given)) {
      if (Object.hasOwn(properties, key)) continue;
      const near = nearestWord(key, known);
      const remedy =
        near === null ? 'Take it out, or see the README for what each key means' : `Did you mean "${near}"`;
      return {
        path: join(path, key),
        came: 'an unknown key',
        expected: `one of ${known.join(', ')}`,
        remedy,
      };
    }
  }
  for (const key of shape.required ?? []) {
    if (Object.hasOwn(given, key)) continue;
    const expected = describe(properties[key] ?? {}, unitOf(key));
    return { path: join(path, key), came: 'nothing', expected, remedy: `Add "${key}"` };
  }
  for (const [key, member] of Object.entries(properties)) {
    if (!Object.hasOwn(given, key)) continue;
    const finding = explain(member, given[key], join(path, key));
    if (finding !== null) return finding;
  }
  return null;
}

function explainArray(shape: Shape, value: unknown, path: string): ShapeFinding | null {
  if (!Array.isArray(value)) return misfit(shape, value, path);
  const tuple = Array.isArray(shape.items) ? shape.items : null;
  const least = tuple?.length ?? shape.minItems ?? 0;
  const most = tuple?.length ?? shape.maxItems ?? Number.POSITIVE_INFINITY;
  if (value.length < least || value.length > most) {
    const expected = least === most ? `${least} entries` : `${least} to ${most} entries`;
    return { path, came: `a list of ${value.length}`, expected, remedy: correct(path) };
  }
  for (const [index, entry] of value.entries()) {
    const member = tuple === null ? (shape.items as Shape | undefined) : tuple[index];
    const finding = member === undefined ? null : explain(member, entry, join(path, String(index)));
    if (finding !== null) return finding;
  }
  return null;
}

function numberFits(shape: Shape, value: unknown): boolean {
  if (typeof value !== 'number' || !Number.isFinite(value)) return false;
  if (shape.type === 'integer' && !Number.isInteger(value)) return false;
  if (shape.minimum !== undefined && value < shape.minimum) return false;
  if (shape.exclusiveMinimum !== undefined && value <= shape.exclusiveMinimum) return false;
  return shape.maximum === undefined || value <= shape.maximum;
}

function stringFits(shape: Shape, value: unknown): boolean {
  if (typeof value !== 'string') return false;
  if (shape.minLength !== undefined && value.length < shape.minLength) return false;
  if (shape.maxLength !== undefined && value.length > shape.maxLength) return false;
  return shape.pattern === undefined || new RegExp(shape.pattern).test(value);
}

function misfit(shape: Shape, value: unknown, path: string): ShapeFinding {
  const key = path.slice(path.lastIndexOf('/') + 1);
  return { path, came: came(value), expected: describe(shape, unitOf(key)), remedy: correct(path) };
}

const correct = (path: string) =>
  path === '' ? 'Compare it with the example in the README' : `Correct ${path}`;

/** JSON pointer (RFC 6901). */
const join = (path: string, key: string) => `${path}/${key.replace(/~/g, '~0').replace(/\//g, '~1')}`;

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

/** The value as a person would recognise it, short. */
export function came(value: unknown): string {
  switch (kindOf(value)) {
    case 'null':
    case 'undefined':
      return 'nothing';
    case 'object':
      return 'a group of keys';
    case 'array':
      return `a list of ${(value as unknown[]).length}`;
    case 'string': {
      const text = JSON.stringify(value);
      return text.length > 60 ? `${text.slice(0, 57)}…"` : text;
    }
    default:
      return String(value);
  }
}

function describe(shape: Shape, unit: string | null = null): string {
  if (shape.anyOf !== undefined) return shape.anyOf.map((choice) => describe(choice, unit)).join(' or ');
  if (shape.const !== undefined) return JSON.stringify(shape.const);
  switch (shape.type) {
    case 'object':
      return `a group of keys (${Object.keys(shape.properties ?? {}).join(', ')})`;
    case 'array':
      return 'a list';
    case 'number':
    case 'integer':
      return `a ${shape.type === 'integer' ? 'whole ' : ''}number${rangeWords(shape)}${unit === null ? '' : `, in ${unit}`}`;
    case 'string':
      return stringWords(shape);
    case 'boolean':
      return 'true or false';
    default:
      return 'a value';
  }
}

function rangeWords(shape: Shape): string {
  const words: string[] = [];
  if (shape.minimum !== undefined) words.push(`at least ${shape.minimum}`);
  if (shape.exclusiveMinimum !== undefined) words.push(`above ${shape.exclusiveMinimum}`);
  if (shape.maximum !== undefined) words.push(`at most ${shape.maximum}`);
  return words.length === 0 ? '' : ` ${words.join(' and ')}`;
}

const DATE_PATTERN = (IsoDate as Shape).pattern;

function stringWords(shape: Shape): string {
  if (shape.pattern === DATE_PATTERN) return 'a date such as 2026-05-04';
  if (shape.maxLength !== undefined) return `text of at most ${shape.maxLength} characters`;
  return 'text';
}

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/litresPer100Km$/, 'litres per 100 km'],
  [/litresPerDay$/i, 'litres a day'],
  [/^(drinking|cooking|washingUp|washing|shower)$/, 'litres a day'],
  [/litres$/i, 'litres'],
  [/kmPerHour$|^slow$|^fast$/, 'km/h'],
  [/km$|KmSinceFill$/i, 'km'],
  [/days$|DaysSinceFill$/i, 'days'],
  [/^hours|Hours/, 'hours'],
  [/percent$/i, 'percent'],
];

/** The unit that a key's name says, null when it says none. */
const unitOf = (key: string) => UNITS.find(([pattern]) => pattern.test(key))?.[1] ?? null;
