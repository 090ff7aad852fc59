import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { Analysis } from '../../server/contract/analysis.ts';
import { Comparison, MAX_COMPARED } from '../../server/contract/answers/compare.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { demoPath } from '../http/form.ts';
import { runCli } from './run-cli.ts';

const ROUTE = demoPath('route.gpx');
const RIG = demoPath('rig-simple.yaml');
const LAND = ['--supply', demoPath('orrimar.osm.pbf'), '--trip', demoPath('trip-simple.yaml')];

let folder = '';
let ahead = '';
let behind = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'compare-'));
  const demo = parse(await readFile(RIG, 'utf8')) as RigFile;
  const middle = { behindFrontAxleM: 1.4, heightM: 0.6 };
  const { cans: _cans, ...fuel } = demo.fuel;
  // The demo's wagon with its weights, and one more fuel tank: large ahead of the rear axle, or small at the very back.
  const withTank = (name: string, litres: number, behindFrontAxleM: number): RigFile => ({
    ...demo,
    name,
    fuel: {
      ...fuel,
      tanks: [
        { name: 'main', litres: 130, unusableLitres: 3, position: middle },
        { name: 'second', litres, position: { behindFrontAxleM, heightM: 0.6 } },
      ],
    },
    water: {
      litresPerDay: demo.water.litresPerDay!,
      tanks: [{ name: 'under floor', litres: 70, position: middle }],
    },
    vehicle: {
      kerbKg: 2600,
      includes: { fuelPercent: 0, driverKg: 75 },
      axleKg: { front: 1250, rear: 1350 },
      wheelbaseM: 2.85,
      trackM: 1.6,
      cgHeightM: 0.75,
      permitted: { totalKg: 3500, rearKg: 1500 },
    },
  });
  ahead = join(folder, 'ahead.yaml');
  behind = join(folder, 'behind.yaml');
  await writeFile(ahead, stringify(withTank('95 l ahead of the axle', 95, 2.6)));
  await writeFile(behind, stringify(withTank('40 l at the back', 40, 3.7)));
});
afterAll(() => rm(folder, { recursive: true }));

/** The most on the rear axle without the second tank. */
async function withoutTank(): Promise<number> {
  const rig = parse(await readFile(ahead, 'utf8')) as RigFile;
  const path = join(folder, 'none.yaml');
  await writeFile(path, stringify({ ...rig, fuel: { ...rig.fuel, tanks: rig.fuel.tanks.slice(0, 1) } }));
  return (await json('--rig', path)).rigs[0]!.mass!.rear!.kg;
}

const compare = (...args: string[]) => runCli('compare', ROUTE, ...LAND, ...args);
const json = async (...args: string[]) => JSON.parse((await compare(...args, '--json')).out) as Comparison;

