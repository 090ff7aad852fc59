import { beforeAll, describe, expect, it } from 'vitest';
import { planText } from '../../../../server/app/text/plan/plan-text.ts';
import { analysisToContract, toContract } from '../../../../server/app/to-contract.ts';
import type { Analysis } from '../../../../server/contract/analysis.ts';
import type { OneFailure, Plan, WayOut } from '../../../../server/contract/plan.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { planCarry } from '../../../core/plan/by-hand/contracted.ts';
import { DIESEL, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { reckoned } from '../../../helpers/reckoned.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));
const RIG: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 0 } } };

/** The worked example without cans, whose second gap is a can short, with so much asked of the plan. */
function made(asked: TripFile['plan']): { analysis: Analysis; plan: Plan } {
  const input = inputOf({ rig: RIG, features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2)] });
  const trip = reckoned({ ...input, trip: { ...input.trip, ...(asked && { plan: asked }) } });
  const { plan } = planCarry(trip, { solver, seconds: 30, clock: () => 0 });
  return {
    analysis: analysisToContract(trip.analysis),
    plan: toContract({ ...plan, waysOut: [], waysOutComplete: true, oneFailure: null }),
  };
}

const textOf = ({ analysis, plan }: ReturnType<typeof made>, more: Partial<Plan> = {}): string[] =>
  planText(analysis, { ...plan, ...more }, 'route.gpx').split('\n');

const WAY: WayOut = {
  kind: 'longer-days',
  telephoneFirst: false,
  text: 'Driving 9 hours a day in place of 7 it can be done.',
  cans: { fuel: 0, water: 0 },
  amount: 9,
  unit: 'hours a day',
  atKm: null,
  id: null,
  commodity: null,
  moreKg: 0,
};

describe('a carry plan as text', () => {
  it('says what is to be got first, and what helps without it', () => {
    const found = made(undefined);
    const lines = textOf(found, { waysOut: [WAY], waysOutComplete: false });
    expect(lines).toContain('To get before leaving: 1 fuel can more than are owned.');
    expect(lines).toContain('- 1 more fuel can is to be got: none is owned.');
    const at = lines.indexOf('Or without more cans, each computed again');
    expect(lines.slice(at + 1, at + 3)).toEqual([`- ${WAY.text}`, '- not all were tried: the time ran out']);
    const enough = textOf(made({ mostCans: { fuel: 0 } }), { waysOut: [WAY] });
    expect(enough.some((line) => line.includes('To get before leaving'))).toBe(false);
    expect(enough).toContain('Ways out, each computed again');
    expect(enough).toContain('There is no plan that keeps the reserve.');
  });

  it('says of a stop that is used what it gives at the most and how long it keeps one', {
    tags: 'slow',
  }, () => {
    const stops = [
      { id: 'node/1', mostLitres: { fuel: 130 }, waitHours: 2 },
      { id: 'node/90', waitHours: 5, mostLitres: { water: 1 } },
    ];
    const found = made({ stops, passBy: ['node/90'] });
    const lines = textOf(found);
    const [line, ...more] = lines.filter((one) => one.includes('of waiting;'));
    expect(line).toMatch(
      /^- km 640\.0, fuel station, fuel: .*; no more than 130\.0 l to be had; 2\.0 h of waiting; no telephone known/,
    );
    expect(more).toEqual([]);
    const sheet = found.plan.sheet.map((halt) =>
      halt.kind === 'stop' && halt.fuel !== null
        ? { ...halt, fuel: { ...halt.fuel, mostL: null, fillHours: 0.5 } }
        : halt,
    );
    const slow = textOf(found, { sheet }).filter((one) => one.includes('of waiting;'));
    expect(slow.map((one) => one.includes('; 2.0 h of waiting; 0.5 h of filling; no telephone'))).toEqual([
      true,
    ]);
  });

  it('says where the reserve is kept only as far as is known', () => {
    const found = made(undefined);
    const known = 'The reserve is kept as far as is known: read what the plan rests on.';
    expect(textOf(found)).not.toContain(known);
    const [first, ...rest] = found.plan.legs.fuel;
    const fuel = [{ ...first!, verdict: 'unknown' as const }, ...rest];
    expect(textOf(found, { legs: { ...found.plan.legs, fuel } })).toContain(known);
  });

  it('names the stops whose failing nothing bears', () => {
    const found = made(undefined);
    const at = found.plan.legs.fuel[0]!.to;
    const oneFailure: OneFailure = {
      status: 'none',
      spendsReserve: false,
      cans: { fuel: 0, water: 0 },
      moreCans: { fuel: 0, water: 0 },
      moreKg: 0,
      moreDrivingKm: 0,
      proven: true,
      sheet: [],
      totals: null,
      carries: [],
      legs: { fuel: [], water: [] },
      nights: [],
      breaks: [{ at, text: 'Every plan hangs on the pump (km 640).' }],
      failures: [],
    };
    expect(textOf(found, { oneFailure })).toContain('- Every plan hangs on the pump (km 640).');
    const safe: OneFailure = {
      ...oneFailure,
      status: 'found',
      moreCans: { fuel: 1, water: -2 },
      moreKg: -12,
      moreDrivingKm: 3,
      nights: [{ code: 'plan-night-at-supply', text: 'The night is spent at the tap.', fromKm: 640 }],
    };
    expect(textOf(found, { oneFailure: safe })).toContain('- The night is spent at the tap.');
    expect(textOf(found, { oneFailure: safe })).toContain(
      '- 1 more fuel can and 2 fewer water cans than the plan above, 12.0 kg less when full, 3.0 km more off the route',
    );
  });
});
