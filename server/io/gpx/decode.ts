import { TextDecoder } from 'node:util';
import { InputProblem } from '../../core/input/problem.ts';

const DECLARED = /^\s*<\?xml[^>]*?\sencoding\s*=\s*["']([A-Za-z0-9._-]+)["']/;

/** The encoding of an XML file by its first bytes: byte-order mark, bare UTF-16, declaration; UTF-8 otherwise. */
function encodingOf(first: Uint8Array): string {
  const [a, b] = first;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  if (a === 0x3c && b === 0x00) return 'utf-16le';
  if (a === 0x00 && b === 0x3c) return 'utf-16be';
  const declared = DECLARED.exec(Buffer.from(first.subarray(0, 256)).toString('latin1'))?.[1];
  // What could be read as ASCII so far is not UTF-16, whatever it declares.
  if (declared === undefined || /^utf-?16/i.test(declared)) return 'utf-8';
  return declared;
}

/** A decoder for the file that begins with these bytes; damaged characters come out as U+FFFD. */
export function decoderFor(first: Uint8Array, source: string): TextDecoder {
  const encoding = encodingOf(first);
  try {
    return new TextDecoder(encoding);
  } catch {
    throw new InputProblem({
      code: 'xml-broken',
      source,
      place: 'line 1',
      came: `the encoding "${encoding}"`,
      expected: 'UTF-8, UTF-16 or a usual single-byte encoding',
      remedy: 'Save the file as UTF-8',
    });
  }
}
