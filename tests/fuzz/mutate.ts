import { encodeBlob } from '../../fixtures/pbf-writer.ts';
import { blobsOf } from '../fixtures-orrimar/pbf-blobs.ts';

/** Numbers from 0 to 1. */
export type Random = () => number;

const below = (random: Random, most: number): number => Math.floor(random() * most);
const pick = <T>(random: Random, list: readonly T[], otherwise: T): T =>
  list[below(random, list.length)] ?? otherwise;

/** What hides in bounds: lengths, counts, ids, co-ordinates. */
const NUMBERS = [
  '0',
  '-1',
  '1e999',
  '-0',
  '2147483648',
  '9007199254740993',
  '1e-320',
  '181',
  '-91',
  '0.1',
  'NaN',
  '00',
  '1e5',
];
const PIECES = [
  '<',
  '>',
  '&',
  '&#0;',
  '&#x10FFFF;',
  '&lol;',
  '<!--',
  '-->',
  '<![CDATA[',
  ']]>',
  '<?xml version="1.0"?>',
  '<!DOCTYPE a [<!ENTITY lol "x">]>',
  '"',
  "'",
  '\\',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  'null',
  'true',
  '\u0000',
  '\u202e',
  '\ufeff',
  '\ud800',
  '\n',
  '\t',
  '  ',
  '- ',
  '&a ',
  '*a',
  '__proto__',
  'constructor',
  'toString',
  '{"__proto__":1}',
  '[[[[[[[[',
  '2000-02-30',
  '9999999',
  '24:00-99:99',
  '2000000 ;Su ',
  '=1+1',
] as const;

/** Some bytes changed, doubled, taken out or moved. */
export function changeBytes(bytes: Uint8Array, random: Random): Uint8Array {
  const out = Uint8Array.from(bytes);
  const at = below(random, out.length);
  const length = 1 + below(random, Math.min(64, out.length));
  const way = below(random, 5);
  if (way === 0)
    for (let times = 1 + below(random, 8); times > 0; times -= 1)
      out[below(random, out.length)] = below(random, 256);
  else if (way === 1) out.fill(pick(random, [0, 255, 127, 128], 0), at, at + length);
  else if (way === 2) return Buffer.concat([out.subarray(0, at), out.subarray(at + length)]);
  else if (way === 3) return Buffer.concat([out.subarray(0, at + length), out.subarray(at)]);
  else out.copyWithin(at, below(random, out.length), below(random, out.length));
  return out;
}

/** The beginning of a file. */
export const cut = (bytes: Uint8Array, random: Random): Uint8Array =>
  bytes.subarray(0, below(random, bytes.length));

/** A figure, a word or a run of text put in place of another, or pieces of the format's own put in between. */
export function changeText(bytes: Uint8Array, random: Random): Uint8Array {
  const text = Buffer.from(bytes).toString('utf8');
  const way = below(random, 5);
  const at = below(random, text.length);
  if (way === 0)
    return Buffer.from(replaceNear(text, at, /-?\d+(\.\d+)?/g, () => pick(random, NUMBERS, '0')));
  if (way === 1) return Buffer.from(replaceNear(text, at, /[\p{L}_:]+/gu, () => wordOf(text, random)));
  const piece = pick(random, PIECES, '').repeat(random() < 0.05 ? 5000 : 1);
  if (way === 2) return Buffer.from(text.slice(0, at) + piece + text.slice(at));
  if (way === 3) return Buffer.from(text.slice(0, at) + piece + text.slice(at + below(random, 40)));
  const end = at + below(random, 400);
  return Buffer.from(
    text.slice(0, end) + text.slice(at, end).repeat(1 + below(random, 50)) + text.slice(end),
  );
}

function replaceNear(text: string, from: number, what: RegExp, by: () => string): string {
  what.lastIndex = from;
  const found = what.exec(text);
  return found === null
    ? text
    : text.slice(0, found.index) + by() + text.slice(found.index + found[0].length);
}

function wordOf(text: string, random: Random): string {
  const from = below(random, text.length);
  return /[\p{L}_:]+/u.exec(text.slice(from, from + 200))?.[0] ?? 'x';
}

/** A member of some group or list exchanged for another of the document, taken out, or for a value of another kind. */
export function changeJson(bytes: Uint8Array, random: Random): Uint8Array {
  let value: unknown;
  try {
    value = JSON.parse(Buffer.from(bytes).toString('utf8'));
  } catch {
    return changeText(bytes, random);
  }
  const places: { of: Record<string, unknown>; key: string }[] = [];
  const walk = (one: unknown): void => {
    if (typeof one !== 'object' || one === null || places.length > 20_000) return;
    for (const [key, member] of Object.entries(one)) {
      places.push({ of: one as Record<string, unknown>, key });
      walk(member);
    }
  };
  walk(value);
  const spare: readonly unknown[] = [
    null,
    true,
    -1,
    1e300,
    '',
    'x',
    [],
    {},
    [[[]]],
    { toString: 1 },
    { length: 1e9 },
    'NaN',
    '2000000 ;Su ',
  ];
  for (let times = 1 + below(random, 3); times > 0 && places.length > 0; times -= 1) {
    const place = places[below(random, places.length)];
    const other = places[below(random, places.length)];
    if (place === undefined || other === undefined) break;
    const way = below(random, 3);
    if (way === 0) delete place.of[place.key];
    else if (way === 1) place.of[place.key] = pick(random, spare, null);
    else if (!contains(other.of[other.key], place.of)) place.of[place.key] = other.of[other.key];
  }
  return Buffer.from(JSON.stringify(value));
}

