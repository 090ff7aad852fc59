import { InputProblem } from '../../../core/input/problem.ts';
import type { ReadOptions } from '../extract/raw-extract.ts';
import type { ByteSource } from '../source/byte-source.ts';
import { JSON_BYTES_MAX } from '../source/limits.ts';
import { utf16Of } from '../source/sniff.ts';
import { scanJson } from './scan-json.ts';

async function textOf(bytes: ByteSource, options: ReadOptions): Promise<string> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of bytes.open((read) => options.onProgress?.(read, bytes.fileBytes))) {
    length += piece.length;
    if (length > JSON_BYTES_MAX) {
      throw new InputProblem({
        code: 'too-large',
        source: options.source,
        came: `more than ${JSON_BYTES_MAX} bytes of JSON`,
        expected: 'a smaller file in this format',
        remedy: 'Cut the area down, or give the extract as .osm.pbf, which is read at any size',
      });
    }
    pieces.push(piece);
  }
  const content = Buffer.concat(pieces);
  try {
    return new TextDecoder(utf16Of(content) ?? 'utf-8', { fatal: true }).decode(content);
  } catch {
    throw new InputProblem({
      code: 'json-broken',
      source: options.source,
      came: 'bytes that are not UTF-8 text',
      expected: 'UTF-8',
      remedy: 'Save it as UTF-8',
    });
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
    throw new InputProblem({
      code: 'json-broken',
      source,
      place: position === null ? null : lineAndColumn(text, position),
      came: cut ? 'the JSON ends too early' : 'this is not JSON',
      expected: 'one whole JSON document',
      remedy: 'Download or export it again',
    });
  }
}

/** The one JSON document that a file holds. Throws InputProblem: `too-large`, `json-broken` with line and column. */
export async function readJsonDocument(bytes: ByteSource, options: ReadOptions): Promise<unknown> {
  const text = await textOf(bytes, options);
  scanJson(text, options.source);
  return parse(text, options.source);
}
