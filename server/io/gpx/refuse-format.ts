import { InputProblem } from '../../core/input/problem.ts';
import { behindProlog } from '../xml/prolog.ts';

const startsWith = (bytes: Uint8Array, magic: readonly number[]) =>
  magic.every((byte, i) => bytes[i] === byte);

const PACKED: readonly { name: string; magic: readonly number[] }[] = [
  { name: 'a gzip-compressed file', magic: [0x1f, 0x8b] },
  { name: 'a bzip2-compressed file', magic: [0x42, 0x5a, 0x68] },
  { name: 'a zip archive', magic: [0x50, 0x4b, 0x03, 0x04] },
];

const HTML = /^<(?:!doctype\s+html|html|head|body)\b/i;

/** Refuses compressed files by their first bytes. */
export function refusePacked(first: Uint8Array, source: string): void {
  const packed = PACKED.find(({ magic }) => startsWith(first, magic));
  if (packed === undefined) return;
  throw new InputProblem({
    code: 'unknown-format',
    source,
    place: null,
    came: packed.name,
    expected: 'a plain GPX file',
    remedy: 'Unpack it and give the .gpx file inside',
  });
}

/** Refuses, by the text it begins with, what is no XML at all and what is a web page. */
export function refuseForeignText(opening: string, source: string): void {
  if (HTML.test(behindProlog(opening) ?? '')) {
    throw new InputProblem({
      code: 'html-page',
      source,
      place: 'line 1',
      came: 'a web page',
      expected: 'a GPX file',
      remedy: 'The download gave an error or log-in page instead of the file: download it again',
    });
  }
  const start = opening.trimStart();
  if (start === '' || start.startsWith('<')) return;
  const came = start.includes('\0')
    ? 'binary data'
    : /^[{[]/.test(start)
      ? 'JSON text'
      : 'text that is not XML';
  throw new InputProblem({
    code: 'not-xml',
    source,
    place: 'line 1',
    came,
    expected: 'a GPX file, which begins with "<"',
    remedy: 'Export the route as GPX',
  });
}
