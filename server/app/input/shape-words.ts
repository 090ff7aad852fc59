import { IsoDate } from '../../contract/common.ts';
import type { Shape } from './shape.ts';

/** The kind of a JSON value. */
export function kindOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

/** The value as a person would recognise it, short. */
export function came(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'a group of keys';
  if (typeof value !== 'string') return String(value);
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…"` : text;
}

/** What a value of that shape is, with its unit where its key says one. */
export function describe(shape: Shape, unit: string | null = null): string {
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

function rangeWords({ minimum, exclusiveMinimum, maximum }: Shape): string {
  const words: string[] = [];
  if (minimum !== undefined) words.push(`at least ${minimum}`);
  if (exclusiveMinimum !== undefined) words.push(`above ${exclusiveMinimum}`);
  if (maximum !== undefined) words.push(`at most ${maximum}`);
  return words.length === 0 ? '' : ` ${words.join(' and ')}`;
}

const DATE_PATTERN = (IsoDate as Shape).pattern;

function stringWords({ pattern, maxLength }: Shape): string {
  if (pattern === DATE_PATTERN) return 'a date such as 2026-05-04';
  if (maxLength !== undefined) return `text of at most ${maxLength} characters`;
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
export const unitOf = (key: string): string | null =>
  UNITS.find(([pattern]) => pattern.test(key))?.[1] ?? null;
