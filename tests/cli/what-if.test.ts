import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { gaugeLines } from '../../server/app/text/plan/gauge-text.ts';
import { whatIfLines } from '../../server/app/text/plan/whatif-text.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { Gauge, WhatIf } from '../../server/contract/whatif.ts';
import { runCli } from './run-cli.ts';

const demo = (name: string) => fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));

describe('what drystage plan says of what may go wrong', () => {
  it('goes by the plan: what-ifs, turn-back points, whom to telephone, the gauge', {
    tags: 'slow',
  }, async () => {
    const { status, out } = await runCli(
      'plan',
      demo('route.gpx'),
      '--supply',
      demo('orrimar.osm'),
      '--rig',
      demo('rig.yaml'),
      '--trip',
      demo('trip.yaml'),
      '--json',
    );
    expect(status).toBe(0);
    const { plan, whatIf, gauge, days } = JSON.parse(out) as {
      plan: Plan;
      whatIf: WhatIf;
      gauge: Gauge;
      days: Analysis['days'];
    };
    expect(plan.status).toBe('found');
    expect(whatIf.basis).toBe('plan');

    // Each stop that is used fails once for each commodity it gives, and is on the list to telephone.
    const used = plan.stops.flatMap(({ passings }) => passings).filter((passing) => passing.used);
    const failing = whatIf.rows.filter(({ kind }) => kind === 'stop-fails');
    expect(new Set(failing.map(({ id, commodity }) => `${id} ${commodity}`))).toEqual(
      new Set(used.map(({ id, commodity }) => `${id} ${commodity}`)),
    );
    expect(new Set(whatIf.callFirst.map(({ id }) => id))).toEqual(new Set(used.map(({ id }) => id)));

    // The turn-back points are those of the legs, and on the gauge.
    for (const { atKm, commodity } of whatIf.turnBacks) {
      expect(plan.legs[commodity].some(({ turnBackKm }) => turnBackKm === atKm)).toBe(true);
      const row = gauge.rows.find((each) => each.at === 'turn-back' && each.atKm === atKm)!;
      // Where a night or a stay takes water at the very place, it is left with less than it comes with.
      const { plannedL, backL } = row[commodity];
      if (days.rows.some(({ toKm }) => toKm === atKm)) expect(plannedL).toBeGreaterThanOrEqual(backL! - 1e-6);
      else if (commodity === 'fuel') expect(plannedL).toBeCloseTo(backL!, 6);
      else {
        // From farther on one night more falls on the way back: 17 of 24 hours at 18 l a day.
        expect(plannedL).toBeGreaterThanOrEqual(backL! - 1e-6);
        expect(plannedL).toBeLessThan(backL! + (18 * 17) / 24);
      }
    }
    // With the plan there is enough to go on everywhere.
    for (const { fuel, water } of gauge.rows) {
      expect(fuel.plannedL).toBeGreaterThanOrEqual(fuel.onL - 1e-6);
      expect(water.plannedL).toBeGreaterThanOrEqual(water.onL - 1e-6);
    }

    const text = [...whatIfLines(whatIf), ...gaugeLines(gauge)].join('\n');
    for (const head of [
      'What if, fuel (by the plan above)',
      'What if, water (by the plan above)',
      'Turn back, the first of fuel and water marked',
      'Which assumption matters most',
      'To check before leaving, that first without which most fails',
      'Gauge: least to have aboard, cans and reserve included (the plan)',
    ])
      expect(text).toContain(`\n${head}\n`);
    expect(text).toMatch(
      /\* Before km \d+\.\d you can still go back to .* with the reserve of (fuel|water)\./,
    );
    // Whole litres only: needed rounded up, planned rounded down.
    const first = gauge.rows[0]!.water;
    expect(text).toMatch(
      new RegExp(`start, Port Lammas .* ${Math.ceil(first.onL)} .* ${Math.floor(first.plannedL)}\\n`),
    );
  });
});
