import { behindProlog } from '../../xml/prolog.ts';

/** What a file's first bytes say that it is. The file's name is never asked. */
export type Content =
  | 'empty'
  | 'pbf'
  | 'gzip'
  | 'bzip2'
  | 'zip'
  | 'other-archive'
  | 'osm-xml'
  | 'osm-change'
  | 'gpx'
  | 'html'
  | 'json'
  | 'xml-doctype'
  | 'xml-other'
  | 'unknown';

const startsWith = (head: Buffer, bytes: readonly number[]): boolean =>
  bytes.every((byte, i) => head[i] === byte);

/** Archives that nothing here unpacks: zstd (RFC 8878), xz and 7z (their format notes), lz4 frame. */
const OTHER_ARCHIVES: readonly (readonly number[])[] = [
  [0x28, 0xb5, 0x2f, 0xfd],
  [0xfd, 0x37, 0x7a, 0x58, 0x5a, 0x00],
  [0x37, 0x7a, 0xbc, 0xaf],
  [0x04, 0x22, 0x4d, 0x18],
];

/** What follows "BZh" and the block size 1 to 9: a block (pi), or at once the end of an empty stream (its root). */
const BZIP2_BLOCK = [0x31, 0x41, 0x59, 0x26, 0x53, 0x59];
const BZIP2_END = [0x17, 0x72, 0x45, 0x38, 0x50, 0x90];

function isBzip2(head: Buffer): boolean {
  if (!/^BZh[1-9]/.test(head.subarray(0, 4).toString('latin1'))) return false;
  const rest = head.subarray(4);
  return rest.length < 6 || startsWith(rest, BZIP2_BLOCK) || startsWith(rest, BZIP2_END);
}

/** Protocol buffer field 1, length 9, then the block's type: how the first BlobHeader of a pbf file begins. */
const PBF_HEADER = Buffer.from('\x0a\x09OSMHeader', 'latin1');
/** The OSM pbf format allows a BlobHeader of at most 64 KiB; it stands behind a length of 4 bytes, big end first. */
const PBF_BLOB_HEADER_MAX_BYTES = 64 * 1024;

function isPbf(head: Buffer): boolean {
  if (head.length < 4) return false;
  const headerBytes = head.readUInt32BE(0);
  if (headerBytes === 0 || headerBytes > PBF_BLOB_HEADER_MAX_BYTES) return false;
  return head.subarray(4, 4 + Math.min(headerBytes, 256)).includes(PBF_HEADER);
}

/** The text of the first bytes: UTF-8, or UTF-16 where a byte order mark says so; the mark itself is left out. */
function textOf(head: Buffer): string {
  const encoding = utf16Of(head) ?? 'utf-8';
  return new TextDecoder(encoding).decode(head);
}

/** 'utf-16le' or 'utf-16be' where a byte order mark says so, else null. */
export function utf16Of(head: Buffer): 'utf-16le' | 'utf-16be' | null {
  if (startsWith(head, [0xff, 0xfe])) return 'utf-16le';
  if (startsWith(head, [0xfe, 0xff])) return 'utf-16be';
  return null;
}

/** What the root element's name says; a document type ends the search. */
function xmlContent(text: string): Content {
  const rest = behindProlog(text);
  if (rest === null) return 'xml-other';
  if (/^<!doctype\s+html/i.test(rest) || /^<html[\s>]/i.test(rest)) return 'html';
  if (/^<!doctype/i.test(rest)) return 'xml-doctype';
  const root = /^<(?:[\w.-]+:)?([\w.-]+)/.exec(rest)?.[1];
  if (root === 'osm') return 'osm-xml';
  if (root === 'osmChange') return 'osm-change';
  if (root === 'gpx') return 'gpx';
  return root === undefined ? 'unknown' : 'xml-other';
}

/** Tells what a file is by its first bytes (64 KiB are plenty). */
export function sniff(head: Buffer): Content {
  if (head.length === 0) return 'empty';
  if (startsWith(head, [0x1f, 0x8b])) return 'gzip';
  if (isBzip2(head)) return 'bzip2';
  if (startsWith(head, [0x50, 0x4b, 0x03, 0x04]) || startsWith(head, [0x50, 0x4b, 0x05, 0x06])) return 'zip';
  if (OTHER_ARCHIVES.some((magic) => startsWith(head, magic))) return 'other-archive';
  if (isPbf(head)) return 'pbf';
  const text = textOf(head).trimStart();
  if (text === '') return 'empty';
  if (text.startsWith('{') || text.startsWith('[')) return 'json';
  return text.startsWith('<') ? xmlContent(text) : 'unknown';
}
