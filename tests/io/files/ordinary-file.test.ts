import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { readExtract } from '../../../server/io/osm/read-extract.ts';
import { readSmallFile } from '../../../server/io/small-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'drystage-paths-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const pipe = join(folder, 'pipe.gpx');
execFileSync('mkfifo', [pipe]);
const circle = join(folder, 'circle.gpx');
symlinkSync(circle, circle);
const file = join(folder, 'file.gpx');
writeFileSync(file, '<gpx/>');

const READERS = {
  'an extract': async (path: string) => {
    const outcome = await readExtract(path, { source: 'x', ground: null });
    return outcome.ok ? 'read' : outcome.problem.code;
  },
  'a rig': async (path: string) => {
    const outcome = await readSmallFile(path, { what: 'a rig file', mostBytes: 1_000 });
    return outcome.ok ? 'read' : outcome.problem.code;
  },
  'a route': (path: string) =>
    readGpx(path, 'x').then(
      () => 'read',
      (error: unknown) => (error instanceof InputProblem ? error.problem.code : String(error)),
    ),
};

describe.each(Object.entries(READERS))('a path for %s', (_what, read) => {
  it.each([
    ['to a pipe that gives nothing', pipe, /^file-unreadable$/],
    ['to a device that gives without end', '/dev/zero', /^file-unreadable$/],
    ['that leads in a circle', circle, /^file-unreadable$/],
    ['through a file', join(file, 'x'), /^file-(missing|unreadable)$/],
    ['that is too long', join(folder, 'a'.repeat(300)), /^file-unreadable$/],
    ['to a folder', folder, /^file-unreadable$/],
  ])('%s is refused', async (_where, path, code) => {
    expect(await read(path)).toMatch(code);
  });
});
