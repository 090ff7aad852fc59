import { beforeAll, expect, test } from 'vitest';
import { packOf } from '../../server/app/export/pack.ts';
import type { LoadedTrip } from '../../server/app/loaded-trip.ts';
import { type PlannedTrip, planTrip } from '../../server/app/plan-trip.ts';
import { sheetPdf } from '../../server/app/sheet/pdf/sheet-pdf.ts';
import { sheetOf } from '../../server/app/sheet/sheet-of.ts';
import { problemLine } from '../../server/core/input/problem.ts';
import { loadPdfPrinter } from '../../server/io/pdf/pdf-printer.ts';
import { loadSolver } from '../../server/io/solver.ts';
import { readPdf } from '../app/sheet/pdf/read-pdf.ts';
import { EXAMPLE_RIG } from '../helpers/course.ts';
import { describeSlowReal } from '../helpers/real.ts';
import { loadSwiss } from './swiss-trip.ts';

/** Figures of the rig and trip below, written out again so that the sums here stand on their own. */
const HIGH_L_PER_KM = 0.17;
const RESERVE_L = 17;
const ALLOWANCE = 1.07;
const TANK_L = 57;
const CAN_L = 20;

/**
 * The Swiss route with its 3,768 fuel points, passed 1,727 times within 5 km, in a vehicle with a small tank: fuel has to
 * be had often, and more supplies pass than a model of all could take.
 */
describeSlowReal('the carry plan of the Swiss route', () => {
  let planned: PlannedTrip;
  let loaded: LoadedTrip;

  beforeAll(async () => {
    const rig = {
      ...EXAMPLE_RIG,
      fuel: {
        ...EXAMPLE_RIG.fuel,
        tanks: [{ name: 'main', litres: 60, unusableLitres: 3 }],
        cans: { litres: CAN_L, owned: 1 },
        reserve: { km: 100, shareOfNeed: 0 },
      },
    };
    const trip = {
      aboard: { fuelLitres: 20, waterLitres: 70 },
      onward: { km: 0 },
      allowancePercent: 7,
      departure: '2026-08-10',
      // No water is mapped: all of it is carried.
      plan: { fillAtStart: { fuel: false, water: true } },
    };
    loaded = await loadSwiss();
    const outcome = planTrip(
      loaded,
      { rig, trip },
      {
        today: '2026-08-10',
        solver: await loadSolver(),
        seconds: 30,
        extras: false,
      },
    );
    if (!outcome.ok) throw new Error(problemLine(outcome.problem));
    planned = outcome.value;
  });

  test('is told in full on four pages of paper and one for somebody at home', async () => {
    const pack = packOf(loaded, planned, '2026-08-01');
    if (!pack.ok) throw new Error(problemLine(pack.problem));
    const sheet = sheetOf(pack.value);
    const bytes = await sheetPdf(sheet, { paper: 'a4', made: '2026-08-01', printer: await loadPdfPrinter() });
    const pages = await readPdf(bytes);
    expect(pages.length).toBeLessThanOrEqual(5);
    const text = pages.map((page) => page.text).join(' ');
    // 1,727 of 1,735 that count are passed by; every one that is used is named.
    const passings = planned.plan.stops.flatMap((stop) => stop.passings);
    const passed = passings.filter(({ used }) => !used).length;
    expect(passed).toBeGreaterThan(1_000);
    expect(text).toContain(`The plan passes by ${passed} more supplies that count.`);
    for (const { name, used } of passings) if (used && name !== null) expect(text).toContain(name);
    expect(pages[0]?.text).toContain('No map data tells of water on this route.');
    expect(pages[0]?.text).not.toContain('is kept');
  });

  test('leads from supply to supply with the reserve, by plain arithmetic from its edges', () => {
    const { plan, analysis } = planned;
    expect(plan.status).toBe('found');
    const legs = plan.legs.fuel;
    expect(legs[0]!.from.atKm).toBe(0);
    expect(legs.at(-1)!.to.atKm).toBeCloseTo(analysis.route.lengthKm, 9);
    // With 20 l aboard and 17 to keep, 3 l are 16 km: the first supply is no farther.
    expect(legs[0]!.tankL).toBe(20);
    expect(legs[0]!.to.atKm).toBeLessThan(17);
    for (const [index, leg] of legs.entries()) {
      if (index > 0) expect(leg.from).toEqual(legs[index - 1]!.to);
      const halts = plan.legs.water.slice(0, -1);
      expect(halts).toEqual([]);
      const wayKm = (leg.to.atKm - leg.from.atKm + leg.from.detourKm + leg.to.detourKm) * ALLOWANCE;
      expect(leg.needL).toBeCloseTo(wayKm * HIGH_L_PER_KM, 6);
      expect(leg.departL).toBe((index === 0 ? 20 : TANK_L) + leg.cans * CAN_L);
      expect(leg.departL - leg.needL - RESERVE_L).toBeGreaterThanOrEqual(-1e-6);
    }
    // 1,361 km × 1.07 × 0.17 are 247 l: with 40 l between fills, cans aside, more than five stops.
    expect(legs.length).toBeGreaterThan(5);
  });

  test('goes from passing to passing of the analysis, and says that not all were looked at', () => {
    const { plan, analysis } = planned;
    const passed = new Set(
      analysis.passings
        .filter(({ commodity, counts }) => commodity === 'fuel' && counts)
        .map(({ id, atKm }) => `${id} ${atKm}`),
    );
    expect(passed.size).toBeGreaterThan(1000);
    for (const { to } of plan.legs.fuel.slice(0, -1)) expect(passed.has(`${to.id} ${to.atKm}`)).toBe(true);
    const left = plan.restsOn.find(({ code }) => code === 'plan-supplies-left-out');
    expect(left!.text).toContain(`Of ${passed.size} passings`);
    // No water is left out: the cans that it needs it needs whatever the fuel does, and the fuel needs none more.
    expect(plan.getCans.fuel).toBe(0);
    expect(plan.getCans.water).toBeGreaterThan(0);
    expect(plan.aims.find(({ aim }) => aim === 'cans-to-get')).toMatchObject({
      value: plan.getCans.water,
      proven: true,
    });
  });
});
