import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import type { Multipart } from '@fastify/multipart';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { UploadParts } from '../../../server/http/request/upload-parts.ts';
import { DEFAULT_LIMITS } from '../../../server/http/service/limits.ts';
import { MAX_YAML_BYTES } from '../../../server/io/yaml-text.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drystage-upload-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const filePart = (fieldname: string, text: string): Multipart =>
  ({
    type: 'file',
    fieldname,
    filename: `${fieldname}.file`,
    file: Readable.from([Buffer.from(text)]),
  }) as unknown as Multipart;
const textPart = (fieldname: string, value: string): Multipart =>
  ({ type: 'field', fieldname, value }) as unknown as Multipart;

const partsWith = (extracts = 2) => new UploadParts(folder, { ...DEFAULT_LIMITS, extracts });

describe('the parts of an upload', () => {
  it('are kept as they came: files on disk, rig and trip as text, be they sent as text or as files', async () => {
    const parts = partsWith();
    await parts.take(filePart('route', '<gpx/>'));
    await parts.take(filePart('extract', 'first'));
    await parts.take(filePart('extract', 'second'));
    await parts.take(filePart('rig', 'name: Gefährt'));
    await parts.take(textPart('trip', 'onward: {}'));
    const { route, extracts, rig, trip } = parts.whole();
    expect(readFileSync(route.path, 'utf8')).toBe('<gpx/>');
    expect(extracts.map(({ path }) => readFileSync(path, 'utf8'))).toEqual(['first', 'second']);
    expect({ rig, trip }).toEqual({ rig: 'name: Gefährt', trip: 'onward: {}' });
  });

  it('are refused where one extract more comes than may', async () => {
    const parts = partsWith(1);
    await parts.take(filePart('extract', 'first'));
    await expect(parts.take(filePart('extract', 'second'))).rejects.toMatchObject({
      problem: { code: 'request-invalid', came: 'more than 1 extracts' },
    });
  });

  it('are refused where a second route, rig or trip comes, by its name', async () => {
    for (const [name, part] of [
      ['route', filePart],
      ['rig', textPart],
      ['trip', textPart],
    ] as const) {
      const parts = partsWith();
      await parts.take(part(name, 'first'));
      await expect(parts.take(part(name, 'second'))).rejects.toMatchObject({
        problem: {
          code: 'request-invalid',
          place: name,
          came: `a second ${name}`,
          expected: 'one',
          remedy: `Send one ${name}`,
        },
      });
    }
  });

  it('are refused where a rig as a file is over the limit, and not below it', async () => {
    await partsWith().take(filePart('rig', 'a'.repeat(MAX_YAML_BYTES)));
    await expect(partsWith().take(filePart('rig', 'a'.repeat(MAX_YAML_BYTES + 1)))).rejects.toMatchObject({
      problem: { code: 'too-large' },
    });
  });
});