describe('drystage compare', () => {
  it('prints a column for each rig, with its figures', { tags: 'slow' }, async () => {
    const { status, out, err } = await compare('--rig', RIG, '--rig', ahead);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const comparison = await json('--rig', RIG, '--rig', ahead);
    const cells = (what: string) => {
      const line = out.split('\n').find((one) => one.startsWith(what));
      return line?.slice(what.length).trim().split(/ {2,}/).slice(-2);
    };
    const [plain, tank] = comparison.rigs;
    expect(cells('fuel: margin')).toEqual([plain, tank].map((rig) => rig?.fuel.worst.marginL.toFixed(1)));
    expect(cells('water: margin')).toEqual([plain, tank].map((rig) => rig?.water.worst.marginL.toFixed(1)));
    expect(cells('mass, most')).toEqual(['not told', tank?.mass?.totalKg.value.toFixed(1)]);
    expect(cells('stability, least')).toEqual(['not told', tank?.mass?.stabilityFactor?.value.toFixed(2)]);
    expect(out).toContain('Cautions for every rig');
    expect(out).toMatch(/^- km [\d.]+ to [\d.]+: No extract shows fuel here/m);
  });

  it('gives the contract as --json, each rig as gaps has it alone', { tags: 'slow' }, async () => {
    const comparison = await json('--rig', RIG, '--rig', ahead, '--rig', behind);
    expect(Compile(Comparison).Errors(comparison)).toEqual([]);
    for (const [index, path] of [RIG, ahead, behind].entries()) {
      const alone = JSON.parse(
        (await runCli('gaps', ROUTE, ...LAND, '--rig', path, '--json')).out,
      ) as Analysis;
      const row = comparison.rigs[index]!;
      for (const commodity of ['fuel', 'water'] as const) {
        const { gaps } = alone[commodity];
        const { worst, extraCans, capacityL } = row[commodity];
        expect(worst.marginL).toBe(gaps[worst.index]?.marginL);
        expect(extraCans).toBe(Math.max(...gaps.map((gap) => gap.extraCans)));
        expect(capacityL).toBe(alone[commodity].capacityL);
      }
      expect(row.days).toEqual(alone.days.elapsedDays);
      expect(row.mass?.departure ?? null).toEqual(alone.mass?.states[0] ?? null);
      const states = alone.mass?.states ?? [];
      if (row.mass === null) continue;
      expect(row.mass.rear?.kg).toBe(Math.max(...states.map((state) => state.rear!.kg)));
      expect(row.mass.payloadLeftKg?.value).toBe(Math.min(...states.map((state) => state.payloadLeftKg!)));
      expect(row.mass.stabilityFactor?.value).toBe(
        Math.min(...states.map((state) => state.stabilityFactor!)),
      );
      const shared = comparison.cautions.length + row.cautions.length;
      expect(shared).toBeGreaterThanOrEqual(alone.cautions.length);
    }
  });

  it('shows the tank decision: ahead of the rear axle a litre loads it less, and there are more litres', {
    tags: 'slow',
  }, async () => {
    const [first, second] = (await json('--rig', ahead, '--rig', behind)).rigs;
    const none = await withoutTank();
    const perLitre = (rig: typeof first, litres: number) => (rig!.mass!.rear!.kg - none) / litres;
    // A litre of diesel of 0.835 kg between the axles puts 2.6 / 2.85 of it on the rear one, behind it 3.7 / 2.85.
    expect(perLitre(first, 95)).toBeLessThan(perLitre(second, 40));
    expect(perLitre(second, 40) / perLitre(first, 95)).toBeCloseTo(3.7 / 2.6, 6);
    // The same gap, with 55 l more aboard.
    expect(first!.fuel.worst.index).toBe(second!.fuel.worst.index);
    const aboard = ({ worst }: Comparison['rigs'][number]['fuel']) =>
      worst.marginL + worst.needL + worst.reserveL;
    expect(aboard(first!.fuel) - aboard(second!.fuel)).toBeCloseTo(55, 6);
    // The heavier one takes a little more over the climbs.
    expect(first!.fuel.worst.needL).toBeGreaterThan(second!.fuel.worst.needL);
  });

  it('takes one rig, and numbers rigs of one name', { tags: 'slow' }, async () => {
    expect((await json('--rig', RIG)).rigs.length).toBe(1);
    const names = (await json('--rig', ahead, '--rig', ahead)).rigs.map((rig) => rig.name);
    expect(names).toEqual(['95 l ahead of the axle', '95 l ahead of the axle (2)']);
  });

  it('says that litres aboard are the same for all, and which rig they do not fit', async () => {
    const trip = join(folder, 'trip.yaml');
    await writeFile(trip, 'aboard: { fuelLitres: 100 }\nonward: { km: 0 }\n');
    const args = ['compare', ROUTE, '--supply', LAND[1]!, '--trip', trip, '--rig', ahead, '--rig', behind];
    const { out } = await runCli(...args);
    expect(out).toContain('The litres aboard at the start are the same for every rig');
    await writeFile(trip, 'aboard: { fuelLitres: 200 }\n');
    const { status, err } = await runCli(...args);
    expect(status).toBe(2);
    expect(err).toContain(
      `${trip}, /aboard/fuelLitres (line 1): 200 l aboard with the rig ${behind}; expected`,
    );
  });

  it('prints its help', async () => {
    const { status, out } = await runCli('compare', '--help');
    expect(status).toBe(0);
    expect(out).toContain(`${MAX_COMPARED} at most`);
  });

  it.each([
    [[], 'ROUTE.gpx: no route; expected a GPX file after compare.'],
    [['a', '--supply', 'b'], '--rig: no rig; expected --rig RIG.yaml.'],
    [['a', '--rig', 'b'], '--supply: no extract'],
    [['a', 'b', '--supply', 'c', '--rig', 'd'], 'b: a second route'],
    [
      ['a', '--supply', 'b', ...Array.from({ length: 13 }, () => ['--rig', 'r']).flat()],
      '--rig: 13 of them; expected at most 12.',
    ],
    [['a', '--suply', 'b'], "Unknown option '--suply'"],
  ])('refuses %j in one line', async (args, line) => {
    const { status, out, err } = await runCli('compare', ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(line);
    expect(err).toMatch(/^[^\n]+See --help\.\n$/);
  });

  it('names the file of the rig that is wrong', async () => {
    const wrong = join(folder, 'wrong.yaml');
    await writeFile(wrong, 'colour: sand');
    const { status, err } = await compare('--rig', RIG, '--rig', wrong);
    expect(status).toBe(2);
    expect(err.startsWith(`${wrong}, /colour (line 1): an unknown key`)).toBe(true);
  });
});
