import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planText } from '../../server/app/text/plan/plan-text.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import { runCli } from './run-cli.ts';

const demo = (name: string) => fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));
const args = ['plan', demo('route.gpx'), '--supply', demo('orrimar.osm'), '--rig', demo('rig.yaml')];

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plan-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function tripWith(more: string): Promise<string> {
  const path = join(folder, 'trip.yaml');
  const base =
    'departure: "2027-05-03"\naboard: { fuelKmSinceFill: 0, waterDaysSinceFill: 0 }\nonward: { km: 0, hours: 0 }\ncampDays: 0\n';
  await writeFile(path, `${base}${more}`);
  return path;
}

describe('drystage plan', () => {
  it('says which stretch breaks it, by how much, and what would help', { tags: 'slow' }, async () => {
    const trip = await tripWith('plan: { mostCans: { fuel: 4, water: 0 } }\n');
    const { status, out } = await runCli(...args, '--trip', trip);
    expect(status).toBe(0);
    expect(out).toContain('There is no plan that keeps the reserve.');
    expect(out).toMatch(
      /From .* \(km \d+\) to .* \d+(\.\d)? l of water are missing with full tanks and 0 cans/,
    );
    expect(out).toMatch(/With \d cans? of water more it can be done: \d+ kg more when they are full\./);
  });

  it('finds a plan with more cans, as JSON beside the analysis and as text', { tags: 'slow' }, async () => {
    const trip = await tripWith('plan: { mostCans: { fuel: 6, water: 12 } }\n');
    const { status, out } = await runCli(...args, '--trip', trip, '--json');
    expect(status).toBe(0);
    const { plan, ...analysis } = JSON.parse(out) as Analysis & { plan: Plan };
    expect(analysis.fuel.gaps.length).toBeGreaterThan(1);
    expect(plan.status).toBe('found');
    expect(plan.aims.every(({ proven }) => proven)).toBe(true);
    expect(
      plan.carries.some(({ commodity, cans }) => commodity === 'water' && cans === plan.cans.water),
    ).toBe(true);
    const text = planText(analysis, plan, 'route.gpx');
    expect(text).toMatch(/Water: fill at /);
    expect(text).toMatch(/\d+ cans? of water \(\d+\.0 l\) full from .*; pour (it|them) in at km /);
    expect(text).toContain('none better exists');
    for (const leg of [...plan.legs.fuel, ...plan.legs.water])
      expect(leg.marginL).toBeGreaterThanOrEqual(-1e-6);
  });

  it('has a help of its own and refuses a route that is missing', async () => {
    expect((await runCli('plan', '--help')).out).toContain('how many full cans to carry');
    const { status, err } = await runCli('plan');
    expect(status).toBe(2);
    expect(err).toContain('a GPX file after plan');
  });
});
