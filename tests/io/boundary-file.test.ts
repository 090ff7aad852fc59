import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withBoundaries } from '../../server/io/boundary-file.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boundary-'));
  await mkdir(join(folder, 'outlines'));
});
afterAll(() => rm(folder, { recursive: true }));

/** What comes of a trip that names a boundary by this file. */
async function outcomeOf(file: string) {
  const boundaries = [{ commodity: 'fuel' as const, file }];
  return withBoundaries({ extracts: [{ file: 'land.osm', boundaries }] }, join(folder, 'trip.yaml'));
}

async function problemOf(file: string) {
  const outcome = await outcomeOf(file);
  return outcome.ok ? null : outcome.problem;
}

describe('a boundary named by a file', () => {
  it('is read from the folder of the trip file', async () => {
    const ring = [
      [10, 50],
      [11, 50],
      [11, 51],
    ];
    await writeFile(join(folder, 'land.json'), JSON.stringify({ type: 'Polygon', coordinates: [ring] }));
    const outcome = await outcomeOf('land.json');
    expect(outcome.ok && outcome.value.extracts?.[0]?.boundaries?.[0]?.rings).toEqual([ring]);
  });

  it('is refused by what is wrong with it: not there, a folder, nested without end', async () => {
    expect(await problemOf('gone.poly')).toMatchObject({
      code: 'file-missing',
      remedy: 'Check the path; it is taken from the folder of the trip file',
    });
    expect(await problemOf('outlines')).toMatchObject({ code: 'file-unreadable', came: 'a folder' });
    await writeFile(join(folder, 'deep.json'), `{"a":${'['.repeat(200)}`);
    expect(await problemOf('deep.json')).toMatchObject({
      code: 'too-large',
      remedy: 'Give the outline alone',
    });
  });
});
