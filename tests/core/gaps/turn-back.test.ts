import { describe, expect, test } from 'vitest';
import { evenProfile } from '../../../server/core/gaps/course/profile.ts';
import { turnBackM } from '../../../server/core/gaps/turn-back.ts';
import { courseOf, EXAMPLE_RIG, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';

const rate = (litresPer100Km: number) => ({
  ...EXAMPLE_RIG,
  fuel: { ...EXAMPLE_RIG.fuel, litresPer100Km: { low: 1, typical: 1, high: litresPer100Km } },
});

describe('the point of safe return', () => {
  test('90 l usable at 0.15 l/km out and home reach 300 km (check-values P14: specific fuel flow)', () => {
    expect(turnBackM(courseOf({ rigFile: rate(15) }), startEdge, endEdge(900_000), 90)! / 1000).toBeCloseTo(
      300,
      9,
    );
  });

  test('10 h at 100 out and home reach 500 (check-values P12, as distance by fuel flow)', () => {
    // 10 h of endurance at 1 l/h and 100 km/h: 10 l at 1 l/100 km.
    expect(turnBackM(courseOf({ rigFile: rate(1) }), startEdge, endEdge(900_000), 10)! / 1000).toBeCloseTo(
      500,
      9,
    );
  });

  test.each([
    // E hours, out, home (kt), published distance (NM), to how much it was rounded; EASA question bank, Weems/Dutton.
    { row: 'P11', hours: 3.3, out: 121, home: 129, nauticalMiles: 206.04, within: 0.01 },
    { row: 'P12a', hours: 10, out: 100, home: 100, nauticalMiles: 500, within: 1e-9 },
    { row: 'P12b', hours: 10, out: 50, home: 150, nauticalMiles: 375, within: 1e-9 },
    { row: 'P12c', hours: 10, out: 150, home: 50, nauticalMiles: 375, within: 1e-9 },
    { row: 'P13', hours: 20 + 13 / 60, out: 107, home: 153, nauticalMiles: 1272.95, within: 0.01 },
  ])('agrees with worked example $row of air navigation', ({ hours, out, home, nauticalMiles, within }) => {
    // One litre an hour and one "metre" a nautical mile turn endurance into litres.
    const litres = { out: evenProfile(10_000, 1 / out), home: evenProfile(10_000, 1 / home) };
    const course = { ...courseOf({ lengthM: 10_000 }), litres };
    const turn = turnBackM(course, startEdge, endEdge(10_000), hours)!;
    expect(Math.abs(turn - nauticalMiles)).toBeLessThanOrEqual(within);
  });

  test('is the closed form E·O·H/(O + H) of air navigation when out and home are alike (P10)', () => {
    const enduranceHours = 3.3;
    const speed = 125;
    const closedForm = (enduranceHours * speed * speed) / (speed + speed);
    const litres = (enduranceHours * speed * 12) / 100;
    const turn = turnBackM(courseOf({ rigFile: rate(12) }), startEdge, endEdge(900_000), litres)! / 1000;
    expect(turn).toBeCloseTo(closedForm, 9);
  });

  test('is earlier by the detour of the supply behind', () => {
    const with2Km = turnBackM(courseOf(), passingEdge(100_000, 2000), endEdge(900_000), 34)!;
    const without = turnBackM(courseOf(), passingEdge(100_000), endEdge(900_000), 34)!;
    expect(without - with2Km).toBeCloseTo(2000, 6);
  });

  test('is clamped to the far end of the gap', () => {
    expect(turnBackM(courseOf(), startEdge, endEdge(50_000), 127)).toBe(50_000);
  });

  test('is null when the budget does not cover the detour, or there is none', () => {
    expect(turnBackM(courseOf(), passingEdge(100_000, 2000), endEdge(900_000), 0.5)).toBeNull();
    expect(turnBackM(courseOf(), startEdge, endEdge(900_000), -0.1)).toBeNull();
  });

  test('is the start of the gap when the budget is nothing and there is no detour', () => {
    expect(turnBackM(courseOf(), passingEdge(100_000), endEdge(900_000), 0)).toBe(100_000);
  });

  test('allowance and straight lines bring it nearer', () => {
    const course = courseOf({ allowanceFactor: 1.1, sketchy: [{ kind: 'bridge', fromM: 0, toM: 10_000 }] });
    // 34 l are 200 km of way; 10 km count 13, all × 1.1: 13 + x = 200 / 2 / 1.1.
    expect(turnBackM(course, startEdge, endEdge(900_000), 34)! / 1000).toBeCloseTo(10 + 100 / 1.1 - 13, 9);
  });

  test('none beyond the start of a stretch that cannot be driven back', () => {
    const course = courseOf({ oneWay: [{ fromM: 40_000, toM: 70_000 }] });
    expect(turnBackM(course, startEdge, endEdge(900_000), 127)).toBe(40_000);
    expect(turnBackM(course, passingEdge(50_000), endEdge(900_000), 127)).toBe(50_000);
    expect(turnBackM(course, passingEdge(70_000), endEdge(100_000), 127)).toBe(100_000);
  });

  test('water goes by the time that out and back take, a stay on the way out included', () => {
    const course = courseOf({ commodity: 'water' });
    // 36 l are 2 days; 245 km a day: 245 km out, 245 km home.
    expect(turnBackM(course, startEdge, endEdge(900_000), 36)! / 1000).toBeCloseTo(245, 9);
    const resting = courseOf({ commodity: 'water', stays: [{ atM: 100_000, days: 1 }] });
    expect(turnBackM(resting, startEdge, endEdge(900_000), 36)! / 1000).toBeCloseTo(122.5, 9);
    const long = courseOf({ commodity: 'water', stays: [{ atM: 100_000, days: 9 }] });
    expect(turnBackM(long, startEdge, endEdge(900_000), 36)! / 1000).toBeCloseTo(100, 9);
  });
});