const contains = (value: unknown, part: unknown): boolean =>
  value === part ||
  (typeof value === 'object' &&
    value !== null &&
    Object.values(value).some((member) => contains(member, part)));

/** The inside of a blob changed and packed again, so that the change reaches what lies under the compression. */
export function changePbf(bytes: Uint8Array, random: Random): Uint8Array {
  let blobs: { type: string; content: Uint8Array }[];
  try {
    blobs = blobsOf(bytes);
  } catch {
    return changeBytes(bytes, random);
  }
  const way = below(random, 6);
  if (way === 0) blobs.splice(below(random, blobs.length), 1);
  else if (way === 1)
    blobs.splice(below(random, blobs.length + 1), 0, ...blobs.slice(below(random, blobs.length)).slice(0, 1));
  else {
    const blob = blobs[below(random, blobs.length)];
    if (blob !== undefined && blob.content.length > 0)
      blob.content = way === 2 ? changeBytes(blob.content, random) : changeMessage(blob.content, random, 0);
  }
  return Buffer.concat(blobs.map(({ type, content }) => encodeBlob(type, content, { level: 1 })));
}

interface Field {
  number: number;
  wire: number;
  value: number[] | Uint8Array;
}

/** One field of a message changed, or of one inside it; lengths around it fit again. */
function changeMessage(bytes: Uint8Array, random: Random, depth: number): Uint8Array {
  const fields = fieldsOf(bytes);
  const at = below(random, fields?.length ?? 0);
  const field = fields?.[at];
  if (fields === null || field === undefined)
    return bytes.length === 0 ? Buffer.from([0]) : changePacked(bytes, random);
  const way = below(random, 8);
  if (way === 0) fields.splice(at, 1);
  else if (way === 1) fields.splice(at, 0, ...Array.from({ length: 1 + below(random, 300) }, () => field));
  else if (way === 2) field.number = 1 + below(random, 40);
  else if (field.wire === 2 && field.value instanceof Uint8Array)
    field.value =
      depth < 5 && random() < 0.85
        ? changeMessage(field.value, random, depth + 1)
        : changePacked(field.value, random);
  else
    field.value = varintOf(
      pick(random, [0, 1, 127, 2 ** 31, 2 ** 32, 2 ** 53, 2 ** 60, below(random, 1e6)], 0),
    );
  return Buffer.concat(fields.map((one) => encode(one)));
}

/** A list of varints with some of them huge, or cut in the middle of one. */
function changePacked(bytes: Uint8Array, random: Random): Uint8Array {
  const at = below(random, bytes.length + 1);
  const big = varintOf(pick(random, [0, 1, 2 ** 31, 2 ** 53, 2 ** 62, below(random, 1e5)], 0));
  const insert = random() < 0.1 ? Array.from({ length: 1000 }, () => big).flat() : big;
  const skip = below(random, 3);
  return random() < 0.1
    ? bytes.subarray(0, at)
    : Buffer.concat([bytes.subarray(0, at), Uint8Array.from(insert), bytes.subarray(at + skip)]);
}

function varintOf(value: number): number[] {
  const out: number[] = [];
  let rest = value;
  for (; rest > 127; rest = Math.floor(rest / 128)) out.push((rest % 128) + 128);
  return [...out, rest];
}

function encode({ number, wire, value }: Field): Uint8Array {
  const key = varintOf(number * 8 + wire);
  const length = wire === 2 ? varintOf(value.length) : [];
  return Buffer.concat([Uint8Array.from([...key, ...length]), Uint8Array.from(value)]);
}

/** The fields of a message; null where it is none. */
function fieldsOf(bytes: Uint8Array): Field[] | null {
  const fields: Field[] = [];
  let at = 0;
  const varint = (): number => {
    let value = 0;
    for (let scale = 1; at < bytes.length; scale *= 128) {
      const byte = bytes[at++] ?? 0;
      value += (byte & 127) * scale;
      if (byte < 128) return value;
    }
    return Number.NaN;
  };
  while (at < bytes.length) {
    const key = varint();
    const wire = key % 8;
    const number = Math.floor(key / 8);
    if (!(number > 0) || (wire !== 0 && wire !== 2)) return null;
    const value = varint();
    if (wire === 0) fields.push({ number, wire, value: varintOf(value) });
    else if (at + value <= bytes.length) {
      fields.push({ number, wire, value: bytes.subarray(at, at + value) });
      at += value;
    } else return null;
    if (Number.isNaN(value)) return null;
  }
  return fields;
}
