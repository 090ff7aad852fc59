import type { ReadOptions } from '../extract/raw-extract.ts';
import type { ByteSource } from '../source/byte-source.ts';
import { JSON_BYTES_MAX } from '../source/limits.ts';
import { refusal } from '../source/problems.ts';
import { utf16Of } from '../source/sniff.ts';

async function textOf(bytes: ByteSource, options: ReadOptions): Promise<string> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of bytes.open((read) => options.onProgress?.(read, bytes.fileBytes))) {
    length += piece.length;
    if (length > JSON_BYTES_MAX) {
      throw refusal(
        'too-large',
        options.source,
        null,
        `more than ${JSON_BYTES_MAX} bytes of JSON`,
        'a smaller file in this format',
        'Cut the area down, or give the extract as .osm.pbf, which is read at any size',
      );
    }
    pieces.push(piece);
  }
  const content = Buffer.concat(pieces);
  try {
    return new TextDecoder(utf16Of(content) ?? 'utf-8', { fatal: true }).decode(content);
  } catch {
    throw refusal(
      'json-broken',
      options.source,
      null,
      'bytes that are not UTF-8 text',
      'UTF-8',
      'Save it as UTF-8',
    );
  }
}

/** V8 names the position, or for short texts quotes ten characters on each side of it. */
function positionIn(message: string, text: string): number | null {
  const named = /position (\d+)/.exec(message)?.[1];
  if (named !== undefined) return Number(named);
  const quoted = /, (\.{3})?"(.*)"(?:\.{3})? is not valid JSON$/s.exec(message);
  const at = quoted?.[2] === undefined ? -1 : text.indexOf(quoted[2]);
  return at === -1 ? null : at + (quoted?.[1] === undefined ? 0 : 10);
}

function lineAndColumn(text: string, position: number): string {
  const before = text.slice(0, position);
  return `line ${before.split('\n').length}, column ${position - before.lastIndexOf('\n')}`;
}

function parse(text: string, source: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const saysCut = /end of JSON|Unterminated/i.test(message);
    const position = saysCut ? text.length : positionIn(message, text);
    const cut = position !== null && position >= text.trimEnd().length;
    throw refusal(
      'json-broken',
      source,
      position === null ? null : lineAndColumn(text, position),
      cut ? 'the JSON ends too early' : 'this is not JSON',
      'one whole JSON document',
      'Download or export it again',
    );
  }
}

/** The one JSON document that a file holds. Throws InputProblem: `too-large`, `json-broken` with line and column. */
export async function readJsonDocument(bytes: ByteSource, options: ReadOptions): Promise<unknown> {
  return parse(await textOf(bytes, options), options.source);
}
