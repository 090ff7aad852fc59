import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemLine } from '../../server/core/input/problem.ts';
import { parseRig, readRigFile } from '../../server/io/rig-file.ts';
import { readTripFile } from '../../server/io/trip-file.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rig-file-'));
});
afterAll(() => rm(folder, { recursive: true }));

const RIG = `name: Wagon
fuel:
  kind: diesel
  litresPer100Km: 15
  tanks: [{ name: main, litres: 130 }]
water:
  litresPerDay: 14
  tanks:
    - name: under floor
      litres: 70
pace: { hoursPerDay: 7, kmPerHour: 45 }
`;

async function lineOfRig(text: string | Uint8Array): Promise<string> {
  const path = join(folder, 'rig.yaml');
  await writeFile(path, text);
  const outcome = await readRigFile(path);
  return outcome.ok ? 'ok' : problemLine(outcome.problem).replace(folder, '');
}

describe('a rig file', () => {
  it('is YAML or JSON alike', async () => {
    const path = join(folder, 'rig.yaml');
    await writeFile(path, RIG);
    const fromYaml = await readRigFile(path);
    expect(fromYaml.ok).toBe(true);
    if (!fromYaml.ok) return;
    expect(parseRig(JSON.stringify(fromYaml.value), 'rig')).toEqual(fromYaml);
    expect(fromYaml.value.water.tanks).toEqual([{ name: 'under floor', litres: 70 }]);
  });

  it.each([
    [
      'negative litres',
      RIG.replace('litres: 70', 'litres: -70'),
      '/rig.yaml, /water/tanks/0/litres (line 10): -70;',
    ],
    ['a misspelt key', RIG.replace('kmPerHour', 'kmPerHours'), 'Did you mean "kmPerHour"'],
    ['a key twice', `${RIG}name: Again\n`, '/rig.yaml, line 12, column 1: Map keys must be unique'],
    ['broken YAML', 'fuel: [1, 2', '/rig.yaml, line 1, column 12:'],
    ['a tag', 'name: !!js/function "x"', 'Unresolved tag'],
    ['two documents', `${RIG}---\n${RIG}`, 'expected YAML or JSON'],
    ['an empty file', ' \n', '/rig.yaml: an empty file;'],
    ['only a comment', '# rig\n', '/rig.yaml: nothing; expected a group of keys'],
    ['not UTF-8', new Uint8Array([0xff, 0xfe, 0x00]), 'bytes that are not UTF-8 text'],
    ['a web page', '<!doctype html><html><body>Not found</body></html>', '/rig.yaml:'],
    ['a huge file', 'a'.repeat(600 * 1024), '614400 bytes;'],
  ])('with %s is refused in one line', async (_name, text, part) => {
    const line = await lineOfRig(text);
    expect(line).toContain(part);
    expect(line).not.toMatch(/\n/);
  });

  it('that multiplies itself by aliases is refused', async () => {
    const bomb = ['a: &a [1,1,1,1,1,1,1,1,1]'];
    for (const [name, before] of ['ba', 'cb', 'dc', 'ed', 'fe', 'gf'].map((pair) => [...pair])) {
      bomb.push(`${name}: &${name} [${Array(9).fill(`*${before}`).join(',')}]`);
    }
    expect(await lineOfRig(bomb.join('\n'))).toContain('Excessive alias count');
  });

  it('that is not there, or is a folder, is refused by name', async () => {
    const gone = await readRigFile(join(folder, 'gone.yaml'));
    expect(gone.ok ? null : gone.problem.code).toBe('file-missing');
    const dir = await readTripFile(folder, null);
    expect(dir.ok ? null : dir.problem.code).toBe('file-unreadable');
  });

  it('keeps a prototype key an unknown key', () => {
    const outcome = parseRig('{"__proto__": {"fuel": 1}}', 'rig');
    expect(outcome.ok ? null : outcome.problem.came).toBe('an unknown key');
  });
});

describe('a trip file', () => {
  it('takes its dates as text', async () => {
    const path = join(folder, 'trip.yaml');
    await writeFile(path, 'departure: 2026-05-04\nonward: { km: 0 }\n');
    expect(await readTripFile(path, null)).toEqual({
      ok: true,
      value: { departure: '2026-05-04', onward: { km: 0 } },
    });
  });
});
